import { useState } from "preact/hooks";
import { partAt } from "../../api/station";
import { sentence } from "../../draw/words";
import { select, selection, setView, sheet, units } from "../../state/look";
import { station } from "../../state/station";
import { findingValue, type Finding } from "../parts/finding";
import { StatusShape, stateWords } from "../parts/status";
import { Mends } from "./Mends";
import { TryIt } from "./TryIt";
import { editsOf, seenOn, shownOf, sourceOf, type Group, type Side } from "./findings";

/** One row of the list in full: why, what to change, and how sure its source is. */
export function Detail(props: { group: Group; side: Side | null }) {
  const { group, side } = props;
  const first = group.findings[0];
  const shown = shownOf(group, side, units.value);
  const source = sourceOf(first);
  return (
    <aside class="det" aria-live="polite" aria-label="The finding in full">
      <span class="chip">
        <StatusShape state={group.state} />
        <b>{stateWords[group.state]}</b>
      </span>
      <h2>{sentence(first.requirement).replace(/\.$/, "")}</h2>
      <dl class="reads">
        <dt>On this station</dt>
        <dd class="fig">{shown.value}</dd>
        {shown.limit && (
          <>
            <dt>Limit</dt>
            <dd>{shown.limit}</dd>
          </>
        )}
        {shown.margin && (
          <>
            <dt>Least margin</dt>
            <dd class="fig">{shown.margin}</dd>
          </>
        )}
        <dt>Where it comes from</dt>
        <dd class="from">{source.clause}</dd>
        {first.study && (
          <>
            <dt>Computed on</dt>
            <dd>
              <SheetOf study={first.study} />
            </dd>
          </>
        )}
      </dl>
      {first.reason && (
        <>
          <h3>Why</h3>
          <p>{sentence(first.reason)}</p>
        </>
      )}
      <h3>What to change</h3>
      {group.state === "falls short" ? <Mends group={group} /> : <Remedy group={group} />}
      <h3>How sure the source is</h3>
      <p class="dim">{source.sure}</p>
      <Subjects group={group} decimals={shown.decimals} />
    </aside>
  );
}

function SheetOf(props: { study: keyof typeof seenOn }) {
  const seen = seenOn[props.study];
  const go = () => {
    if (seen.view) setView(seen.sheet, seen.view);
    sheet.value = seen.sheet;
  };
  return (
    <button type="button" class="link" onClick={go}>
      {seen.name}
    </button>
  );
}

function Remedy(props: { group: Group }) {
  const { change, state } = props.group.findings[0];
  if (!change)
    return (
      <p class="dim">
        {state === "meets" || state === "does not apply" ? "Nothing." : "Nothing is known that would settle it."}
      </p>
    );
  const edits = editsOf(props.group, station.value?.parts ?? []);
  const told = sentence(change);
  const at = edits.length > 1 ? `${edits.length} parts` : props.group.findings[0].subject;
  return (
    <ol class="fix">
      <li>
        <span>{told}</span>
        <TryIt edits={edits} label={`${change} at ${at}`} at={at} />
      </li>
    </ol>
  );
}

const short = 8;

/** Every part that the row is about, with its own value, and the way to it. */
function Subjects(props: { group: Group; decimals: number }) {
  const [all, setAll] = useState(false);
  const findings = all ? props.group.findings : props.group.findings.slice(0, short);
  const more = props.group.findings.length - findings.length;
  return (
    <>
      <h3>{props.group.findings.length === 1 ? "The part" : `The ${props.group.findings.length} parts`}</h3>
      <ul class="subject-list">
        {findings.map((f) => (
          <Subject key={f.subject} finding={f} decimals={props.decimals} />
        ))}
      </ul>
      {more > 0 && (
        <button type="button" class="link" onClick={() => setAll(true)}>
          Show {more} more
        </button>
      )}
    </>
  );
}

function Subject(props: { finding: Finding; decimals: number }) {
  const { finding } = props;
  const part = partAt(station.value?.parts ?? [], finding.path);
  const go = () => {
    if (!part) return;
    select(part.stop ?? selection.value.stop, part.path);
    sheet.value = "site";
  };
  return (
    <li>
      <span>
        {finding.subject}
        {finding.line !== null && <small>line {finding.line}</small>}
      </span>
      <span class="fig">
        {finding.value === null ? "" : findingValue(finding.value, finding, units.value, props.decimals)}
      </span>
      {part && (
        <button type="button" class="btn" onClick={go} aria-label={`Show ${finding.subject} on the site`}>
          Show
        </button>
      )}
    </li>
  );
}
