import { useState } from "preact/hooks";
import type { Part } from "../../../api/types";
import { capital } from "../../../draw/words";
import { useStanding } from "../../../state/ask";
import { kindName } from "../../../state/entry-kinds";
import { select, selection, sheet, units } from "../../../state/look";
import { editable } from "../../../state/station";
import type { Finding } from "../../parts/finding";
import { useKeepFocus } from "../../site/focus";
import { PartFields } from "../../site/PartFields";
import { valuesOpen } from "../state";
import { fieldsOf, type ShownPart } from "./shown";

/** The values of the site file that the view depends on, to be changed where their effect is seen. */
export function ViewValues({ of, open = false }: { of: readonly ShownPart[]; open?: boolean }) {
  const unfolded = open || valuesOpen.value !== "";
  if (!of.length) return null;
  return (
    <details
      class="more viewvalues"
      open={unfolded}
      onToggle={(e) => {
        if (!open) valuesOpen.value = e.currentTarget.open ? "open" : "";
      }}
    >
      <summary>Values in this view</summary>
      {unfolded && <Unfolded of={of} />}
    </details>
  );
}

function nameOf(part: Part): string {
  if (part.kind === "site") return "The station";
  const kind = kindName(part.kind);
  return part.id === part.kind ? capital(kind) : `${part.id}, ${kind}`;
}

function Unfolded({ of }: { of: readonly ShownPart[] }) {
  const [path, choose] = useState("");
  const box = useKeepFocus<HTMLDivElement>("select");
  const shown = of.find((s) => s.part.path === path) ?? of[0];
  const findings = useStanding<{ document?: { findings: Finding[] } }>(() => ({
    wants: [{ study: "findings", units: units.value }],
  }));
  if (!shown) return null;
  const { part, keys } = shown;
  const mine = (findings.answers?.[0]?.document?.findings ?? []).filter((f) => f.subject === part.id);
  return (
    <div ref={box}>
      {of.length > 1 && (
        <div class="field picker">
          <label for="values-part" class="vh">
            Part
          </label>
          <span class="in sel">
            <select id="values-part" value={part.path} onChange={(e) => choose(e.currentTarget.value)}>
              {of.map((s) => (
                <option key={s.part.path} value={s.part.path}>
                  {nameOf(s.part)}
                </option>
              ))}
            </select>
          </span>
        </div>
      )}
      {of.length === 1 && <p class="cap">{nameOf(part)}</p>}
      <PartFields key={part.path} part={part} findings={mine} only={(all) => fieldsOf(all, keys)} />
      {editable.value && (
        <p>
          <button
            type="button"
            class="link"
            onClick={() => {
              select(part.stop ?? selection.value.stop, part.path);
              sheet.value = "site";
            }}
          >
            All of its values on the Site sheet
          </button>
        </p>
      )}
    </div>
  );
}
