/** One value or table of a part given to all others of its kind, as one undo step. */
import type { Edit, Field, Part } from "../../api/types";
import { inTheWay, labelOf } from "../../state/entry";
import { bracesOf } from "../../state/entry-blocks";
import { kindName } from "../../state/entry-kinds";
import { station, tryEdit } from "../../state/station";
import { toast } from "../../state/toast";

/** Kinds of values that are each part's own. */
const own = new Set(["id", "reference", "position"]);

/** The others of its kind. */
export const othersLike = (part: Part): Part[] =>
  station.value?.parts.filter((p) => p.kind === part.kind && p.path !== part.path) ?? [];

export const partOfField = (field: Field): Part | undefined =>
  station.value?.parts.find((p) => field.path === `${p.path}.${field.key}`);

/** The others that have another value there, or none. */
export function otherwise(field: Field): Part[] {
  const part = partOfField(field);
  if (!part || own.has(field.kind) || field.text === null) return [];
  return othersLike(part).filter((p) => {
    const there = p.fields.find((f) => f.key === field.key);
    return there !== undefined && there.text !== field.text;
  });
}

/** "all 12 hoses" */
export function allWords(part: Part): string {
  const count = othersLike(part).length + 1;
  const name = kindName(part.kind);
  return `all ${count} ${/(s|x|ch|sh)$/.test(name) ? `${name}es` : `${name}s`}`;
}

async function give(what: string, to: string, edits: Edit[]): Promise<string | null> {
  const problem = await tryEdit(`give ${what} to ${to}`, edits);
  if (problem === null) toast(`Gave ${what} to ${to}. Ctrl+Z undoes it.`);
  return problem;
}

/** A value that cannot stand beside another one takes its place there too. */
export async function giveValue(field: Field): Promise<string | null> {
  const part = partOfField(field);
  const value = field.text;
  if (!part || value === null) return "There is no value to give.";
  const what = labelOf(field.key).toLowerCase();
  const to = otherwise(field);
  const set = to.map((p): Edit => ({ path: `${p.path}.${field.key}`, value }));
  const problem = await give(what, allWords(part), set);
  const other = problem && inTheWay(problem, field.key);
  if (!other) return problem;
  const key = [...field.key.split(".").slice(0, -1), other].join(".");
  const has = (p: Part) => p.fields.some((f) => f.key === key && f.text !== null);
  const taken = to.filter(has).map((p): Edit => ({ path: `${p.path}.${key}`, remove: true }));
  return give(what, allWords(part), [...taken, ...set]);
}

/** A table: the values of `fields`, keys counted from it, at `key` of each of `owners`. */
export function giveTable(key: string, fields: readonly { key: string; text: string }[], owner: Part) {
  const value = bracesOf(fields);
  const edits = othersLike(owner).map((p) => ({ path: `${p.path}.${key}`, value }));
  return give(key.replaceAll("_", " "), allWords(owner), edits);
}

/** What is entered of a part, keys counted from `group` where that is given. */
export const entered = (part: Part, group = "") =>
  part.fields.flatMap((f) =>
    f.text !== null && f.key.startsWith(group && `${group}.`)
      ? [{ key: f.key.slice(group ? group.length + 1 : 0), text: f.text }]
      : [],
  );
