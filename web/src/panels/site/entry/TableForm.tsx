import { useEffect, useRef, useState } from "preact/hooks";
import type { TableKey } from "../../../api/types";
import type { Written } from "../../../state/entry-blocks";
import { choicesFor } from "../../../state/entry-kinds";
import { fullLabelOf } from "../../../state/entry";
import { station } from "../../../state/station";
import { Note } from "../../parts/Note";
import { plain } from "../words";
import { ValueInput } from "./ValueInput";

/** Values of a new table or part, all entered before anything is written. */
export function TableForm(props: {
  id: string;
  keys: readonly TableKey[];
  start?: Record<string, string>;
  verb: string;
  about?: string;
  /** Key of what is entered first; otherwise the first that is empty. */
  focus?: string;
  /** Resolves to what is wrong, or null. */
  onSubmit: (values: Written[]) => Promise<string | null>;
  onCancel: () => void;
}) {
  const [typed, setTyped] = useState<Record<string, string>>(props.start ?? {});
  const [problem, setProblem] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    const inputs = [...(form.current?.querySelectorAll<HTMLInputElement>("input,select") ?? [])];
    const first = props.focus && document.getElementById(`${props.id}-${props.focus}`);
    if (first) return first.focus();
    (inputs.find((i) => i.value === "" || i.value === "[]") ?? inputs[0])?.focus();
  }, []);
  const set = (key: string, value: string) => setTyped((now) => ({ ...now, [key]: value }));
  const written = (): Written[] =>
    props.keys.map((k) => ({ ...k, choices: choicesOf(k), typed: (typed[k.key] ?? "").replace(/^\[\]$/, "") }));
  const lacking = props.keys.filter((k) => k.required && !typed[k.key]?.trim());
  const busy = useRef(false);
  const submit = async () => {
    if (busy.current) return;
    busy.current = true;
    setProblem(lacking.length ? `${fullLabelOf(lacking[0]?.key ?? "")} is needed.` : await props.onSubmit(written()));
    busy.current = false;
  };
  const at = (k: TableKey) => problem !== null && isAbout(problem, k);
  const placed = props.keys.some(at);
  return (
    <form
      ref={form}
      class="newform"
      noValidate
      onSubmit={(e) => {
        e.preventDefault();
        void submit();
      }}
      onKeyDown={(e) => {
        if (e.key === "Escape") props.onCancel();
        if (e.key === "Enter" && e.target instanceof HTMLInputElement) void submit();
      }}
    >
      {props.about && <p class="hint-line">{props.about}</p>}
      {problem !== null && !placed && (
        <Note tone="bad" role="alert">
          {problem}
        </Note>
      )}
      {props.keys.map((k) => (
        <div class="field entry" key={k.key}>
          <label for={`${props.id}-${k.key}`}>
            {fullLabelOf(k.key)}
            {k.required && <span class="faint"> needed</span>}
          </label>
          <ValueInput
            id={`${props.id}-${k.key}`}
            label={fullLabelOf(k.key)}
            field={{ ...k, choices: choicesOf(k) }}
            value={typed[k.key] ?? ""}
            bad={at(k)}
            open={!k.required}
            says={`${props.id}-${k.key}-says`}
            onDraft={(v) => set(k.key, v)}
            onDone={(v) => set(k.key, v)}
            onCancel={props.onCancel}
          />
          <span />
          <span
            class={`hint ${at(k) ? "bad" : ""}`}
            id={`${props.id}-${k.key}-says`}
            role={at(k) ? "alert" : undefined}
          >
            {at(k) ? problem : plain(k.help)}
          </span>
        </div>
      ))}
      <div class="formfoot">
        <button type="submit" class="btn go">
          {props.verb}
        </button>
        <button type="button" class="btn" onClick={props.onCancel}>
          Cancel
        </button>
      </div>
    </form>
  );
}

const choicesOf = (key: TableKey) => (station.value ? choicesFor(station.value, key) : key.choices);

/** Messages begin with the key that they are about. */
function isAbout(problem: string, key: TableKey): boolean {
  const last = key.key.split(".").at(-1) ?? key.key;
  return problem.startsWith(`${last} `) || problem === `${fullLabelOf(key.key)} is needed.`;
}
