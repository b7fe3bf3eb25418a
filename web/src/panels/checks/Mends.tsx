import { figure, unitOf } from "../../draw/numbers";
import { sentence } from "../../draw/words";
import { useStanding } from "../../state/ask";
import { keepFlow } from "../../state/hoses";
import { units } from "../../state/look";
import { recordsRead } from "../../state/station";
import { ErrorWords, Note } from "../parts/Note";
import { StatusShape, stateWords } from "../parts/status";
import { subjectsOf, type Group } from "./findings";
import { effectWords, likewise, mendsOf, otherWays, stepsOf, type Mend, type MendEffect, type MendsAnswer } from "./mends";
import { TryIt } from "./TryIt";

/** What would mend a row that falls short: asked of the program once the row is shown. */
export function Mends(props: { group: Group }) {
  const { group } = props;
  const first = group.findings[0];
  const now = useStanding<MendsAnswer>(
    () => ({
      after: recordsRead.value,
      wants: [
        {
          study: "mends",
          rule: first.rule,
          ...(group.findings.length === 1 ? { subject: first.subject } : {}),
          units: units.value,
          ...(keepFlow.value ? { keep: keepFlow.value } : {}),
        },
      ],
    }),
    group.key,
  );
  const answer = now.answers?.[0];
  const mends = answer && "document" in answer ? mendsOf(group, answer.document.result.mends) : [];
  const steps = stepsOf(mends);
  if (answer && "error" in answer) {
    return (
      <Note tone="bad" role="status">
        <ErrorWords {...answer} />
      </Note>
    );
  }
  if (!mends.length) {
    const told = first.change ?? (answer ? "nothing is known that would settle it" : "");
    return (
      <ol class="fix">
        <li>
          <span>{sentence(told)}</span>
        </li>
      </ol>
    );
  }
  const at = mends.length > 1 ? `${mends.length} parts` : first.subject;
  const others = mends.length === 1 ? otherWays(mends[0] as Mend) : [];
  const cautions = answer && "document" in answer ? answer.document.cautions : [];
  return (
    <>
      <ol class="fix">
        {likewise(mends).map(({ mend, subjects }) => (
          <li key={mend.subject}>
            <span>
              {sentence([mend.words, mend.reason].filter(Boolean).join("; "))}
              {subjects.length > 1 && <small class="dim"> Likewise at {subjects.slice(1).join(", ")}.</small>}
            </span>
            <TryIt edits={steps.get(mend) ?? []} label={`mend ${subjectsOf(group)}`} at={at} work={mend.way === "work"} />
          </li>
        ))}
        {others.map((one) => (
          <li key={one.edit.path}>
            <span>{sentence(`or ${one.words}: ${one.edit.path} = ${one.edit.value}`)}</span>
            <TryIt edits={[{ path: one.edit.path, value: one.edit.value }]} label={one.words} at={first.subject} work={one.work} />
          </li>
        ))}
      </ol>
      <Effect mends={mends} />
      <p class="dim">{cautions.join(" ")}</p>
    </>
  );
}

/** What it does to the other findings, told of the first mend that changes something. */
function Effect(props: { mends: readonly Mend[] }) {
  const made = props.mends.filter((mend) => mend.edits.length > 0);
  const first = made.find((mend) => mend.effects.length > 0) ?? made[0];
  if (!first) return null;
  return (
    <>
      <h3>{made.length > 1 ? `What it does, at ${first.subject} alone` : "What it does"}</h3>
      <ul class="subject-list">
        <li>
          <span>This finding</span>
          <span>
            <StatusShape state={first.after ?? "not determined"} /> {stateWords[first.after ?? "not determined"]}
          </span>
        </li>
        {first.effects.map((effect) => (
          <Changed key={[effect.subject, effect.requirement].join("|")} effect={effect} />
        ))}
        {flows(first).map((words) => (
          <li key={words}>
            <span>Least flow, all open</span>
            <span class="fig">{words}</span>
          </li>
        ))}
      </ul>
      {!first.effects.length && <p class="dim">No other finding changes.</p>}
    </>
  );
}

function Changed(props: { effect: MendEffect }) {
  const { effect } = props;
  return (
    <li>
      <span>{effectWords(effect)}</span>
      <span>
        {effect.after ? (
          <>
            <StatusShape state={effect.after} /> {stateWords[effect.after]}
            {effect.before && <small class="dim"> was {stateWords[effect.before].toLowerCase()}</small>}
          </>
        ) : (
          "No longer asked"
        )}
      </span>
    </li>
  );
}

/** The least flow before and after, where the change moves it. */
function flows(mend: Mend): string[] {
  const { least_flow_before_m3_per_s: before, least_flow_after_m3_per_s: after } = mend;
  if (before === null || after === null) return [];
  const [was, is] = [before, after].map((si) => figure("flow", units.value, si));
  return was === is ? [] : [`${is}\u00A0${unitOf("flow", units.value)}, was ${was}`];
}
