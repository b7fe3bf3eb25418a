import { signal } from "@preact/signals";
import { api, Refused } from "../../api/client";
import type { Diagnostic, Edit, Part, Station } from "../../api/types";
import { blockText, copyOf, freshId, stretchOf, withBlock, type Written } from "../../state/entry-blocks";
import { kindName, newKinds, type NewKind } from "../../state/entry-kinds";
import { nextInRow, positionText } from "../../draw/plan";
import { placed, siteOf } from "../../state/drag";
import { select, units } from "../../state/look";
import { edit, partOf, setText, station } from "../../state/station";
import { toast } from "../../state/toast";

/** The kind of part that is being added, and to what; null: none is. */
export const adding = signal<{ kind: NewKind; owner: string | null; start: Record<string, string> } | null>(null);

export const kindsNow = () => newKinds(station.value?.tables ?? {});
export const ownersOf = (kind: NewKind): Part[] =>
  station.value?.parts.filter((p) => p.of === null && p.path.split(".")[0] === kind.owner) ?? [];

export function startAdding(header: string, owner: string | null = null, start: Record<string, string> = {}) {
  const kind = kindsNow().find((k) => k.header === header);
  if (kind) adding.value = { kind, owner: owner ?? ownersOf(kind).at(-1)?.path ?? null, start };
}

/** The part that a hint says is to be added, with the value it is to have: add a [[line]] with to = "D1.regular". */
export function addedBy(hint: string): { header: string; start: Record<string, string> } | null {
  const header = /add (?:a|an) \[\[([a-z_.]+)\]\]/.exec(hint)?.[1];
  if (!header || !kindsNow().some((k) => k.header === header)) return null;
  const [, key, value] = /with ([a-z_]+) = "([^"]*)"/.exec(hint) ?? [];
  return { header, start: key && value ? { [key]: value } : {} };
}

const told = (d: Diagnostic) => d.message + (d.hint ? `; ${d.hint}` : "");

/** What a try of edits finds wrong with the values that are written; null: nothing. What is still missing elsewhere,
 * such as a line to a new inlet, is no fault of these. */
async function wrongValue(now: Station, edits: Edit[], keys: readonly string[]): Promise<string | null> {
  try {
    const { diagnostics } = await api.ask([], edits);
    const old = new Set(now.diagnostics.map((d) => d.message));
    const fresh = diagnostics.filter((d) => d.severity === "error" && !old.has(d.message));
    const mine = fresh.find((d) => d.path === null || keys.some((k) => d.path?.endsWith(`.${k}`)));
    return mine ? told(mine) : null;
  } catch (error) {
    if (!(error instanceof Refused)) return "The server does not answer; nothing was added.";
    const first = (error.body["diagnostics"] as Diagnostic[] | undefined)?.[0];
    return first ? told(first) : error.message;
  }
}

/** The edits that try a block at the end of the file, below its owner where it has one. */
function trial(text: string, block: string, owner: string | null): Edit[] | null {
  if (!owner) return [{ append: block }];
  const at = stretchOf(text, owner);
  return at && [{ path: owner, remove: true }, { append: text.slice(at.begin, at.end) + block }];
}

/** Keys of a block and the tables they stand in. */
const keysOf = (values: readonly Written[]) =>
  values.filter((v) => v.typed.trim()).flatMap((v) => [v.key, v.key.split(".")[0] ?? ""]);

/** Adds a part as one undo step and selects it; resolves to what is wrong, or null. */
export async function addPart(kind: NewKind, owner: string | null, values: Written[]): Promise<string | null> {
  const now = station.value;
  if (!now) return "No station is open.";
  const block = blockText(kind.header, values, kind.list);
  const tried = trial(now.text, block, owner);
  if (!tried) return "What it belongs to is written in braces; add it in the text of the file.";
  const wrong = await wrongValue(now, tried, keysOf(values));
  if (wrong) return wrong;
  const called = values.find((v) => v.key === "id" && v.typed.trim()) ?? values.find((v) => v.key === "product");
  const label = `add ${kindName(kind.header)} ${called?.typed ?? ""}`.trim();
  if (!(await put(label, withBlock(now.text, block, kind.header, owner), now))) return "Nothing was added.";
  adding.value = null;
  return null;
}

/** Writes a text and selects the part that is new in it. */
async function put(label: string, text: string, before: Station): Promise<boolean> {
  if (!(await setText(label, text))) return false;
  toast(`${label.charAt(0).toUpperCase()}${label.slice(1)}. Ctrl+Z undoes it.`);
  const old = new Set(before.parts.map((p) => p.path));
  const fresh = station.value?.parts.find((p) => !old.has(p.path));
  if (fresh) select(fresh.stop ?? 0, fresh.path);
  return true;
}

/** Whether a part has a name of its own under a header, so that it can be copied. */
export const canCopy = (part: Part) =>
  part.fields.some((f) => f.key === "id" && f.text !== null) &&
  stretchOf(station.value?.text ?? "", part.path) !== null;

/** A copy with an id of its own, next in the row. */
export async function duplicate(part: Part) {
  const now = station.value;
  const at = now && stretchOf(now.text, part.path);
  if (!now || !at) return;
  const taken = now.parts.map((p) => p.id);
  const id = freshId(taken, part.id);
  let block = copyOf(now.text.slice(at.begin, at.end), part.id, id, taken);
  if (part.position) {
    const at = { x: part.position.x_m, y: part.position.y_m };
    const others = placed(now.parts).flatMap((p) => (p === part ? [] : (siteOf(p) ?? [])));
    const aside = positionText(nextInRow(at, others, units.value), units.value);
    block = block.replace(/^([ \t]*position[ \t]*=[ \t]*)\[[^\]]*\]/m, (_, before: string) => before + aside);
  }
  const gap = at.header.includes(".") ? "" : "\n";
  await put(`duplicate ${part.id} as ${id}`, now.text.slice(0, at.end) + gap + block + now.text.slice(at.end), now);
}

/** Removes a part with all that belongs to it. */
export async function removePart(part: Part) {
  const owner = part.of ? partOf(part.of) : undefined;
  const good = await edit(`remove ${part.id}`, [{ path: part.path, remove: true }]);
  if (good) select(owner?.stop ?? part.stop ?? 3, owner?.path ?? null);
}
