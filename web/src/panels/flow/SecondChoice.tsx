import { useRef, useState } from "preact/hooks";
import { api, Refused } from "../../api/client";
import type { Field, Part } from "../../api/types";
import { sentence } from "../../draw/words";
import { unquoted } from "../../state/entry";
import { secondChoice, secondEdits, type Change } from "../../state/hoses";
import { units } from "../../state/look";
import { alive, edit, editable, narrow, partOf, station } from "../../state/station";
import { changeable, groupsByKind, withShownUnit } from "./told/entry";
import { Letter } from "../parts/Letter";

/** The part of the station that a path leads into, and its field. */
function fieldAt(path: string): { part: Part; field: Field } | null {
  for (const part of station.value?.parts ?? []) {
    const field = part.fields.find((f) => f.path === path);
    if (field) return { part, field };
  }
  return null;
}

const putAt = (at: number, change: Change) =>
  (secondChoice.value = secondChoice.value.map((c, i) => (i === at ? change : c)));
const without = (at: number) => (secondChoice.value = secondChoice.value.filter((_, i) => i !== at));

/** What one value would be refused for; null: the engine takes it. */
async function refusal(change: Change): Promise<string | null> {
  try {
    await api.ask([], [change]);
    return null;
  } catch (error) {
    if (!(error instanceof Refused)) {
      alive.value = false;
      return "The server does not answer.";
    }
    return error.first;
  }
}

/** What the second choice changes: one value a row, and a row to add one. */
export function SecondChoice() {
  const changes = secondChoice.value;
  if (narrow.value) {
    if (!changes.length) return null;
    return (
      <p class="words">
        <Letter of="B" /> {changes.map((c) => `${c.path} = ${unquoted(c.value)}`).join(", ")}
      </p>
    );
  }
  return (
    <section class="second">
      <h2>
        {changes.length > 0 && <Letter of="B" />} Second choice{" "}
        <span class="dim">the same station with other values</span>
      </h2>
      {changes.map((change, i) => (
        <ChangeRow key={change.path} change={change} onChange={(c) => putAt(i, c)} onRemove={() => without(i)} />
      ))}
      <AddChange taken={changes.map((c) => c.path)} />
      {changes.length > 0 && (
        <div class="row">
          <button
            type="button"
            class="btn go"
            disabled={!editable.value}
            title={
              editable.value ? "One step that can be undone" : "To read only: open the address that the program printed"
            }
            onClick={() => void putOnSite()}
          >
            Put B on the site
          </button>
          <button type="button" class="btn" onClick={() => (secondChoice.value = [])}>
            Leave B
          </button>
        </div>
      )}
    </section>
  );
}

async function putOnSite() {
  const told = secondChoice.value.map((c) => `${c.path} = ${unquoted(c.value)}`).join(", ");
  if (await edit(`put B on the site: ${told}`, secondEdits.value)) secondChoice.value = [];
}

/** The value in B, with that of A beneath. */
function ChangeRow(props: { change: Change; onChange: (c: Change) => void; onRemove: () => void }) {
  const { change } = props;
  const id = `second-${change.path}`;
  const field = fieldAt(change.path)?.field;
  return (
    <div class="field change">
      <label for={id}>{change.path}</label>
      <button
        type="button"
        class="btn quiet ico"
        aria-label={`Leave out ${change.path}`}
        title="Leave out"
        onClick={props.onRemove}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M4 4l8 8M12 4l-8 8" />
        </svg>
      </button>
      {field ? (
        <Entry
          id={id}
          field={field}
          value={unquoted(change.value)}
          onTake={(value) => props.onChange({ ...change, value })}
        />
      ) : (
        <span class="hint bad">The station has no such value.</span>
      )}
    </div>
  );
}

const inA = (field: Field) => {
  const [us, si] = [field.us, field.si];
  if (field.text === null) return "not entered in A";
  return us && si && us !== si ? `A: ${unquoted(us)}, ${unquoted(si)}` : `A: ${unquoted(field.text)}`;
};

/** A value with its unit; what the engine refuses is told and not taken. */
function Entry(props: { id: string; field: Field; value: string; onTake: (value: string) => void }) {
  const [typed, setTyped] = useState(props.value);
  const [problem, setProblem] = useState("");
  const asked = useRef("");
  const { field } = props;
  const take = async (text: string) => {
    const value = withShownUnit(text, field, units.value);
    if (value === asked.current) return;
    if (value === props.value || value === "") {
      setTyped(props.value);
      setProblem("");
      return;
    }
    asked.current = value;
    const told = await refusal({ path: field.path, value });
    asked.current = "";
    setProblem(told ? sentence(told) + (props.value ? ` Kept ${props.value}.` : "") : "");
    if (told) return;
    setTyped(value);
    props.onTake(value);
  };
  const hint = `${props.id}-hint`;
  return (
    <>
      {field.choices ? (
        <select
          id={props.id}
          class="btn"
          value={typed}
          aria-describedby={hint}
          onChange={(e) => void take(e.currentTarget.value)}
        >
          {!field.choices.includes(typed) && <option value={typed}>{typed || "choose"}</option>}
          {field.choices.map((c) => (
            <option key={c} value={c}>
              {c}
            </option>
          ))}
        </select>
      ) : (
        <span class={`in${problem ? " bad" : ""}`}>
          <input
            id={props.id}
            value={typed}
            autocomplete="off"
            aria-describedby={hint}
            aria-invalid={problem !== ""}
            onInput={(e) => setTyped(e.currentTarget.value)}
            onBlur={() => void take(typed)}
            onKeyDown={(e) => {
              if (e.key === "Enter") void take(typed);
              if (e.key !== "Escape") return;
              setTyped(props.value);
              setProblem("");
            }}
          />
        </span>
      )}
      <span id={hint} class={`hint${problem ? " bad" : ""}`} role={problem ? "alert" : undefined}>
        {problem || inA(field)}
      </span>
    </>
  );
}

/** Chooses a part and one of its values, and takes what it is in B. */
function AddChange(props: { taken: readonly string[] }) {
  const [at, setAt] = useState("");
  const [path, setPath] = useState("");
  const part = partOf(at);
  const fields = part ? changeable(part).filter((f) => !props.taken.includes(f.path)) : [];
  const field = fields.find((f) => f.path === path);
  const add = (value: string) => {
    secondChoice.value = [...secondChoice.value.filter((c) => c.path !== path), { path, value }];
    setPath("");
  };
  return (
    <div class="add-change">
      <select
        class="btn"
        aria-label="Part to change in B"
        value={at}
        onChange={(e) => {
          setAt(e.currentTarget.value);
          setPath("");
        }}
      >
        <option value="">Part to change</option>
        {groupsByKind(station.value?.parts ?? []).map((group) => (
          <optgroup key={group.kind} label={group.kind.replaceAll("_", " ")}>
            {group.parts.map((p) => (
              <option key={p.path} value={p.path}>
                {p.kind.replaceAll("_", " ")} {p.id}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      <select
        class="btn"
        aria-label="Value to change in B"
        value={path}
        disabled={!part}
        onChange={(e) => setPath(e.currentTarget.value)}
      >
        <option value="">Value</option>
        {fields.map((f) => (
          <option key={f.path} value={f.path}>
            {f.key.replaceAll("_", " ")}
            {f.text === null ? "" : `: ${unquoted(f.text)}`}
          </option>
        ))}
      </select>
      {field && (
        <div class="field change" key={path}>
          <label for="second-new">In B it is</label>
          <Entry id="second-new" field={field} value="" onTake={add} />
        </div>
      )}
    </div>
  );
}
