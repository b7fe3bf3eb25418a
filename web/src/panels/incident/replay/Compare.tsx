import { useMemo } from "preact/hooks";
import { clockText } from "../../../draw/clock";
import { amount, amountSpan, unitOf } from "../../../draw/numbers";
import { sentence } from "../../../draw/words";
import { units } from "../../../state/look";
import { time } from "../../../state/player";
import { Letter } from "../../parts/Letter";
import { amountChange, rowsAt, toldOf } from "../answer/rows";
import { sidesOf } from "../../replay/view";
import type { View } from "../answer/view";

/** Figures of more places than this are set smaller. */
const roomy = 7;

/** Both choices at the playhead. */
export function Compare({ view }: { view: View }) {
  const told = useMemo(() => toldOf(view), [view]);
  const system = units.value;
  const rows = rowsAt(view, told, time.value, system);
  const end = rowsAt(view, told, view.clock.end, system);
  const long = end.some((row) => [...row.shown, row.change].some((text) => text.length > roomy));
  return (
    <div>
      <h2>{view.b ? "The two side by side" : "At the playhead"}</h2>
      <table class={`cmp${long ? " long" : ""}`}>
        <thead>
          <tr>
            <th>At {clockText(time.value)}</th>
            {sidesOf(view).map((s) => (
              <th scope="col">
                <Letter of={s.letter} small />
              </th>
            ))}
            {view.b && <th scope="col">B less A</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr class={i === 0 ? "lead" : ""} key={row.name}>
              <th scope="row">
                {row.label}, {unitOf(row.what, system)}
              </th>
              {row.shown.map((text, k) => (
                <td class={row.values[k] === null ? "word" : ""}>{text}</td>
              ))}
              {view.b && <td class="dim">{row.change}</td>}
            </tr>
          ))}
          <ByTheEnd view={view} label="Lost by the end" of="escaped_m3" />
          <ByTheEnd view={view} label="Outside by the end" of="to_environment_m3" />
        </tbody>
      </table>
      <p class="cap">Outside: what leaves the containment, onto the slab, into the ground, a drain or the air.</p>
    </div>
  );
}

function ByTheEnd({ view, label, of }: { view: View; label: string; of: "escaped_m3" | "to_environment_m3" }) {
  const system = units.value;
  const values = sidesOf(view).map((s) => s.run[of]);
  return (
    <tr class="final">
      <th scope="row">
        {label}, {unitOf("volume", system)}
      </th>
      {values.map((v) => (
        <td>{amount(system, v)}</td>
      ))}
      {view.b && <td class="dim">{amountChange(system, values)}</td>}
    </tr>
  );
}

/** The loss as a range: from all barriers acting to only those that are assured, over what is uncertain. */
export function Range({ view }: { view: View }) {
  const system = units.value;
  const { result } = view.document;
  const range = (s: { low: number; high: number }) =>
    `${amountSpan(system, s.low, s.high)}\u00A0${unitOf("volume", system)}`;
  return (
    <div class="range">
      <h2>As a range</h2>
      <dl class="pairs">
        <dt>Fuel lost in all</dt>
        <dd>{range(result.escaped_m3)}</dd>
        <dt>Outside the containment</dt>
        <dd>{range(result.to_environment_m3)}</dd>
      </dl>
      {result.beyond_range_m3 !== null && (
        <p class="cap">
          Up to {amount(system, result.beyond_range_m3)}&nbsp;{unitOf("volume", system)} where a barrier that is counted on
          fails too.
        </p>
      )}
      {result.first_line && <p class="cap">{sentence(result.first_line)}</p>}
    </div>
  );
}
