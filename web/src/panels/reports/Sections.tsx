import { narrow } from "../../state/station";
import { chosen, withSection } from "./choice";
import type { Choices } from "./documents";
import { kept } from "./state";

/** Which sections are in the report. One that has nothing to tell says why. */
export function Sections(props: { choices: Choices; onShow: (id: string) => void }) {
  const inside = chosen(props.choices, kept.value);
  const can = props.choices.sections.filter((s) => s.has_content);
  const head = (
    <h2>
      Sections in the report{" "}
      <span class="dim n">
        {inside.length} of {can.length}
      </span>
    </h2>
  );
  if (narrow.value) {
    return (
      <>
        {head}
        <p class="txt">{inside.map((s) => s.name).join(", ") || "None"}</p>
      </>
    );
  }
  return (
    <>
      {head}
      <ul class="ticks">
        {props.choices.sections.map((s) => (
          <li key={s.id} class={s.has_content ? "" : "off"}>
            <label>
              <input
                type="checkbox"
                checked={inside.includes(s)}
                disabled={!s.has_content}
                onChange={(e) => (kept.value = withSection(kept.value, s.id, e.currentTarget.checked))}
              />
              <span>
                {s.name}
                {s.why_not && <small>Nothing to tell: {s.why_not}</small>}
              </span>
            </label>
            {inside.includes(s) && (
              <button
                type="button"
                class="show"
                aria-label={`Show in the preview: ${s.name}`}
                title="Show in the preview"
                onClick={() => props.onShow(s.id)}
              >
                <svg viewBox="0 0 16 16" aria-hidden="true">
                  <path d="M5 3l5 5-5 5" />
                </svg>
              </button>
            )}
          </li>
        ))}
      </ul>
      <p class="ticks-all">
        <button type="button" class="link" onClick={() => (kept.value = { ...kept.value, out: [] })}>
          Tick all
        </button>
        <button type="button" class="link" onClick={() => (kept.value = { ...kept.value, out: can.map((s) => s.id) })}>
          Tick none
        </button>
      </p>
      <p class="hint">The caution above the numbers and the list of cautions are in every report.</p>
    </>
  );
}
