/** Blocks of the site file: found in its text, written new, copied with ids of their own. Text in, text out. */
import { quoted, tomlOf } from "./entry";

/** A header with what stands under it, up to the next header. */
interface Block {
  /** "dispenser.hose" of [[dispenser.hose]]. */
  header: string;
  /** Of a list: [[...]]. */
  list: boolean;
  /** Places in the text; `end` is behind the last line of its own. */
  begin: number;
  end: number;
}

/** Where the text at `at` leads: behind a string or comment that begins there, else one character on. */
function over(text: string, at: number): number {
  const rest = text.slice(at, at + 3);
  if (text[at] === "#") return ended(text, at, "\n", false);
  if (rest === '"""' || rest === "'''") return ended(text, at + 3, rest, rest === '"""');
  if (text[at] === '"' || text[at] === "'") return ended(text, at + 1, text[at] as string, text[at] === '"');
  return at + 1;
}

function ended(text: string, from: number, mark: string, escapes: boolean): number {
  for (let i = from; i < text.length; ++i) {
    if (escapes && text[i] === "\\") ++i;
    else if (text.startsWith(mark, i)) return mark === "\n" ? i : i + mark.length;
    else if (text[i] === "\n" && mark.length === 1 && mark !== "\n") return i;
  }
  return text.length;
}

/** Every header of the text, in its order. */
export function blocksOf(text: string): Block[] {
  const out: Block[] = [];
  let depth = 0;
  let fresh = true;
  for (let i = 0; i < text.length; ) {
    const c = text[i] as string;
    const begins = fresh && depth === 0 && c === "[";
    const header = begins ? /^\[(\[?)\s*([^\]\n]*?)\s*\]/.exec(text.slice(i, i + 200)) : null;
    if (header) {
      const begin = text.lastIndexOf("\n", i) + 1;
      const last = out.at(-1);
      if (last) last.end = begin;
      out.push({ header: (header[2] ?? "").replace(/\s/g, ""), list: header[1] === "[", begin, end: text.length });
      i = text.indexOf("\n", i) < 0 ? text.length : text.indexOf("\n", i);
      continue;
    }
    if (c === "[" || c === "{") ++depth;
    if (c === "]" || c === "}") depth = Math.max(0, depth - 1);
    if (c === "\n") fresh = true;
    else if (!/\s/.test(c)) fresh = false;
    i = over(text, i);
  }
  return out;
}

const idIn = (body: string) => /^[ \t]*id[ \t]*=[ \t]*["']([^"'\n]*)["']/m.exec(body)?.[1] ?? null;
const productIn = (body: string) => /^[ \t]*product[ \t]*=[ \t]*["']([^"'\n]*)["']/m.exec(body)?.[1] ?? null;

/** Comment and blank lines before the next header belong to what comes next. */
function trimmedEnd(text: string, begin: number, end: number): number {
  const lines = text.slice(begin, end).split("\n");
  const last = lines.pop() ?? "";
  if (last !== "") lines.push(last);
  while (lines.length > 1 && /^\s*(#.*)?$/.test(lines.at(-1) ?? "")) lines.pop();
  const length = lines.join("\n").length;
  return Math.min(end, begin + length + 1);
}

/** The stretch of a part with all that belongs to it: "dispenser.D1", "dispenser.D1.hose.D1.a", "tank.T1.fill.1".
 * Null where it is not written under headers of its own. */
export function stretchOf(text: string, path: string): { begin: number; end: number; header: string } | null {
  const blocks = blocksOf(text);
  let inside = blocks.map((_, i) => i);
  let header = "";
  let rest = path;
  for (;;) {
    const key = rest.split(".")[0] ?? "";
    header = header ? `${header}.${key}` : key;
    const items = inside.filter((i) => blocks[i]?.header === header);
    if (!items.length) return null;
    rest = rest.slice(key.length + 1);
    const first = items[0] as number;
    const found = blocks[first]?.list ? item(text, blocks, items, rest) : { index: first, length: -1 };
    if (!found) return null;
    rest = rest.slice(found.length + 1);
    inside = below(blocks, found.index);
    if (rest === "") {
      const begin = blocks[found.index]?.begin ?? 0;
      const last = inside.at(-1) ?? found.index;
      return { begin, end: trimmedEnd(text, blocks[last]?.begin ?? 0, blocks[last]?.end ?? 0), header };
    }
  }
}

/** The blocks under a block: those that follow at once and whose headers begin with its own. */
function below(blocks: readonly Block[], index: number): number[] {
  const header = `${blocks[index]?.header ?? ""}.`;
  const out: number[] = [];
  for (let i = index + 1; i < blocks.length && blocks[i]?.header.startsWith(header); ++i) out.push(i);
  return out;
}

/** The longest name that fits the beginning of `rest`: an id, else a product, else a number from 1. */
function item(text: string, blocks: readonly Block[], items: readonly number[], rest: string) {
  let best: { index: number; length: number } | null = null;
  items.forEach((index, i) => {
    const body = text.slice(blocks[index]?.begin ?? 0, blocks[index]?.end ?? 0);
    for (const name of [idIn(body) ?? productIn(body), String(i + 1)]) {
      const fits = name !== null && name !== "" && (rest === name || rest.startsWith(`${name}.`));
      if (fits && name.length > (best?.length ?? 0)) best = { index, length: name.length };
    }
  });
  return best as { index: number; length: number } | null;
}

/** One value of a block to be written: its key (dots for tables within), what kind it is, and as typed. */
export interface Written {
  key: string;
  kind: string;
  table: string | null;
  choices: string[] | null;
  typed: string;
}

/** A table in braces, or values line by line. */
function pairs(values: readonly Written[], depth: number): string[] {
  const out: string[] = [];
  const done = new Set<string>();
  for (const value of values) {
    const [first = "", ...more] = value.key.split(".").slice(depth);
    if (!more.length) {
      const toml = tomlOf(value, value.typed);
      if (toml) out.push(`${first} = ${toml}`);
    } else if (!done.has(first)) {
      done.add(first);
      const within = values.filter((v) => v.key.split(".").length > depth + 1 && v.key.split(".")[depth] === first);
      const inner = pairs(within, depth + 1);
      if (inner.length) out.push(`${first} = { ${inner.join(", ")} }`);
    }
  }
  return out;
}

/** The values of a table in braces: { shutoff = "29 psi", run_out = "120 gpm" }; empty where none is entered. */
export function tableText(values: readonly Written[]): string {
  const inner = pairs(values, 0);
  return inner.length ? `{ ${inner.join(", ")} }` : "";
}

/** A new block; lists within a list are indented. */
export function blockText(header: string, values: readonly Written[], list = true): string {
  const indent = "  ".repeat(header.split(".").length - 1);
  const title = list ? `[[${header}]]` : `[${header}]`;
  return [title, ...pairs(values, 0)].map((line) => `${indent}${line}\n`).join("");
}

/** The text with a block put in: behind the last of its kind, or below its owner; else at the end. */
export function withBlock(text: string, block: string, header: string, owner: string | null): string {
  const place = owner ? stretchOf(text, owner)?.end : lastOf(text, header);
  const at = place ?? text.length;
  const before = text.slice(0, at);
  const lineEnd = before === "" || before.endsWith("\n") ? "" : "\n";
  const gap = owner ? "" : "\n";
  const after = text.slice(at);
  const behind = !owner && after !== "" && !after.startsWith("\n") ? "\n" : "";
  return before + lineEnd + gap + block + behind + after;
}

function lastOf(text: string, header: string): number | null {
  const blocks = blocksOf(text);
  const last = blocks.map((b, i) => (b.header === header ? i : -1)).filter((i) => i >= 0).at(-1);
  if (last === undefined) return null;
  const end = below(blocks, last).at(-1) ?? last;
  return trimmedEnd(text, blocks[end]?.begin ?? 0, blocks[end]?.end ?? 0);
}

/** An id like the ones there are, with the next number or letter; `first` where there is none. */
export function freshId(taken: readonly string[], first: string): string {
  const free = (id: string) => !taken.includes(id);
  if (free(first)) return first;
  const counted = /^(.*?)(\d+)$/.exec(first);
  const lettered = /^(.*[^a-z])([a-z])$/.exec(first);
  for (let n = 1; n < 10000; ++n) {
    const letter = n <= 26 ? String.fromCharCode(96 + n) : `a${n}`;
    const id = counted ? `${counted[1]}${n}` : lettered ? `${lettered[1]}${letter}` : `${first}-${n + 1}`;
    if (free(id)) return id;
  }
  return first;
}

/** A copy of a part with an id of its own; ids within that begin with the old one begin with the new one. */
export const copyOf = (stretch: string, from: string, to: string, taken: readonly string[]): string =>
  copyWithIds(stretch, from, to, taken).text;

/** The same, with the new id of each old one. */
export function copyWithIds(stretch: string, from: string, to: string, taken: readonly string[]) {
  const used = [...taken, to];
  const ids = new Map([[from, to]]);
  const text = stretch.replace(/^([ \t]*id[ \t]*=[ \t]*)["']([^"'\n]*)["']/gm, (_, before: string, id: string) => {
    if (id === from) return before + quoted(to);
    const wished = id.startsWith(from) ? to + id.slice(from.length) : id;
    const own = freshId(used, wished);
    used.push(own);
    ids.set(id, own);
    return before + quoted(own);
  });
  return { text, ids };
}

/** A block with a value of its own at a key that stands in a line; null leaves it out, a new one follows the header. */
export function withValue(block: string, key: string, toml: string | null): string {
  const line = new RegExp(`^([ \\t]*)${key}[ \\t]*=[^\\n]*(\\n|$)`, "m");
  const put = (indent: string) => (toml === null ? "" : `${indent}${key} = ${toml}\n`);
  if (line.test(block)) return block.replace(line, (_, indent: string) => put(indent));
  return block.replace(/^([ \t]*)\[.*\n/m, (head, indent: string) => head + put(indent));
}

/** Values as they stand in the file, as one table in braces; dots in a key are tables within. */
export function bracesOf(values: readonly { key: string; text: string }[]): string {
  const names = [...new Set(values.map((v) => v.key.split(".")[0] ?? ""))];
  const inner = names.map((name) => {
    const own = values.find((v) => v.key === name);
    if (own) return `${name} = ${own.text}`;
    const within = values.filter((v) => v.key.startsWith(`${name}.`));
    return `${name} = ${bracesOf(within.map((v) => ({ ...v, key: v.key.slice(name.length + 1) })))}`;
  });
  return `{ ${inner.join(", ")} }`;
}

/** The list in brackets at a key of a part, as it stands in the text; null where it is none. */
export function listIn(text: string, path: string, key: string): string | null {
  const at = stretchOf(text, path);
  const begun = at && new RegExp(`^[ \\t]*${key}[ \\t]*=[ \\t]*(?=\\[)`, "m").exec(text.slice(at.begin, at.end));
  if (!at || !begun) return null;
  const begin = at.begin + begun.index + begun[0].length;
  let depth = 0;
  for (let i = begin; i < at.end; i = over(text, i)) {
    if (text[i] === "[" || text[i] === "{") ++depth;
    if ((text[i] === "]" || text[i] === "}") && --depth === 0) return text.slice(begin, i + 1);
  }
  return null;
}

/** A list with one more at its end; what stands behind the last, a comma or a new line, stays. */
export function withItem(list: string, item: string): string {
  const [, head = "", tail = ""] = /^([^]*?[^\s,[])?(,?\s*\])$/.exec(list) ?? [];
  return head ? `${head}, ${item}${tail}` : `[${item}]`;
}
