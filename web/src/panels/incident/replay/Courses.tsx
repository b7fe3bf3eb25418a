import { useMemo } from "preact/hooks";
import { ticksOf } from "../../../draw/clock";
import { units } from "../../../state/look";
import { Chart } from "../../replay/Chart";
import { CourseTable } from "../../replay/CourseTable";
import { alikeWords, courseWords, rowsAt, toldOf, type Told } from "../answer/rows";
import { sidesOf } from "../../replay/view";
import type { View } from "../answer/view";

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
        <CourseTable
          view={view}
          heads={told}
          named={ticksOf(view.clock)}
          cells={(t) => rowsAt(view, told, t, system).flatMap((row) => row.shown)}
        />
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
