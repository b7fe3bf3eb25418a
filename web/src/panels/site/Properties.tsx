import { useMemo } from "preact/hooks";
import type { Part } from "../../api/types";
import { capital } from "../../draw/words";
import { useStanding } from "../../state/ask";
import { moving } from "../../state/drag";
import { kindName } from "../../state/entry-kinds";
import { product, select, selection, stopNames, units } from "../../state/look";
import { editable, partOf, station } from "../../state/station";
import { toast } from "../../state/toast";
import type { Finding } from "../parts/finding";
import { addWords, canCopy, duplicate, kindsNow, removePart, startAdding } from "./adding";
import { cellOf, type Cell } from "./course-cells";
import { FindingNote, MeetsHere, unique } from "./Findings";
import { useKeepFocus } from "./focus";
import { allWords, entered, giveTable, othersLike } from "./giving";
import { PartFields } from "./PartFields";
import { StopSymbol } from "./symbols";

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
  const bad = unique(props.findings.filter((f) => ["falls short", "close", "not determined"].includes(f.state)));
  return (
    <>
      {bad.map((f) => (
        <FindingNote key={f.requirement + f.state} finding={f} />
      ))}
      <PartFields part={part} findings={props.findings} />
      {editable.value && <PartButtons part={part} />}
      <Belonging part={part} />
    </>
  );
}

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
