import { signal } from "@preact/signals";
import { api, Refused, withHint } from "../../api/client";
import type { Edit, Part, Station } from "../../api/types";
import { quoted, unquoted } from "../../state/entry";
import {
  blockText, copyOf, copyWithIds, freshId, stretchOf, withBlock, withValue, type Written,
} from "../../state/entry-blocks";
import { kindName, newKinds, type NewKind } from "../../state/entry-kinds";
import { nextInRow, positionText } from "../../draw/plan";
import { placed, siteOf } from "../../state/drag";
import { select, sheet, units } from "../../state/look";
import { edit, partOf, setText, station } from "../../state/station";
import { toast } from "../../state/toast";
import { article, done } from "./words";

/** The kind of part that is being added, and to what; null: none is. */
export const adding = signal<{ kind: NewKind; owner: string | null; start: Record<string, string> } | null>(null);

/** A dispenser that is being duplicated with the lines that feed it; null: none is. */
export const copying = signal<Part | null>(null);

export const kindsNow = () => newKinds(station.value?.tables ?? {});
export const ownersOf = (kind: NewKind): Part[] =>
  station.value?.parts.filter((p) => p.of === null && p.path.split(".")[0] === kind.owner) ?? [];

export function startAdding(header: string, owner: string | null = null, start: Record<string, string> = {}) {
  const kind = kindsNow().find((k) => k.header === header);
  copying.value = null;
  if (kind) adding.value = { kind, owner: owner ?? ownersOf(kind).at(-1)?.path ?? null, start };
}

/** The same from another sheet. */
export function addOnSite(header: string, owner: string | null = null) {
  sheet.value = "site";
  startAdding(header, owner);
}

/** The part that a hint says is to be added, with the value it is to have: add a [[line]] with to = "D1.regular". */
export function addedBy(hint: string): { header: string; start: Record<string, string> } | null {
  const header = /add (?:a|an) \[\[([a-z_.]+)\]\]/.exec(hint)?.[1];
  if (!header || !kindsNow().some((k) => k.header === header)) return null;
  const [, key, value] = /with ([a-z_]+) = "([^"]*)"/.exec(hint) ?? [];
  return { header, start: key && value ? { [key]: value } : {} };
}

/** "Add a line to D1.regular", "Add an inlet". */
export const addWords = (header: string, start: Record<string, string>) =>
  `Add ${article(kindName(header))}${Object.entries(start).map(([key, value]) => ` ${key} ${value}`).join("")}`;

/** What a try of edits finds wrong with the values that are written; null: nothing. What is still missing elsewhere,
 * such as a line to a new inlet, is no fault of these. */
async function wrongValue(now: Station, edits: Edit[], keys: readonly string[]): Promise<string | null> {
  try {
    const { diagnostics } = await api.ask([], edits);
    const old = new Set(now.diagnostics.map((d) => d.message));
    const fresh = diagnostics.filter((d) => d.severity === "error" && !old.has(d.message));
    const mine = fresh.find((d) => d.path === null || keys.some((k) => d.path?.endsWith(`.${k}`)));
    return mine ? withHint(mine) : null;
  } catch (error) {
    if (!(error instanceof Refused)) return "The server does not answer; nothing was added.";
    return error.first;
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
async function put(label: string, text: string, before: Station, path?: string): Promise<boolean> {
  if (!(await setText(label, text))) return false;
  toast(`${done(label)}. Ctrl+Z undoes it.`);
  const old = new Set(before.parts.map((p) => p.path));
  const fresh = station.value?.parts.find((p) => (path ? p.path === path : !old.has(p.path)));
  if (fresh) select(fresh.stop ?? 0, fresh.path);
  return true;
}

/** Whether a part has a name of its own under a header, so that it can be copied. */
export const canCopy = (part: Part) =>
  part.fields.some((f) => f.key === "id" && f.text !== null) &&
  stretchOf(station.value?.text ?? "", part.path) !== null;

/** Where a copy stands: next in the row of its kind, on no other part. */
export function nextPlace(part: Part, all: readonly Part[]): string | null {
  const at = siteOf(part);
  if (!at) return null;
  const places = (of: readonly Part[]) => placed(of).flatMap((p) => (p.path === part.path ? [] : (siteOf(p) ?? [])));
  const row = all.filter((p) => p.kind === part.kind);
  return positionText(nextInRow(at, places(row), units.value, places(all)), units.value);
}

/** A copy with an id of its own, next in the row. A dispenser that lines go to asks first where its lines come from. */
export async function duplicate(part: Part) {
  const now = station.value;
  const at = now && stretchOf(now.text, part.path);
  if (!now || !at) return;
  if (part.kind === "dispenser" && feedsOf(part).length) {
    adding.value = null;
    copying.value = part;
    return;
  }
  const taken = now.parts.map((p) => p.id);
  const id = freshId(taken, part.id);
  const block = copyOf(now.text.slice(at.begin, at.end), part.id, id, taken);
  const place = nextPlace(part, now.parts);
  await put(`duplicate ${part.id} as ${id}`, behind(now.text, at, place ? withPlace(block, place) : block), now);
}

/** The text with a copy behind what it is a copy of. */
function behind(text: string, at: { end: number; header: string }, block: string): string {
  const gap = at.header.includes(".") ? "" : "\n";
  return text.slice(0, at.end) + gap + block + text.slice(at.end);
}

const withPlace = (block: string, place: string) =>
  block.replace(/^([ \t]*position[ \t]*=[ \t]*)\[[^\]]*\]/m, (_, before: string) => before + place);

/** An inlet of a dispenser and the line that ends at it. */
export interface Feed {
  inlet: Part;
  line: Part;
  from: string;
}

export const textAt = (part: Part, key: string) => unquoted(part.fields.find((f) => f.key === key)?.text ?? "");

export function feedsOf(part: Part): Feed[] {
  const all = station.value?.parts ?? [];
  return all.flatMap((inlet) => {
    if (inlet.kind !== "inlet" || inlet.of !== part.path) return [];
    const line = all.find((p) => p.kind === "line" && textAt(p, "to") === inlet.id);
    return line ? [{ inlet, line, from: textAt(line, "from") }] : [];
  });
}

/** What a copied dispenser is called, where it stands, and where the line to each of its inlets comes from. */
interface CopyWish {
  id: string;
  place: string;
  feeds: { feed: Feed; from: string; length: string }[];
}

/** A dispenser copied with its lines as one undo step; resolves to what is wrong, or null. */
export async function copyWithLines(part: Part, wish: CopyWish): Promise<string | null> {
  const now = station.value;
  const at = now && stretchOf(now.text, part.path);
  if (!now || !at) return "The dispenser is not there any more.";
  if (now.parts.some((p) => p.id === wish.id)) return `id ${wish.id} is there already. Take another.`;
  const taken = now.parts.map((p) => p.id);
  const copy = copyWithIds(now.text.slice(at.begin, at.end), part.id, wish.id, taken);
  const block = wish.place ? withPlace(copy.text, wish.place) : copy.text;
  const used = [...taken, ...copy.ids.values()];
  const lines = wish.feeds.filter((f) => f.from).map((f) => {
    const id = freshId(used, f.feed.line.id);
    used.push(id);
    const to = copy.ids.get(f.feed.inlet.id) ?? wish.id + f.feed.inlet.id.slice(part.id.length);
    return lineLike(now.text, f.feed.line, id, f.from, to, f.length);
  });
  const tried = [{ append: [block, ...lines].join("\n") }];
  const wrong = await wrongValue(now, tried, ["id", "position", "from", "to", "length"]);
  if (wrong) return wrong;
  const text = lines.reduce((so, line) => withBlock(so, line, "line", null), behind(now.text, at, block));
  const good = await put(`duplicate ${part.id} as ${wish.id}`, text, now, `dispenser.${wish.id}`);
  if (!good) return "Nothing was added.";
  copying.value = null;
  return null;
}

/** A line with the values of another, between other ends. */
function lineLike(text: string, line: Part, id: string, from: string, to: string, length: string): string {
  const at = stretchOf(text, line.path);
  const block = at ? text.slice(at.begin, at.end) : "[[line]]\n";
  const values: [string, string | null][] = [
    ["length", length ? quoted(length) : null],
    ["to", quoted(to)],
    ["from", quoted(from)],
    ["id", quoted(id)],
  ];
  return values.reduce((so, [key, toml]) => withValue(so, key, toml), block);
}

/** Removes a part with all that belongs to it. */
export async function removePart(part: Part) {
  const owner = part.of ? partOf(part.of) : undefined;
  const good = await edit(`remove ${part.id}`, [{ path: part.path, remove: true }]);
  if (!good) return;
  toast(`Removed ${part.id}. Ctrl+Z undoes it.`);
  select(owner?.stop ?? part.stop ?? 3, owner?.path ?? null);
}
