import { sentence } from "../../draw/words";
import type { Finding } from "../parts/finding";
import { asCalledHere } from "./answer";
import { StatusShape, stateWords } from "../parts/status";

/** What is said of several parts alike, once. */
function alike(findings: readonly Finding[]): { of: Finding; subjects: string[] }[] {
  const out = new Map<string, { of: Finding; subjects: string[] }>();
  for (const f of findings) {
    const key = [f.state, f.requirement, f.reason, f.change, f.clause].join("|");
    const known = out.get(key);
    if (known) known.subjects.push(f.subject);
    else out.set(key, { of: f, subjects: [f.subject] });
  }
  return [...out.values()];
}

/** Findings of a study, each with its state in shape and word, and what to change. */
export function Requirements({ findings }: { findings: readonly Finding[] }) {
  if (!findings.length) return null;
  return (
    <section class="part" aria-label="Requirements">
      <h2>Requirements</h2>
      <ul class="statuslist">
        {alike(findings).map(({ of: f, subjects }) => (
          <li key={f.rule + f.subject}>
            <StatusShape state={f.state} /> <b>{stateWords[f.state]}</b>, {[...new Set(subjects)].join(", ")}: {sentence(f.requirement)}
            {f.reason ? ` ${asCalledHere(sentence(f.reason))}` : ""}
            {f.change ? ` ${asCalledHere(sentence(f.change))}` : ""}
            {f.clause ? <small> {f.clause}</small> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
