import { signal } from "@preact/signals";
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Field, Part } from "../../api/types";
import { capital } from "../../draw/words";
import { useStanding } from "../../state/ask";
import { moving } from "../../state/drag";
import { formOf, groupOf, labelOf } from "../../state/entry";
import { listIn } from "../../state/entry-blocks";
import { kindName } from "../../state/entry-kinds";
import { product, select, selection, stopNames, units } from "../../state/look";
import { edit, editable, partOf, station } from "../../state/station";
import { toast } from "../../state/toast";
import type { Finding } from "../parts/finding";
import { Absent, NewTable } from "./Absent";
import { addWords, canCopy, duplicate, kindsNow, removePart, startAdding } from "./adding";
import { cellOf, type Cell } from "./course-cells";
import { FieldRow } from "./entry/FieldRow";
import { FindingNote, MeetsHere, ruledOf, unique } from "./Findings";
import { useKeepFocus } from "./focus";
import { allWords, entered, giveTable, othersLike } from "./giving";
import { StopSymbol } from "./symbols";

/** A value that is not entered yet and is to be asked for, by its path. */
export const wantedField = signal<string | null>(null);

/** The part whose values are shown: the chosen one, else the first at the chosen stop, of the chosen product if any. */
function shownPart(): Part | null {
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
          <h2>{part ? capital(kindName(part.kind)) : stopNames[(stop ?? 1) - 1]}</h2>
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

/** Its stop, the stop's name where the part is called otherwise, and its product. */
function placeOf(stop: number | null, part: Part | null): string {
  if (!stop) return "Not on the course";
  const name = stopNames[stop - 1] ?? "";
  const other = part !== null && kindName(part.kind) !== name.toLowerCase();
  return [`Stop ${stop} of 11`, other ? name.toLowerCase() : "", part?.product ?? ""].filter(Boolean).join(", ");
}

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
          <MoreOfLists part={part} />
          <Absent fields={absent} part={part} onAdd={(f) => setFresh((now) => [...now, f.path])} />
          <PartButtons part={part} />
        </>
      )}
      <Belonging part={part} />
    </>
  );
}

const empty = { text: null, us: null, si: null, line: null, problem: null };

/** Lists of tables that the part has written in brackets, each with the way to add one more to it. */
function MoreOfLists(props: { part: Part }) {
  const { part } = props;
  const [open, setOpen] = useState<string | null>(null);
  const s = station.value;
  const lists = (s?.tables[part.kind] ?? []).flatMap((k) => {
    if (formOf(k) !== "list" || !part.fields.some((f) => f.key.startsWith(`${k.key}.`))) return [];
    const text = listIn(s?.text ?? "", part.path, k.key);
    return text ? [{ key: k, text }] : [];
  });
  return (
    <>
      {lists.map(({ key, text }) =>
        open === key.key ? (
          <NewTable
            key={key.key}
            field={{ ...key, ...empty, path: `${part.path}.${key.key}` }}
            list={text}
            onGone={() => setOpen(null)}
          />
        ) : (
          <p key={key.key}>
            <button type="button" class="link" onClick={() => setOpen(key.key)}>
              Add to {labelOf(key.key).toLowerCase()}
            </button>
          </p>
        ),
      )}
    </>
  );
}

const isTable = (f: Field) =>
  f.text === null && (formOf(f) === "table" || formOf(f) === "list" || (f.kind === "pipe" && f.table !== null));

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
  const others = othersLike(part).length;
  const all = async () => {
    const problem = await giveTable(group, entered(part, group), part);
    if (problem) toast(problem);
  };
  const remove = () => edit(`remove ${name.toLowerCase()} of ${part.id}`, [{ path, remove: true }]);
  return (
    <h3 class="grp with">
      {name}
      {editable.value && (
        <span>
          {!group.includes(".") && others > 0 && (
            <button type="button" class="link" onClick={() => void all()}>
              Give to {allWords(part)}
            </button>
          )}
          <button type="button" class="link" onClick={() => void remove()}>
            Remove<span class="vh"> {name.toLowerCase()}</span>
          </button>
        </span>
      )}
    </h3>
  );
}

/** What the part belongs to and what belongs to it, each a way there, and what more can be added to it. */
function Belonging(props: { part: Part }) {
  const { part } = props;
  const own = (station.value?.parts ?? []).filter((p) => p.of === part.path);
  const above = part.of ? partOf(part.of) : undefined;
  const more = kindsNow().filter((k) => part.of === null && k.owner === part.path.split(".")[0]);
  if (!above && !own.length && !more.length) return null;
  const way = (p: Part) => (
    <button type="button" class="link" onClick={() => select(p.stop ?? selection.value.stop, p.path)}>
      {p.of === part.path && p.id === part.id ? "" : `${p.id}, `}
      {kindName(p.kind)}
    </button>
  );
  return (
    <>
      <h3 class="grp">{own.length || more.length ? "Belongs to it" : "Belongs to"}</h3>
      {(above || own.length > 0) && (
        <ul class="belongs">
          {above && (
            <li>
              {own.length > 0 && "Of "}
              {way(above)}
            </li>
          )}
          {own.map((p) => (
            <li key={p.path}>{way(p)}</li>
          ))}
        </ul>
      )}
      {editable.value && more.length > 0 && (
        <div class="partbuttons">
          {more.map((k) => (
            <button type="button" class="btn" key={k.header} onClick={() => startAdding(k.header, part.path)}>
              {addWords(k.header, {})}
            </button>
          ))}
        </div>
      )}
    </>
  );
}

function PartButtons(props: { part: Part }) {
  const { part } = props;
  const copyable = useMemo(() => canCopy(part), [part]);
  if (part.path === "site") return null;
  const owner = part.of ? partOf(part.of) : undefined;
  const all = async (to: Part) => {
    const problem = await giveTable(part.path.slice(to.path.length + 1), entered(part), to);
    if (problem) toast(problem);
  };
  return (
    <div class="partbuttons">
      {copyable && (
        <button type="button" class="btn" onClick={() => void duplicate(part)}>
          Duplicate
        </button>
      )}
      {owner && !copyable && othersLike(owner).length > 0 && entered(part).length > 0 && part.kind !== "inlet" && (
        <button type="button" class="btn" onClick={() => void all(owner)}>
          Give to {allWords(owner)}
        </button>
      )}
      <button type="button" class="btn" onClick={() => void removePart(part)}>
        Remove {part.of ? kindName(part.kind) : part.id}
      </button>
    </div>
  );
}
