import { figure, unitOf, withUnit } from "../../draw/numbers";
import { units } from "../../state/look";
import type { StateTold } from "./told/documents";
import { Letter } from "../parts/Letter";
import { controlWords, pumpNote } from "./told/words";
import { Swatches } from "./HoseTable";

/** What each pump does with these hoses open, and what its control does, in words. */
export function Pumps(props: { state: StateTold; of: "A" | "B" | null }) {
  const u = units.value;
  const systems = props.state.systems;
  const words = systems.flatMap((s) => (s.control ? controlWords(s.control, u) : []));
  return (
    <section class="pumps">
      <h2>{props.of && <Letter of={props.of} />} Pumps</h2>
      <table class="tbl">
        <thead>
          <tr>
            <th scope="col">Pump</th>
            <th scope="col">Flow, {unitOf("flow", u)}</th>
            <th scope="col">Adds, {unitOf("pressure", u)}</th>
            <th scope="col">Discharge, {unitOf("pressure", u)} gauge</th>
          </tr>
        </thead>
        <tbody>
          {systems.flatMap((s) =>
            s.pumps.map((pump) => (
              <tr key={pump.id}>
                <th scope="row">
                  <Swatches products={s.product ? [s.product] : []} /> {pump.id}
                  {pumpNote(pump) && <small>{pumpNote(pump)}</small>}
                </th>
                <td>
                  <span class="fig">{figure("flow", u, pump.flow_m3_per_s)}</span>
                </td>
                <td>
                  <span class="fig">{figure("pressure", u, pump.pressure_rise_pa)}</span>
                </td>
                <td>
                  <span class="fig">{figure("pressure", u, pump.discharge_pressure_gauge_pa)}</span>
                </td>
              </tr>
            )),
          )}
        </tbody>
      </table>
      {words.map((w) => (
        <p key={w} class="words">
          {w}
        </p>
      ))}
      {systems
        .flatMap((s) => s.pumps)
        .filter((p) => p.opens_at)
        .map((p) => (
          <p key={p.id} class="words">
            {p.id} is held shut by its check valve until {withUnit("flow", u, p.opens_at?.total_flow_m3_per_s)} flow in
            total, drawn at {p.opens_at?.drawn_at}.
          </p>
        ))}
    </section>
  );
}
