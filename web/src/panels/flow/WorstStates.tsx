import { withUnit } from "../../draw/numbers";
import { product, units } from "../../state/look";
import { ofProduct } from "./answers";
import { Scroll } from "../parts/Scroll";
import { Letter } from "../parts/Letter";
import type { Extreme, FlowDocument, WorstTold } from "./told/documents";
import { openWords, proofWords } from "./told/words";

interface WorstRow {
  what: string;
  value: string;
  extreme: Extreme;
}

function worstRows(worst: WorstTold): WorstRow[] {
  const u = units.value;
  const rows: WorstRow[] = [];
  const flow = (e: Extreme) => withUnit("flow", u, e.flow_m3_per_s);
  const pressure = (e: Extreme) => `${withUnit("pressure", u, e.pressure_gauge_pa)} gauge`;
  const add = (what: string, value: (e: Extreme) => string, extreme: Extreme | null | undefined) => {
    if (extreme && (extreme.flow_m3_per_s ?? extreme.pressure_gauge_pa ?? null) !== null)
      rows.push({ what, value: value(extreme), extreme });
  };
  const most = (kind: string) =>
    worst.runs
      .filter((r) => r.kind === kind)
      .reduce<Extreme | null>(
        (best, r) => ((r.flow_m3_per_s ?? 0) > (best?.flow_m3_per_s ?? 0) * (1 + 1e-9) ? r : best),
        null,
      );
  const [line, pump] = [most("line"), most("pump")];
  add(`least of all hoses, ${leastNames(worst)}`, flow, worst.slowest);
  add(`highest pressure at an inlet, ${worst.highest_at_inlet?.place ?? ""}`, pressure, worst.highest_at_inlet);
  add(`highest pressure at a pump, ${worst.highest_at_pump?.place ?? ""}`, pressure, worst.highest_at_pump);
  add(
    `most through line ${line?.id ?? ""}`,
    (e) => flow(e) + (e.velocity_m_per_s ? `, ${withUnit("velocity", u, e.velocity_m_per_s)}` : ""),
    line,
  );
  add(`most through pump ${pump?.id ?? ""}`, flow, pump);
  return rows;
}

function leastNames(worst: WorstTold): string {
  const least = worst.slowest?.flow_m3_per_s ?? NaN;
  const alike = worst.hoses.filter((h) => (h.least.flow_m3_per_s ?? Infinity) <= least * (1 + 1e-6)).length;
  if (alike < 2) return worst.slowest?.id ?? "";
  return alike === worst.hoses.length ? "all alike" : `${worst.slowest?.id} and ${alike - 1} alike`;
}

/** The worst that any set of open hoses can do, and how that is known. */
export function WorstStates(props: { result: FlowDocument["result"]; of: "A" | null }) {
  const worst = ofProduct(props.result.worst_states ?? [], (w) => w.system, product.value);
  return (
    <section class="chartbox">
      <h2>
        {props.of && <Letter of={props.of} />} Worst states{" "}
        <span class="dim">over every set of open hoses{worst ? `, ${worst.system}` : ""}</span>
      </h2>
      {!worst && <p class="words">Not determined for {product.value}.</p>}
      {worst && (
        <>
          <Scroll label="Worst states">
            <table class="tbl">
              <thead>
                <tr>
                  <th scope="col">At worst</th>
                  <th scope="col">Value</th>
                  <th scope="col" class="l">
                    Open
                  </th>
                  <th scope="col" class="l">
                    How known
                  </th>
                </tr>
              </thead>
              <tbody>
                {worstRows(worst).map((row) => (
                  <tr key={row.what}>
                    <th scope="row">{row.what}</th>
                    <td>
                      <span class="fig">{row.value}</span>
                    </td>
                    <td class="l">{openWords(row.extreme.open, worst)}</td>
                    <td class="l">{proofWords(row.extreme.proof)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
          <p class="cap">
            {worst.sets_solved} sets of open hoses solved
            {worst.sets_failed > 0 ? `, ${worst.sets_failed} of them without an answer` : ""}.
          </p>
        </>
      )}
    </section>
  );
}
