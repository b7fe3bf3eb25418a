import { sentence } from "../../draw/words";
import type { Finding } from "../parts/finding";
import { StatusShape, stateWords } from "../parts/status";

/** Findings of a study, each with its state in shape and word, and what to change. */
export function Requirements({ findings }: { findings: readonly Finding[] }) {
  if (!findings.length) return null;
  return (
    <section class="part" aria-label="Requirements">
      <h2>Requirements</h2>
      <ul class="statuslist">
        {findings.map((f) => (
          <li key={f.rule + f.subject}>
            <StatusShape state={f.state} /> <b>{stateWords[f.state]}</b>, {f.subject}: {sentence(f.requirement)}
            {f.reason ? ` ${sentence(f.reason)}` : ""}
            {f.change ? ` ${sentence(f.change)}` : ""}
            {f.clause ? <small> {f.clause}</small> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
