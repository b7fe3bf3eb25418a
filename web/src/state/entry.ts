/** Values of the site file between the form and the file: what is shown of a value, and what stands in the file. */
import type { Field, Units } from "../api/types";
import { capital, sentence } from "../draw/words";

/** A text in double quotes, as TOML writes it. */
export const quoted = (text: string) => JSON.stringify(text).replaceAll("\u007f", "\\u007F");

/** What is inside the quotes of a plain text; any other value as it stands. */
export function unquoted(text: string): string {
  if (/^'[^'\n]*'$/.test(text)) return text.slice(1, -1);
  if (!/^"(?:[^"\\\n]|\\.)*"$/.test(text)) return text;
  try {
    return JSON.parse(text) as string;
  } catch {
    return text.slice(1, -1);
  }
}

/** The texts of a list in one line: ["P1", "P2"]. Null where the value is no such list. */
export function textsOf(text: string): string[] | null {
  const inner = /^\[\s*([^]*?)\s*,?\s*\]$/.exec(text.trim())?.[1];
  if (inner === undefined) return null;
  if (inner === "") return [];
  const found = inner.match(/"(?:[^"\\]|\\.)*"|'[^']*'/g) ?? [];
  const rest = inner.replace(/"(?:[^"\\]|\\.)*"|'[^']*'/g, "").replace(/[\s,]/g, "");
  return rest === "" ? found.map(unquoted) : null;
}

export const listText = (ids: readonly string[]) => `[${ids.map(quoted).join(", ")}]`;

type Form =
  | "text"
  | "choice"
  | "flag"
  | "reference"
  | "references"
  | "date"
  | "clock"
  | "position"
  | "table"
  | "list";

/** Kinds of fields that no unit belongs to. */
const plain = new Set([
  "text", "id", "number", "choice", "flag", "reference", "date", "clock", "list", "table", "unknown",
]);

interface Kind {
  kind: string;
  table: string | null;
  choices: string[] | null;
}

/** How a value of this kind is entered. */
export function formOf(field: Kind): Form {
  if (field.kind === "choice" || field.kind === "flag" || field.kind === "reference") return field.kind;
  if (field.kind === "date" || field.kind === "clock" || field.kind === "position") return field.kind;
  if (field.kind === "table") return "table";
  if (field.kind === "list" && field.table) return "list";
  if (field.kind === "list" && field.choices) return "references";
  return "text";
}

const bareNumber = /^[+\-−]?\s*(?:\d[\d.,]*|\.\d+)(?:e[+-]?\d+)?$/i;

/** The unit in which a value is shown in these units: "psi/gpm^2" of "0.05 psi/gpm^2"; empty where there is none. */
export function unitOfField(field: Pick<Field, "us" | "si" | "text">, units: Units): string {
  const shown = (units === "us" ? field.us : field.si) ?? "";
  const behind = /^[+\-−]?[\d.,]+(?:e[+-]?\d+)?\s*([^\d\s(].*?)(?:\s*\(.*)?$/i.exec(shown)?.[1] ?? "";
  return behind.replace(/\s+\d.*$/, "");
}

/** What is sent for a typed value. A bare number gets the unit that the value is shown in; the rest goes as typed. */
export function valueTyped(field: Field, typed: string, units: Units): string {
  const text = typed.trim().replace(/^−/, "-");
  if (plain.has(field.kind)) return field.kind === "text" || field.kind === "id" ? quoted(text) : text;
  if (!bareNumber.test(text)) return text;
  const unit = unitOfField(field, units);
  const asNumber = field.text !== null && bareNumber.test(field.text);
  return unit && !asNumber ? `${text} ${unit}` : text;
}

/** A value as it stands in a block that is written new. Empty: it is left out. */
export function tomlOf(kind: Kind, typed: string): string {
  const text = typed.trim().replace(/^−/, "-");
  if (text === "") return "";
  const form = formOf(kind);
  if (form === "flag" || form === "date" || form === "table") return text;
  if (kind.kind === "number" || kind.kind === "list" || form === "position") return text;
  if (/^[{["']/.test(text) && kind.kind !== "text") return text;
  if ((kind.kind === "loss" || kind.kind === "ratio") && bareNumber.test(text)) return text;
  return quoted(text);
}

/** The value in the other unit system; null where it has none or shows the same. */
export function inOtherUnits(field: Pick<Field, "us" | "si" | "text">): string | null {
  if (field.text === null || !field.us || !field.si) return null;
  const asTyped = unquoted(field.text);
  const other = field.us === asTyped ? field.si : field.si === asTyped ? field.us : [...new Set([field.us, field.si])].join(", ");
  return other === asTyped ? null : withMinus(other);
}

/** With a true minus, as numbers are shown. */
const withMinus = (text: string) => text.replace(/(^|[\s(,])-(?=[\d.])/g, "$1−");

/** "shape.inside_diameter" as a label reads: "Inside diameter". */
export function labelOf(key: string): string {
  const last = key.split(".").at(-1) ?? key;
  return capital(last.replaceAll("_", " "));
}

/** With what it stands under: "Curve, shutoff". */
export const fullLabelOf = (key: string) =>
  groupOf(key) ? `${groupOf(key).split(".").map(labelOf).join(", ")}, ${labelOf(key).toLowerCase()}` : labelOf(key);

/** What a key stands under: "shape" of "shape.inside_diameter"; empty for keys of the part itself. */
export const groupOf = (key: string) => key.split(".").slice(0, -1).join(".");

/** Why an entry was refused, with what stays. */
export function refusal(problem: string, kept: string | null): string {
  return `${sentence(problem)} ${kept === null ? "Nothing was entered." : `Kept ${unquoted(kept)}.`}`;
}

/** Units that a value of a kind is given in, for an empty field; US customary and SI. */
const unitWords: Record<string, readonly [string, string]> = {
  length: ["ft, in", "m, mm"],
  flow: ["gpm", "L/min"],
  volume: ["gal", "L"],
  gauge_pressure: ["psi", "kPa"],
  absolute_pressure: ["psi", "kPa"],
  pressure_difference: ["psi", "kPa"],
  loss_per_flow_squared: ["psi/gpm^2", "kPa.min2/L2"],
  loss: ["psi/gpm^2", "kPa.min2/L2"],
  temperature: ["degF", "degC"],
  time: ["s, min", "s, min"],
  velocity: ["ft/s", "m/s"],
  part: ["of the shelf", "of the shelf"],
  position: ["ft, in", "m, mm"],
  ratio: ["%", "%"],
};

/** What an empty field shows of the units to enter; empty where a value has none. */
export const unitWordsOf = (kind: string, units: Units) => unitWords[kind]?.[units === "us" ? 0 : 1] ?? "";

/** Of two keys of which a part may have one, the one that stands in the way of `key`; null where a refusal is of
 * another kind. */
export function inTheWay(problem: string, key: string): string | null {
  const [, first, second] = /has both '([a-z_.]+)' and '([a-z_.]+)'/.exec(problem) ?? [];
  const last = key.split(".").at(-1);
  return first === last ? (second ?? null) : second === last ? (first ?? null) : null;
}
