/** Kinds of parts that can be added, from the tables of the format: nothing here knows a key's meaning but for the
 * order in which a first form asks for them. */
import type { Part, Station, TableKey, Tables } from "../api/types";
import { freshId } from "./entry-blocks";

export interface NewKind {
  /** "dispenser.hose": what stands in [[ ]]. */
  header: string;
  table: string;
  /** Kind of the part it belongs to; null: of the station. */
  owner: string | null;
  /** One of several; else the station has it once. */
  list: boolean;
}

const hasId = (keys: readonly TableKey[]) => keys.some((k) => k.key === "id");

/** Every kind: those of the station first, each followed by what belongs to it. */
export function newKinds({ site_file: _, ...tables }: Tables): NewKind[] {
  const named = new Set(Object.values(tables).flatMap((keys) => keys.map((k) => k.table)));
  const out: NewKind[] = [];
  for (const [table, keys] of Object.entries(tables)) {
    if (named.has(table) || table === "site") continue;
    out.push({ header: table, table, owner: null, list: hasId(keys) });
    for (const key of keys) {
      if (key.kind !== "list" || !key.table || !hasId(tables[key.table] ?? [])) continue;
      out.push({ header: `${table}.${key.key}`, table: key.table, owner: table, list: true });
    }
  }
  return out;
}

/** "dispenser.hose" as it is called. */
export const kindName = (header: string) => (header.split(".").at(-1) ?? header).replaceAll("_", " ");

/** What a first form asks for beside the keys that a block must have: what a flow cannot be computed without. */
const firstKeys: Record<string, string[]> = {
  product: ["kind"],
  tank: ["product", "surface_elevation", "position"],
  pump: ["curve.shutoff", "curve.per_flow_squared", "curve.run_out", "check_valve"],
  line: ["length", "bore", "nominal"],
  branch: ["position", "elevation"],
  dispenser: ["position", "elevation"],
  "dispenser.inlet": ["connection", "line_elevation", "riser.length", "riser.bore"],
  "dispenser.hose": ["product", "lift", "outlet_elevation", "loss"],
};

/** How these go together, in a sentence. */
export const together: Record<string, string> = {
  tank: "Without the liquid's surface, enter a lift at each hose, or a reading and the bottom later.",
  pump: "The curve: its shutoff, with what it loses per flow squared or with its run-out.",
  line:
    "The length can be left out where both ends have positions of their own. " +
    "Enter the bore, or a nominal pipe of the shelf.",
  "dispenser.inlet": "A line ends at an inlet; each product of a dispenser has one.",
  "dispenser.hose":
    "The lift is from the liquid to the nozzle; or the outlet's elevation, where the tank's surface is known. " +
    "The loss counts from inlet to nozzle; leave it out to list the parts of the hose one by one.",
};

/** A key of a new part, with dots for what is in a table within. */
interface NewKey extends TableKey {
  /** The key of the table that it stands in: "shutoff" of "curve.shutoff". */
  last: string;
}

function keyAt(tables: Tables, table: string, path: string): NewKey | null {
  const [first = "", ...more] = path.split(".");
  const key = tables[table]?.find((k) => k.key === first);
  if (!key) return null;
  if (!more.length) return { ...key, last: first };
  const inner = key.table ? keyAt(tables, key.table, more.join(".")) : null;
  return inner && { ...inner, key: path, required: false };
}

/** The keys a first form asks for: the id, what must be there, then what a flow needs. */
export function firstForm(tables: Tables, kind: NewKind): NewKey[] {
  const keys = tables[kind.table] ?? [];
  const must = keys.filter((k) => k.required || k.key === "id").map((k) => k.key);
  const all = [...new Set([...must, ...(firstKeys[kind.header] ?? keys.map((k) => k.key))])];
  return all.flatMap((path) => keyAt(tables, kind.table, path) ?? []).filter((k) => !isBelow(k));
}

const isBelow = (key: TableKey) => key.kind === "table" || (key.kind === "list" && key.table !== null);

/** Parts that a reference at this key may name. */
const named: Record<string, string[]> = {
  product: ["product"],
  tank: ["tank", "compartment"],
  siphoned_with: ["tank"],
  from: ["pump", "branch", "inlet"],
  to: ["pump", "branch", "inlet"],
  pumps: ["pump"],
  stops: ["pump"],
  what: ["pump", "dispenser"],
  when: ["sump_sensor", "leak_detector", "emergency_stop", "pump", "dispenser"],
  at: ["dispenser", "inlet", "hose", "line", "tank"],
  open: ["hose"],
  order: ["hose"],
  delivery: ["delivery"],
};

/** The ids to choose from at a key; null: it refers to nothing. */
export function choicesFor(station: Station, key: TableKey): string[] | null {
  if (key.choices) return key.choices;
  const last = key.key.split(".").at(-1) ?? "";
  const kinds = key.kind === "reference" || (key.kind === "list" && !key.table) ? named[last] : undefined;
  if (!kinds) return key.kind === "reference" ? [] : null;
  return [...new Set(station.parts.filter((p) => kinds.includes(p.kind)).map((p) => p.id))];
}

const firstIds: Record<string, string> = {
  tank: "T1",
  pump: "P1",
  line: "L1",
  branch: "B1",
  dispenser: "D1",
  control: "C1",
  emergency_stop: "E1",
  interlock: "I1",
  delivery: "delivery-1",
  incident: "incident-1",
  fill: "F1",
  vent: "V1",
  compartment: "1",
};

/** An id that nothing has yet; empty where it is for the user to name, as a product is. */
export function idFor(station: Station, kind: NewKind, owner: Part | null): string {
  const taken = station.parts.map((p) => p.id);
  const last = kind.header.split(".").at(-1) ?? "";
  if (last === "hose" && owner) return freshId(taken, `${owner.id}.a`);
  if (last === "compartment" && owner) return freshId(taken, `${owner.id}-1`);
  const first = firstIds[last];
  return first ? freshId(taken, first) : "";
}

/** What a first course still needs, in the order in which it is added. */
export function missingForCourse(station: Station): { header: string; done: boolean }[] {
  const has = (kind: string) => station.parts.some((p) => p.kind === kind);
  return ["product", "tank", "pump", "dispenser", "dispenser.inlet", "dispenser.hose", "line"].map((header) => ({
    header,
    done: has(header.split(".").at(-1) ?? header),
  }));
}
