import { useEffect, useRef, useState } from "preact/hooks";
import type { Edit, Field } from "../../../api/types";
import {
  inOtherUnits, inTheWay, labelOf, listText, quoted, refusal, textsOf, unquoted, valueTyped,
} from "../../../state/entry";
import { positionText } from "../../../draw/plan";
import { moving } from "../../../state/drag";
import { select, selection, units } from "../../../state/look";
import { editable, partOf, station, tryEdit } from "../../../state/station";
import { toast } from "../../../state/toast";
import { plain } from "../words";
import { allWords, giveValue, otherwise, partOfField } from "../giving";
import { ValueInput } from "./ValueInput";

/** What a rule says of a value that stands. */
export interface Ruled {
  state: "falls short" | "close";
  says: string;
}

interface FieldRowProps {
  field: Field;
  ruled?: Ruled | undefined;
  /** It was put in to be entered. */
  fresh?: boolean;
  /** It is no longer new. */
  onGone?: () => void;
}

/** One value: its name, as typed, the same in the other system, and what is wrong with it. */
export function FieldRow(props: FieldRowProps) {
  const { field } = props;
  const [draft, setDraft] = useState<string | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const row = useRef<HTMLDivElement>(null);
  const told = useRef(field.text);
  /** Key of the value that the typed one cannot stand beside. */
  const [other, setOther] = useState<string | null>(null);
  const otherPath = other && `${field.path.slice(0, field.path.lastIndexOf("."))}.${other}`;
  const label = labelOf(field.key);
  const id = `field-${field.path}`;
  const shown = field.text === null ? "" : shownOf(field);
  const name = `${label.toLowerCase()} of ${ownerOf(field)}`;

  useEffect(() => {
    if (props.fresh) row.current?.querySelector<HTMLElement>("input,select")?.focus();
  }, [props.fresh]);
  useEffect(() => {
    if (told.current !== field.text) setRefused(null);
  }, [field.text]);

  const cancel = () => {
    setDraft(null);
    setOther(null);
    setRefused(null);
    if (field.text === null) props.onGone?.();
  };
  const done = async (typed: string) => {
    if (typed.trim() === shown.trim() || typed.trim() === "") {
      setDraft(null);
      if (typed.trim() === "" && field.text !== null) setRefused("To take it out of the file, choose Remove.");
      return;
    }
    await enter(typed, []);
  };
  const enter = async (typed: string, before: Edit[]) => {
    setDraft(typed);
    setOther(null);
    const problem = await tryEdit(`set ${name}`, [...before, { path: field.path, value: sent(field, typed) }]);
    if (problem === null) {
      toast(`Set ${name}. Ctrl+Z undoes it.`);
      props.onGone?.();
      const made = partOf(field.path);
      if (made) select(made.stop ?? selection.value.stop, made.path);
    }
    const there = station.value?.parts.flatMap((p) => p.fields).find((f) => f.path === field.path);
    // What was changed meanwhile comes with the answer; the refusal is for that new value.
    told.current = there?.text ?? null;
    setRefused(problem === null ? null : (meanwhile(field, there, typed) ?? refusal(problem, field.text)));
    setOther(problem === null ? null : inTheWay(problem, field.key));
    setDraft((now) => (now === typed && problem === null ? null : now));
  };
  const remove = async () => {
    const problem = await tryEdit(`remove ${name}`, [{ path: field.path, remove: true }]);
    if (problem === null) toast(`Removed ${name}. Ctrl+Z undoes it.`);
    setRefused(problem);
  };

  const owner = partOfField(field);
  const others = otherwise(field).length;
  if (!editable.value) return <ReadOnly label={label} field={field} />;
  const tone = refused || problemTone(field) === "bad" ? "bad" : (props.ruled || field.problem) ? "warn" : "";
  return (
    <div class="field entry" ref={row}>
      <label for={id} title={plain(field.help)}>
        {label}
        {field.required && <span class="faint"> needed</span>}
      </label>
      <ValueInput
        id={id}
        label={label}
        field={field}
        value={draft ?? onTheWay(field) ?? shown}
        bad={refused !== null || tone === "bad" || props.ruled?.state === "falls short"}
        says={`${id}-says`}
        onDraft={setDraft}
        onDone={(typed) => void done(typed)}
        onLeave={(typed) => {
          // What was refused already is not tried again by going away from it.
          if (refused === null || typed !== draft) void done(typed);
        }}
        onCancel={cancel}
      />
      {field.text !== null && !field.required ? (
        <button
          type="button"
          class="btn quiet ico small"
          title={`Remove ${label.toLowerCase()}`}
          aria-label={`Remove ${label.toLowerCase()}`}
          onClick={() => void remove()}
        >
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M4 4l8 8M12 4l-8 8" />
          </svg>
        </button>
      ) : (
        <span />
      )}
      <span class={`hint ${tone}`} id={`${id}-says`} aria-live="polite">
        {refused ?? sayOf(field, props.ruled) ?? (field.text === null || props.fresh ? helpOf(field) : "")}
      </span>
      {otherPath && draft !== null && (
        <button type="button" class="link" onClick={() => void enter(draft, [{ path: otherPath, remove: true }])}>
          Put it in place of the {labelOf(otherPath).toLowerCase()}
        </button>
      )}
      {others > 0 && owner && draft === null && refused === null && (
        <button type="button" class="link forall" onClick={() => void giveValue(field).then(setRefused)}>
          Give to {allWords(owner)}
        </button>
      )}
    </div>
  );
}

function ReadOnly(props: { label: string; field: Field }) {
  const text = shownOf(props.field);
  // A spread stands in the file as a table; in words it is its likely value and its ends.
  const shown = text.startsWith("{") ? ((units.value === "us" ? props.field.us : props.field.si) ?? text) : text;
  const place = props.field.kind === "position" ? textsOf(props.field.text ?? "")?.join(", ") : null;
  const flag = { true: "yes", false: "no" }[shown];
  return (
    <div class="field read">
      <span class="dim">{props.label}</span>
      <span class="num">{place ?? flag ?? (shown || "not entered")}</span>
      <span class="hint">{inOtherUnits(props.field)}</span>
    </div>
  );
}

/** Why a value was refused that something else had changed meanwhile; null: nothing had. */
function meanwhile(before: Field, now: Field | undefined, typed: string): string | null {
  if (!now || now.text === before.text) return null;
  const there = now.text === null ? "taken out" : `set to ${unquoted(now.text)}`;
  return `Was ${there} elsewhere meanwhile. Enter puts ${typed.trim()} in its place, Esc keeps what is there.`;
}

const helpOf = (field: Field) =>
  field.kind === "part" ? `${plain(field.help)} One of the shelf, or its loss.` : plain(field.help);

const shownOf = (field: Field) => (field.text === null ? "" : unquoted(field.text));
const ownerOf = (field: Field) => {
  const part = partOfField(field);
  return part && part.path !== "site" ? part.id : "the station";
};

/** Where a part is held over the plan just now. */
function onTheWay(field: Field): string | null {
  const now = moving.value;
  return now && field.path === `${now.path}.position` ? positionText(now.at, units.value) : null;
}

/** Of two lengths each gets the unit in sight where it has none. */
function sent(field: Field, typed: string): string {
  const both = field.kind === "position" ? textsOf(typed) : null;
  if (field.kind === "part" && /^[\d.]/.test(typed.trim())) return `{ loss = ${quoted(typed.trim())} }`;
  if (!both) return valueTyped(field, typed, units.value);
  const unit = units.value === "us" ? "ft" : "m";
  const bare = /^[+\-−]?[\d.,]+$/;
  return listText(both.map((t) => (bare.test(t.trim()) ? `${t.trim().replace("−", "-")} ${unit}` : t)));
}

function problemTone(field: Field): "bad" | "warn" | "" {
  if (!field.problem) return "";
  const told = station.value?.diagnostics.find((d) => d.path === field.path);
  return told?.severity === "warning" ? "warn" : "bad";
}

function sayOf(field: Field, ruled: Ruled | undefined): string | null {
  if (field.problem) return field.problem;
  if (ruled) return ruled.says;
  const other = inOtherUnits(field);
  return other ? `= ${other}` : null;
}
