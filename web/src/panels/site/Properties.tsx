import { signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import type { Field, Part } from "../../api/types";
import { useStanding } from "../../state/ask";
import { moving } from "../../state/drag";
import { formOf, groupOf, labelOf } from "../../state/entry";
import { kindName } from "../../state/entry-kinds";
import { product, select, selection, stopNames, units } from "../../state/look";
import { edit, editable, partOf, station } from "../../state/station";
import { Absent, NewTable } from "./Absent";
import { canCopy, duplicate, removePart } from "./adding";
import { cellOf, type Cell } from "./course-cells";
import { FieldRow } from "./entry/FieldRow";
import { FindingNote, MeetsHere, ruledOf, unique, type Finding } from "./Findings";
import { useKeepFocus } from "./focus";
import { StopSymbol } from "./symbols";
import { capital } from "./words";

/** A value that is not entered yet and is to be asked for, by its path. */
export const wantedField = signal<string | null>(null);

/** The part whose values are shown: the chosen one, else the first at the chosen stop, of the chosen product if any. */
export function shownPart(): Part | null {
  const { stop, part } = selection.value;
  const named = part ? partOf(part) : undefined;
  if (named) return named;
  const here = (station.value?.parts ?? []).filter((p) => p.stop === stop);
  return here.find((p) => p.product === product.value) ?? here[0] ?? null;
}

export function Properties(props: { svg: string }) {
  const box = useKeepFocus<HTMLElement>("#part-shown");
  const part = shownPart();
  const stop = part ? part.stop : selection.value.stop;
  const findings = useStanding<{ document?: { findings: Finding[] } }>(() =>
    moving.value ? null : { wants: [{ study: "findings", units: units.value }] },
  );
  const mine = (findings.answers?.[0]?.document?.findings ?? []).filter((f) => f.subject === part?.id);
  const cell = stop ? cellOf(props.svg, stop) : null;
  return (
    <aside class="insp" aria-label="Properties" ref={box}>
      <div class="top">
        <div>
          <p class="over">{placeOf(stop, part)}</p>
          <h2>{stop ? stopNames[stop - 1] : capital(kindName(part?.kind ?? "station"))}</h2>
        </div>
        <StopSymbol stop={stop} />
      </div>
      <PartPicker part={part} />
      {part ? <Values key={part.path} part={part} findings={mine} /> : <NothingHere />}
      {cell && <Reads cell={cell} />}
      <MeetsHere findings={mine} />
    </aside>
  );
}

const placeOf = (stop: number | null, part: Part | null) =>
  stop ? `Stop ${stop} of 11${part?.product ? `, ${part.product}` : ""}` : "Not on the course";

/** Every part of the station, those at the chosen stop first. */
function PartPicker(props: { part: Part | null }) {
  const all = station.value?.parts ?? [];
  const { stop } = selection.value;
  const here = all.filter((p) => p.stop === stop && p.stop !== null);
  const rest = all.filter((p) => !here.includes(p));
  const tops = [...new Set(rest.map((p) => p.path.split(".")[0] ?? ""))];
  const name = (p: Part) => `${p.id}, ${kindName(p.kind)}`;
  const option = (p: Part) => (
    <option key={p.path} value={p.path}>
      {name(p)}
    </option>
  );
  if (all.length === 0) return null;
  return (
    <div class="field picker">
      <label for="part-shown" class="vh">
        Part
      </label>
      <span class="in sel">
        <select
          id="part-shown"
          value={props.part?.path ?? ""}
          onChange={(e) => {
            const chosen = partOf(e.currentTarget.value);
            if (chosen) select(chosen.stop ?? stop, chosen.path);
          }}
        >
          {!props.part && <option value="">choose a part</option>}
          {here.length > 0 && <optgroup label="At this stop">{here.map(option)}</optgroup>}
          {tops.map((top) => (
            <optgroup key={top} label={capital(kindName(top))}>
              {rest.filter((p) => p.path.split(".")[0] === top).map(option)}
            </optgroup>
          ))}
        </select>
      </span>
    </div>
  );
}

function NothingHere() {
  const name = stopNames[selection.value.stop - 1] ?? "";
  return (
    <p class="hint-line">
      Nothing is listed at this stop. What is not listed does not exist and adds nothing.
      {editable.value && ` ${name} parts are added with "Add a part", or under the part they belong to.`}
    </p>
  );
}

function Values(props: { part: Part; findings: Finding[] }) {
  const { part } = props;
  const [fresh, setFresh] = useState<readonly string[]>([]);
  const wanted = wantedField.value;
  useEffect(() => {
    if (!wanted || !part.fields.some((f) => f.path === wanted)) return;
    wantedField.value = null;
    setFresh((now) => [...now, wanted]);
  }, [wanted, part]);
  const bad = unique(props.findings.filter((f) => ["falls short", "close", "not determined"].includes(f.state)));
  const there = part.fields.filter((f) => f.text !== null || f.required || fresh.includes(f.path));
  const absent = part.fields.filter((f) => !there.includes(f));
  const groups = [...new Set(there.map((f) => groupOf(f.key)))];
  const gone = (path: string) => setFresh((now) => now.filter((p) => p !== path));
  return (
    <>
      {bad.map((f) => (
        <FindingNote key={f.requirement + f.state} finding={f} />
      ))}
      {groups.map((group) => (
        <section key={group} class="group">
          <GroupHead part={part} group={group} />
          {there
            .filter((f) => groupOf(f.key) === group)
            .map((f) =>
              isTable(f) ? (
                <NewTable key={f.path} field={f} onGone={() => gone(f.path)} />
              ) : (
                <FieldRow
                  key={f.path}
                  field={f}
                  ruled={ruledOf(f, props.findings)}
                  fresh={fresh.includes(f.path) && f.text === null}
                  onGone={() => gone(f.path)}
                />
              ),
            )}
        </section>
      ))}
      {editable.value && (
        <>
          <Absent fields={absent} part={part} onAdd={(f) => setFresh((now) => [...now, f.path])} />
          <PartButtons part={part} />
        </>
      )}
    </>
  );
}

const isTable = (f: Field) => f.text === null && (formOf(f) === "table" || formOf(f) === "list");

function Reads(props: { cell: Cell }) {
  return (
    <>
      <h3 class="grp">Reads now</h3>
      <div>
        <dl class="reads">
          <dt>{capital(props.cell.note || props.cell.name)}</dt>
          <dd>{props.cell.value ? `${props.cell.value} ${props.cell.unit}` : "–"}</dd>
        </dl>
      </div>
    </>
  );
}

function GroupHead(props: { part: Part; group: string }) {
  const { part, group } = props;
  if (!group) return <h3 class="grp">Set</h3>;
  const name = group.split(".").map(labelOf).join(", ");
  const path = `${part.path}.${group}`;
  const remove = () => edit(`remove ${name.toLowerCase()} of ${part.id}`, [{ path, remove: true }]);
  return (
    <h3 class="grp with">
      {name}
      {editable.value && (
        <button type="button" class="link" onClick={() => void remove()}>
          Remove<span class="vh"> {name.toLowerCase()}</span>
        </button>
      )}
    </h3>
  );
}

function PartButtons(props: { part: Part }) {
  const { part } = props;
  const [copyable, setCopyable] = useState(false);
  useEffect(() => setCopyable(canCopy(part)), [part]);
  if (part.path === "site") return null;
  return (
    <div class="partbuttons">
      {copyable && (
        <button type="button" class="btn" onClick={() => void duplicate(part)}>
          Duplicate
        </button>
      )}
      <button type="button" class="btn" onClick={() => void removePart(part)}>
        Remove {part.of ? kindName(part.kind) : part.id}
      </button>
    </div>
  );
}
