/** What the ledger tells, as the command's JSON has it. */
import type { ErrorAnswer } from "../../api/types";
import type { Finding } from "../parts/finding";
import type { State } from "../parts/status";

export interface LedgerMonth {
  /** "2026-11" */
  month: string;
  missing_days: number;
  sold_m3: number;
  delivered_m3: number;
  over_short_m3: number;
  limit_m3: number;
  deviation_m3: number | null;
  state: State;
  exceeds: boolean;
  confirmed: boolean;
  unsettled: string[];
}

export interface LedgerRow {
  /** "2026-11-05" */
  day: string;
  opening_m3: number;
  delivered_m3: number;
  deliveries: number;
  sold_m3: number;
  measured_m3: number;
  over_short_m3: number;
  running_m3: number;
  limit_m3: number;
  depth_m: number | null;
  outside: boolean;
}

export interface LedgerTerm {
  cause: string;
  volume_m3: number | null;
  standard_error_m3: number | null;
  words: string;
}

export interface Explained {
  over_short_m3: number;
  terms: LedgerTerm[];
  unexplained_m3: number;
  standard_error_m3: number | null;
}

export interface ControlPoint {
  day: string;
  value: number;
  cusum_upper: number;
  cusum_lower: number;
  cusum_signals: boolean;
  ewma: number;
  ewma_limit: number;
  ewma_signals: boolean;
}

export interface ControlChart {
  cusum_limit: number;
  cusum_run_length: number;
  ewma_run_length: number;
  points: ControlPoint[];
}

export interface FreeTerm {
  cause: string;
  unit: string;
  value: number | null;
  standard_error: number | null;
  told_from_zero: boolean;
}

export type Loss = { problem: string } | { problem: null; chart: ControlChart; free: FreeTerm[] };

/** What the book expects at the reading to come. */
export interface LedgerNext {
  day: string;
  time: string | null;
  /** The day whose deliveries and sales come before it. */
  business_day: string;
  delivered_m3: number;
  deliveries: number;
  sold_m3: number;
  sales: number;
  book_m3: number;
  depth_m: number | null;
}

export interface LedgerBook {
  name: string;
  product: string;
  tanks: string[];
  joined: string | null;
  problem: string | null;
  rows: LedgerRow[];
  months: LedgerMonth[];
  period: { from_row: number; to_row: number };
  explained: Explained | null;
  loss: Loss | null;
  next: LedgerNext | null;
  answer: string[];
  what_next: string[];
  not_parted: string[];
}

export interface LedgerWarning {
  message: string;
  hint: string;
  file: string | null;
  line: number | null;
}

export interface LedgerDocument {
  cautions: string[];
  findings: Finding[];
  warnings: LedgerWarning[];
  result: { books: LedgerBook[]; first: string | null };
}

/** Where the records are, and whether rows can be entered. */
export interface RecordsTold {
  name: string;
  store: boolean;
}

export interface BookName {
  name: string;
  product: string;
}

export interface LedgerTold {
  document: LedgerDocument;
  records: RecordsTold;
  books: BookName[];
}

/** Records that cannot be read, or none. */
export interface LedgerRefused extends ErrorAnswer {
  records?: RecordsTold | null;
  wrong?: LedgerWarning[];
}

export type LedgerAnswer = LedgerTold | LedgerRefused;
