import type { FieldTold, PartTold, StationTold, TableKey, Tables } from "./types";

/** A value of a part with all that is known of its key. */
export interface Field {
  path: string;
  key: string;
  kind: string;
  /** Name of the table that may stand here; see Station.tables. */
  table: string | null;
  required: boolean;
  /** As typed; null: not entered. */
  text: string | null;
  us: string | null;
  si: string | null;
  /** Words of a closed list, or the ids that it may name. */
  choices: string[] | null;
  help: string;
  line: number | null;
  problem: string | null;
}

export interface Part extends Omit<PartTold, "fields"> {
  fields: Field[];
}

export interface Station extends Omit<StationTold, "parts" | "ids"> {
  parts: Part[];
  tables: Tables;
}

function fieldOf(field: FieldTold, part: PartTold, key: TableKey | undefined, ids: StationTold["ids"]): Field {
  return {
    path: field.path ?? `${part.path}.${field.key}`,
    key: field.key,
    kind: key?.kind ?? "unknown",
    table: key?.table ?? null,
    required: key?.required ?? false,
    text: field.text ?? null,
    us: field.us ?? null,
    si: field.si ?? null,
    choices: key?.choices ?? ids[key?.names ?? ""] ?? null,
    help: key?.help ?? "",
    line: field.line ?? null,
    problem: field.problem ?? null,
  };
}

/** The station as the page works with it: each field with what the tables say of its key. */
export function stationOf({ ids, ...told }: StationTold, tables: Tables): Station {
  const keys = new Map<string, TableKey>();
  for (const [table, all] of Object.entries(tables)) for (const key of all) keys.set(`${table}/${key.key}`, key);
  const keyOf = (field: FieldTold) => keys.get(`${field.in ?? ""}/${field.key.slice(field.key.lastIndexOf(".") + 1)}`);
  const parts = told.parts.map((part) => ({
    ...part,
    fields: part.fields.map((field) => fieldOf(field, part, keyOf(field), ids)),
  }));
  return { ...told, parts, tables };
}

/** Which of two holds: the one that stands, or the one that was fetched while `asked` stood. What came meanwhile is newer
 * than what was asked for before it, unless it is an older state of the file. */
export function newest<S extends { revision: number }>(asked: S | null, stands: S | null, fetched: S): S {
  return stands === null || stands === asked || fetched.revision > stands.revision ? fetched : stands;
}

/** The part that a path is of, or within; the innermost. */
export function partAt(parts: readonly Part[], path: string | null): Part | null {
  const holders = parts.filter((p) => p.path === path || path?.startsWith(`${p.path}.`));
  return holders.reduce<Part | null>((best, p) => (p.path.length > (best?.path.length ?? 0) ? p : best), null);
}
