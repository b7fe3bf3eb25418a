import { useMemo } from "preact/hooks";
import { units } from "../../../state/look";
import { Chart } from "../../replay/Chart";
import { CourseTable } from "../../replay/CourseTable";
import { sidesOf } from "../../replay/view";
import { chartWords, drawnOf } from "./charts";
import { followedOf, shownAt } from "./rows";
import type { DropView } from "./view";

/** Drop rate, pressure of the vapor and levels over time. */
export function Courses({ view }: { view: DropView }) {
  const system = units.value;
  const drawn = useMemo(() => drawnOf(view, system), [view, system]);
  const followed = followedOf(view.a.run);
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
        <CourseTable
          view={view}
          heads={followed}
          named={view.clock.marks}
          cells={(t) => followed.flatMap((one) => sidesOf(view).map((s) => shownAt(one, s, t, system)))}
        />
      </details>
    </section>
  );
}
