import { clockText } from "../../../draw/clock";
import { units } from "../../../state/look";
import { time } from "../../../state/player";
import { Letter } from "../../parts/Letter";
import { sidesOf } from "../../replay/view";
import { finalRows, rowsAt, type Row } from "./rows";
import type { DropView } from "./view";

/** Both choices at the playhead, and how they end. */
export function Compare({ view }: { view: DropView }) {
  const [first, ...rest] = rowsAt(view, time.value, units.value);
  return (
    <div>
      <h2>{view.b ? "The two side by side" : "At the playhead"}</h2>
      <table class="cmp">
        <thead>
          <tr>
            <th>At {clockText(time.value)}</th>
            {sidesOf(view).map((s) => (
              <th scope="col">
                <Letter of={s.letter} small />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {first && <Line row={first} kind="lead" />}
          {rest.map((row) => (
            <Line key={row.name} row={row} kind="" />
          ))}
          {finalRows(view, units.value).map((row) => (
            <Line key={row.name} row={row} kind="final" />
          ))}
        </tbody>
      </table>
      <p class="cap">Vapor is measured at the pressure of the air outside.</p>
    </div>
  );
}

const Line = ({ row, kind }: { row: Row; kind: string }) => (
  <tr class={kind}>
    <th scope="row">{row.label}</th>
    {row.shown.map((text, i) => (
      <td class={row.words[i] ? "word" : ""}>{text}</td>
    ))}
  </tr>
);
