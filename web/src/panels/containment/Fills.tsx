import { select, units } from "../../state/look";
import { StatusShape } from "../parts/status";
import { Wide } from "../parts/Wide";
import type { Sump } from "./documents";
import { fillHeads, fillRows, pathOf, shapeOf, wordOf } from "./rows";

/** What each sump holds and how soon it fills at the chosen inflow. */
export function Fills(props: { sumps: readonly Sump[]; said: string; chosen: Sump | undefined; old: boolean }) {
  const rows = fillRows(props.sumps, units.value);
  return (
    <section class="cell bt" aria-labelledby="fills-title">
      <h2 id="fills-title">
        How soon they fill <span class="dim n">at a steady {props.said}, from empty; a dash: not entered</span>
      </h2>
      <Wide label="How soon they fill">
        <table class={`tbl fills${props.old ? " old" : ""}`}>
          <thead>
            <tr>
              <th scope="col">Sump</th>
              {fillHeads(units.value).map((head) => (
                <th scope="col" key={head}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.path} class={props.chosen && pathOf(props.chosen) === row.path ? "on" : ""}>
                <th scope="row">
                  <button
                    type="button"
                    class="pickrow"
                    aria-pressed={props.chosen !== undefined && pathOf(props.chosen) === row.path}
                    onClick={() => select(6, row.path)}
                  >
                    <StatusShape state={shapeOf[row.sump.holds]} />
                    {row.sump.of === "tank" ? "Tank" : "Dispenser"} {row.sump.owner}
                    <span class="vh">, {wordOf[row.sump.holds]}</span>
                  </button>
                </th>
                {row.cells.map((cell, i) => (
                  <td key={i} class={row.late && i === 6 ? "badt" : ""}>
                    {cell}
                    {row.late && i === 6 && <small>runs over before</small>}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </section>
  );
}
