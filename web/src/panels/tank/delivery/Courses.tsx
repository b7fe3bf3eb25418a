import { useMemo } from "preact/hooks";
import { clockText } from "../../../draw/clock";
import { unitOf } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { Wide } from "../../parts/Wide";
import { Chart } from "../../replay/Chart";
import { sidesOf } from "../../replay/view";
import { chartWords, drawnOf } from "./charts";
import { followedOf, shownAt } from "./rows";
import type { DropView } from "./view";

/** Drop rate, pressure of the vapor and levels over time. */
export function Courses({ view }: { view: DropView }) {
  const system = units.value;
  const drawn = useMemo(() => drawnOf(view, system), [view, system]);
  return (
    <section class="courses" aria-label="Over time">
      <div class="multi">
        {drawn.map((one, i) => (
          <Chart
            key={one.name}
            told={one}
            view={view}
            words={chartWords(one, system)}
            height={150}
            whole={i === drawn.length - 1 && drawn.length % 2 === 1}
          />
        ))}
      </div>
      <details>
        <summary>The courses as a table</summary>
        <Table view={view} />
      </details>
    </section>
  );
}

function Table({ view }: { view: DropView }) {
  const system = units.value;
  const followed = followedOf(view.a.run);
  const sides = sidesOf(view);
  const times = [...new Set([...view.marks, ...view.clock.marks, view.clock.end])].sort((a, b) => a - b);
  return (
    <Wide label="The courses">
      <table class="tbl at-times">
        <thead>
          <tr>
            <th scope="col">At</th>
            {followed.flatMap((one) =>
              sides.map((s) => (
                <th scope="col">
                  {one.label}, {unitOf(one.what, system)}
                  {view.b ? `, ${s.letter}` : ""}
                </th>
              )),
            )}
          </tr>
        </thead>
        <tbody>
          {times.map((t) => (
            <tr>
              <th scope="row">{clockText(t)}</th>
              {followed.flatMap((one) => sides.map((s) => <td>{shownAt(one, s, t, system)}</td>))}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
