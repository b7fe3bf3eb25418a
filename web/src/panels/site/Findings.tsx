import type { Field } from "../../api/types";
import { decimalsApart } from "../../draw/numbers";
import { capital, sentence } from "../../draw/words";
import { sheet, units } from "../../state/look";
import { findingValue, quantityOf, type Finding } from "../parts/finding";
import { StatusShape, stateWords, toneOf } from "../parts/status";
import type { Ruled } from "./entry/FieldRow";

/** What several findings say alike, once. */
export const unique = (findings: readonly Finding[]): Finding[] => [
  ...new Map(findings.map((f) => [`${f.requirement} ${f.state} ${f.reason ?? ""}`, f])).values(),
];

/** With as many decimals as part a value from its limit. */
function amount(si: number, f: Finding): string {
  const decimals = decimalsApart(quantityOf(f), units.value, f.value ?? si, f.limit ?? si);
  return findingValue(si, f, units.value, decimals);
}

function against(f: Finding): string {
  if (f.value !== null && f.limit !== null) return ` Here ${amount(f.value, f)}, limit ${amount(f.limit, f)}.`;
  return f.reason ? ` ${sentence(f.reason)}` : "";
}

/** The clause; one that nobody has looked up yet says so. */
function cited(f: Finding): string {
  if (f.clause === null) return "Your own target";
  return f.clause_verified ? f.clause : `${f.clause}, not yet verified`;
}

export function FindingNote(props: { finding: Finding }) {
  const f = props.finding;
  const tone = toneOf(f.state);
  return (
    <div class={`note ${tone === "none" ? "info" : tone}`}>
      <StatusShape state={f.state} />
      <div>
        <b>{stateWords[f.state]}.</b> {capital(f.requirement)}.{against(f)} {cited(f)}.{" "}
        <button type="button" class="link" onClick={() => (sheet.value = "checks")}>
          What to change
        </button>
      </div>
    </div>
  );
}

/** What a rule says of the line that a value stands in. */
export function ruledOf(field: Field, findings: readonly Finding[]): Ruled | undefined {
  const f = findings.find((one) => one.line === field.line && (one.state === "falls short" || one.state === "close"));
  if (!f || (f.state !== "falls short" && f.state !== "close")) return undefined;
  const limit = f.limit === null ? "" : `: limit ${amount(f.limit, f)}`;
  return { state: f.state, says: `${stateWords[f.state]}${limit}. ${cited(f)}` };
}

export function MeetsHere(props: { findings: readonly Finding[] }) {
  const good = unique(props.findings.filter((f) => f.state === "meets"));
  if (!good.length) return null;
  return (
    <>
      <h3 class="grp">Meets here</h3>
      <ul class="meets">
        {good.map((f) => (
          <li key={f.requirement}>
            <StatusShape state="meets" />
            <span>
              {capital(f.requirement)} <span class="faint">{cited(f)}</span>
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
