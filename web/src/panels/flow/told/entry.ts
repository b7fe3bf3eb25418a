import type { Field, Part } from "../../../api/types";
import { readFlow, unitOf, withUnit, type UnitSystem } from "../../../draw/numbers";
import { unquoted } from "../../../state/entry";

const plain = /^[-−+]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** A number without a unit is in the one that the field shows now. */
export function withShownUnit(typed: string, field: Field, units: UnitSystem): string {
  const text = typed.trim();
  const shown = (units === "us" ? field.us : field.si) ?? unquoted(field.text ?? "");
  const unit = /^[^a-zA-Z°%'"]*?\s*([a-zA-Z°%'"][^\s(]*)/.exec(shown)?.[1];
  return plain.test(text) && unit ? `${text.replace(",", ".").replace("−", "-")} ${unit}` : text;
}

/** A flow to keep as the engine takes it, with its unit; empty: none. */
export function readKeep(typed: string, units: UnitSystem): { text: string } | { problem: string } {
  const text = typed.trim();
  if (text === "") return { text };
  const read = readFlow(text, units);
  if ("problem" in read) return read;
  return { text: plain.test(text) ? `${text.replace(",", ".")} ${unitOf("flow", units)}` : text };
}

/** The same flow in the other system: "30.3 L/min"; empty where none is entered. */
export function otherFlow(kept: string, units: UnitSystem): string {
  const read = kept ? readFlow(kept, units) : null;
  return read && "si" in read ? withUnit("flow", units === "us" ? "si" : "us", read.si) : "";
}

/** Values that a second choice can change. */
export const changeable = (part: Part): Field[] => part.fields.filter((f) => f.key !== "id" && f.kind !== "unknown");

interface KindGroup {
  kind: string;
  parts: Part[];
}

/** Parts with something to change, by kind: those of the course first, in its order. */
export function groupsByKind(parts: readonly Part[]): KindGroup[] {
  const groups: KindGroup[] = [];
  for (const part of parts) {
    if (!changeable(part).length) continue;
    const group = groups.find((g) => g.kind === part.kind);
    if (group) group.parts.push(part);
    else groups.push({ kind: part.kind, parts: [part] });
  }
  const first = ["line", "pump", "control", "inlet", "hose", "tank", "product"];
  const place = (kind: string) => (first.includes(kind) ? first.indexOf(kind) : first.length);
  return groups.sort((a, b) => place(a.kind) - place(b.kind));
}
