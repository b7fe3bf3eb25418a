import { useMemo } from "preact/hooks";
import { clockText, ticksOf } from "../../../draw/clock";
import { unitOf } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { Chart } from "../../replay/Chart";
import { alikeWords, courseWords, rowsAt, toldOf, type Told } from "../answer/rows";
import { sidesOf } from "../../replay/view";
import type { View } from "../answer/view";
import { Wide } from "../../parts/Wide";

/** Shown at once; the others on demand. */
const first = ["escaped", "escaping", "pressure", "link"];

/** What runs over time: a chart where the two choices differ, a sentence where they do not. */
export function Courses({ view }: { view: View }) {
  const told = useMemo(() => toldOf(view), [view]);
  const system = units.value;
  const drawn = told.filter((one) => !one.alike);
  const leading = drawn.filter((o) => first.includes(o.name));
  const now = leading.length ? leading : drawn;
  const later = drawn.filter((o) => !now.includes(o));
  const flat = told.filter((one) => one.alike);
  const swings = sidesOf(view).some((s) => s.trace.bands.size > 0);
  return (
    <section class="courses" aria-label="Over time">
      <Charts list={now} view={view} />
      {later.length > 0 && (
        <details>
          <summary>More over time: {later.map((o) => o.label.toLowerCase()).join(", ")}</summary>
          <Charts list={later} view={view} />
        </details>
      )}
      {flat.map((one) => (
        <p class="flat">{alikeWords(one, view, system)}</p>
      ))}
      {swings && (
        <p class="flat">
          The pump starts and stops many times between two points of the answer. Lines are means between them; the band
          about a line goes from the least to the greatest.
        </p>
      )}
      <details>
        <summary>The courses as a table</summary>
        <CourseTable view={view} told={told} />
      </details>
    </section>
  );
}

function Charts({ list, view }: { list: Told[]; view: View }) {
  const system = units.value;
  return (
    <div class="multi">
      {list.map((one, i) => (
        <Chart
          key={one.name}
          told={one}
          view={view}
          words={courseWords(one, system)}
          height={140}
          whole={i === 0 && list.length % 2 === 1}
        />
      ))}
    </div>
  );
}

function CourseTable({ view, told }: { view: View; told: Told[] }) {
  const system = units.value;
  const sides = sidesOf(view);
  const times = [...new Set([...view.marks, ...ticksOf(view.clock), view.clock.end])].sort((a, b) => a - b);
  return (
    <Wide label="The courses">
      <table class="tbl at-times">
        <thead>
          <tr>
            <th scope="col">At</th>
            {told.flatMap((one) =>
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
              {rowsAt(view, told, t, system).flatMap((row) => row.shown.map((text) => <td>{text}</td>))}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
