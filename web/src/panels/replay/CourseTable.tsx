import { clockText } from "../../draw/clock";
import { unitOf, type Quantity } from "../../draw/numbers";
import { units } from "../../state/look";
import { Wide } from "../parts/Wide";
import { sidesOf, type PlayView } from "./view";

interface Props {
  view: PlayView;
  heads: readonly { label: string; what: Quantity }[];
  /** Times that the axis names, s. */
  named: readonly number[];
  /** What is shown at a time: each course, of each choice. */
  cells: (time: number) => string[];
}

/** The courses of what is played as a table, at its events and at the times that the axis names. */
export function CourseTable({ view, heads, named, cells }: Props) {
  const sides = sidesOf(view);
  const times = [...new Set([...view.marks, ...named, view.clock.end])].sort((a, b) => a - b);
  return (
    <Wide label="The courses">
      <table class="tbl at-times">
        <thead>
          <tr>
            <th scope="col">At</th>
            {heads.flatMap((one) =>
              sides.map((s) => (
                <th scope="col">
                  {one.label}, {unitOf(one.what, units.value)}
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
              {cells(t).map((text) => (
                <td>{text}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
