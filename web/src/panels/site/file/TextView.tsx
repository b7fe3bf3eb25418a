import { useRef, useState } from "preact/hooks";
import { withHint } from "../../../api/client";
import type { Diagnostic } from "../../../api/types";
import { editable, setText, station } from "../../../state/station";
import { toast } from "../../../state/toast";
import { StatusShape } from "../../parts/status";
import { asked, Dialog } from "./FileMenu";

/** The file as text, with what is wrong in it by line. Applied as one undo step. */
export function TextView() {
  const s = station.value;
  const [draft, setDraft] = useState<string | null>(null);
  const [base, setBase] = useState(s?.revision ?? 0);
  const area = useRef<HTMLTextAreaElement>(null);
  const gutter = useRef<HTMLPreElement>(null);
  if (asked.value !== "text" || !s) return null;
  const text = draft ?? s.text;
  const stale = draft !== null && base !== s.revision;
  const marked = new Map(draft === null ? s.diagnostics.filter((d) => d.line > 0).map((d) => [d.line, d]) : []);
  const close = () => {
    asked.value = null;
    setDraft(null);
  };
  const apply = async () => {
    if (draft === null) return;
    if (!(await setText("edit the text", draft))) return;
    setDraft(null);
    toast("The text is applied. Ctrl+Z undoes it.");
  };
  const change = (value: string) => {
    if (draft === null) setBase(s.revision);
    setDraft(value === s.text ? null : value);
  };
  return (
    <Dialog title={`Text of ${s.file}`} class="textview">
      <div class="lines">
        <pre ref={gutter} aria-hidden="true">
          {text.split("\n").map((_, i) => (
            <span key={i} class={marked.has(i + 1) ? (marked.get(i + 1)?.severity === "error" ? "bad" : "warn") : ""}>
              {i + 1}
              {"\n"}
            </span>
          ))}
        </pre>
        <textarea
          ref={area}
          onFocus={begin}
          aria-label="Text of the file"
          spellcheck={false}
          wrap="off"
          readOnly={!editable.value}
          value={text}
          onInput={(e) => change(e.currentTarget.value)}
          onScroll={(e) => {
            if (gutter.current) gutter.current.scrollTop = e.currentTarget.scrollTop;
          }}
        />
      </div>
      {stale && <p class="hint-line">The file was changed meanwhile. What you apply replaces that.</p>}
      {draft === null && s.diagnostics.length > 0 && (
        <ul class="told">
          {s.diagnostics.map((d) => (
            <li key={`${d.line}:${d.column}:${d.message}`}>
              <StatusShape state={d.severity === "error" ? "falls short" : "close"} />
              <button type="button" class="link" disabled={d.line === 0} onClick={() => goTo(area.current, text, d)}>
                {d.line > 0 ? `Line ${d.line}` : "The file"}
              </button>
              <span>{withHint(d)}</span>
            </li>
          ))}
        </ul>
      )}
      <div class="formfoot">
        {editable.value && (
          <button type="button" class="btn go" disabled={draft === null} onClick={() => void apply()}>
            Apply
          </button>
        )}
        <button type="button" class="btn" onClick={close}>
          {draft === null ? "Close" : "Drop the changes"}
        </button>
        {draft !== null && <span class="faint">Not applied yet; what is wrong is told when it is.</span>}
      </div>
    </Dialog>
  );
}

/** A text that is opened shows its beginning. */
function begin(event: FocusEvent) {
  const area = event.currentTarget as HTMLTextAreaElement;
  if (area.selectionStart < area.value.length || area.dataset["seen"]) return;
  area.dataset["seen"] = "yes";
  area.setSelectionRange(0, 0);
  area.scrollTop = 0;
}

/** Puts the cursor over what a diagnostic is about. */
function goTo(area: HTMLTextAreaElement | null, text: string, d: Diagnostic) {
  if (!area) return;
  const begin = text.split("\n").slice(0, d.line - 1).join("\n").length + (d.line > 1 ? 1 : 0) + d.column - 1;
  area.focus();
  area.setSelectionRange(begin, begin + d.length);
  area.scrollTop = Math.max(0, (d.line - 4) * parseFloat(getComputedStyle(area).lineHeight));
}
