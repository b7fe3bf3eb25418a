import { clockText } from "../../draw/clock";
import { amount, unitOf } from "../../draw/numbers";
import { capital } from "../../draw/words";
import { units } from "../../state/look";
import { narrow } from "../../state/station";
import { StatusShape, type State } from "../parts/status";
import { choiceB, twoChoices } from "./answer/choice";
import { amountChange } from "./answer/rows";
import type { BarrierState, IncidentRun } from "./answer/documents";
import { anyDiffers, barrierWords, type View } from "./answer/view";
import { Wide } from "../parts/Wide";

/** Share of what is lost that leaves the containment, percent. */
const outsideShare = (run: IncidentRun) =>
  run.escaped_m3 > 0 ? (100 * run.to_environment_m3) / run.escaped_m3 : 0;

/** What is lost with and without each barrier. */
export function WithAndWithout({ view }: { view: View }) {
  const system = units.value;
  const unit = unitOf("volume", system);
  const { runs } = view.document.result;
  const [first] = runs;
  if (!first || runs.length < 2) return null;
  const most = Math.max(...runs.map((r) => r.escaped_m3), 1e-12);
  const said = (si: number) => amount(system, si);
  return (
    <section class="part" aria-label="With and without each barrier">
      <h2>With and without each barrier</h2>
      <Wide label="With and without each barrier, table">
        <table class="tbl barriers">
          <thead>
            <tr>
              <th scope="col">Run</th>
              <th scope="col">Lost, {unit}</th>
              <th scope="col" class="l bar-col">
                <span class="vh">As a bar</span>
              </th>
              <th scope="col">Outside, {unit}</th>
              <th scope="col">Changes the loss by, {unit}</th>
              <th scope="col">No more escapes after</th>
              {!narrow.value && (
                <th scope="col" class="edit">
                  <span class="vh">Show it</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {runs.map((run, i) => (
              <tr class={run.name === view.b?.run.name ? "on" : ""}>
                <th scope="row">{capital(run.name)}</th>
                <td>{said(run.escaped_m3)}</td>
                <td class="l bar-col">
                  <span class="lost-bar" style={{ width: `${(100 * run.escaped_m3) / most}%` }}>
                    <i style={{ width: `${outsideShare(run)}%` }} />
                  </span>
                </td>
                <td>{said(run.to_environment_m3)}</td>
                <td>{i ? amountChange(system, [first.escaped_m3, run.escaped_m3]) : ""}</td>
                <td>{run.isolated_at_s === null ? "–" : clockText(run.isolated_at_s)}</td>
                {!narrow.value && (
                  <td class="edit">
                    <button
                      type="button"
                      class="btn"
                      onClick={() => show(run.name)}
                      aria-label={`Show as B: ${run.name}`}
                    >
                      As B
                    </button>
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      <p class="cap">The dark part of a bar leaves the containment.</p>
      {!anyDiffers(runs) && <p class="flat">No barrier that is there changes what escapes.</p>}
    </section>
  );
}

function show(name: string) {
  twoChoices.value = true;
  choiceB.value = { is: "run", name };
}

const states: Record<BarrierState["state"], { shape: State; words: string }> = {
  assured: { shape: "meets", words: "Assured" },
  "not assured": { shape: "falls short", words: "Not assured" },
  "not there": { shape: "does not apply", words: "Not there" },
  "not asked": { shape: "not determined", words: "Not asked" },
};

/** What stands in the way, and whether it can be counted on. */
export function Barriers({ view }: { view: View }) {
  const { barriers } = view.document.result;
  if (!barriers.length) return null;
  return (
    <section class="part" aria-label="Barriers">
      <h2>What stands in the way</h2>
      <p class="cap">Assured: every proof that it needs is on record. It may still fail.</p>
      <Wide label="Barriers, table">
        <table class="tbl words">
          <thead>
            <tr>
              <th scope="col">Barrier</th>
              <th scope="col" class="l">Of</th>
              <th scope="col" class="l">State</th>
              <th scope="col" class="l">Does</th>
              <th scope="col" class="l">Because</th>
            </tr>
          </thead>
          <tbody>
            {barriers.map((b) => (
              <tr>
                <th scope="row">{barrierWords(b.barrier)}</th>
                <td class="l">{b.of || "–"}</td>
                <td class="l state">
                  <StatusShape state={states[b.state].shape} /> {states[b.state].words}
                </td>
                <td class="l">{b.does}</td>
                <td class="l">{b.reasons.join("; ")}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </section>
  );
}
