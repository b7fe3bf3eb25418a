/** The equipment schedule and the calendar, as the JSON of their commands has them. */
import type { ErrorAnswer } from "../../api/types";
import type { LedgerWarning, RecordsTold } from "../ledger/documents";
import type { State } from "../parts/status";

export interface KitSize {
  name: string;
  shown: string;
}

interface KitStandard {
  standard: string;
  clause: string;
  edition: string;
  /** "text seen", "from memory", ... */
  seen: string;
}

export interface KitRow {
  /** 12: of the whole station. */
  stop: { number: number; name: string };
  kind: string;
  what: string;
  sizes: KitSize[];
  function: string;
  needed: { bears: "fuel" | "vapor" | "nothing"; shown: string | null; basis: string | null; missing: string | null };
  rating_pressure_gauge_pa: number | null;
  rating_below_need: boolean;
  standards: KitStandard[];
  listed_to: string[];
  compatibility: { fit: string; product_kinds: string[]; missing: string | null };
  count: number | null;
  unit: "each" | "length";
  length_m: number | null;
  runs_without_length: number;
  not_ordered_because: string | null;
  subjects: string[];
  parts: string[];
}

export interface KitDocument {
  cautions: string[];
  result: { rows: KitRow[]; not_told: string[] };
}
export type KitAnswer = { document: KitDocument } | ErrorAnswer;

export const dutyStates = ["failed", "overdue", "due soon", "no record", "later", "not determined"] as const;
export type DutyState = (typeof dutyStates)[number];

/** The row of the records that would show that a duty was done. */
export interface Proof {
  records: "tests" | "inspections";
  kind: string;
  part: string | null;
}

export interface Duty {
  id: string;
  set: string;
  set_title: string;
  rule: string;
  subject: string;
  /** Of the part, or of a value of it; null: of none. */
  path: string | null;
  what: string;
  instead: string[];
  clause: string | null;
  edition: string | null;
  clause_verified: boolean;
  every: { words: string };
  last_done: string | null;
  done_by: "site file" | "records" | null;
  /** The day of its last test, which failed. */
  failed: string | null;
  due: string | null;
  days_left: number | null;
  state: DutyState;
  reason: string | null;
  enter: string | null;
  by_whom: string | null;
  sheet: string | null;
  proof: Proof | null;
  strip: { month: string; days: string[] }[];
}

export interface Paper {
  what: string;
  clause: string | null;
  clause_verified: boolean;
  state: State;
  enter: string | null;
}

export interface CalendarDocument {
  cautions: string[];
  options: { on: string; within_days: number };
  warnings: LedgerWarning[];
  result: { counts: Record<string, number>; months: string[]; duties: Duty[]; papers: Paper[] };
}
interface CalendarTold {
  document: CalendarDocument;
  /** Null: none are given. */
  records: RecordsTold | null;
  /** What is wrong with the records, so that none of them counts. */
  wrong: LedgerWarning[];
}
export type CalendarAnswer = CalendarTold | ErrorAnswer;
