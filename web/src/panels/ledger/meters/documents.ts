/** What the study of meters tells, as the command's JSON has it. */
import type { Finding } from "../../parts/finding";
import type { LedgerRefused, LedgerWarning, RecordsTold } from "../documents";

type Known = number | null;

export interface MeterLimit {
  name: string;
  clause: string | null;
  /** "verified", "seen in derived texts", "from memory, not verified", "entered" */
  known: string;
  applies: boolean;
}

export interface Judged {
  limit: number;
  allowed_m3: Known;
  allowed_share: Known;
  error_m3: number;
  error: number;
  within: boolean | null;
}

export interface Draw {
  draw: string | null;
  indicated_m3: number;
  given_m3: Known;
  error: Known;
  error_m3: Known;
  fuel_by: string | null;
  left_out: string[];
  limits: Judged[];
}

interface DrawSet {
  draws: number;
  mean: Known;
  standard_error: Known;
  repeatability: Known;
}

export interface Proving {
  day: string;
  as_left: boolean;
  all: DrawSet;
  fast: DrawSet | null;
  slow: DrawSet | null;
  worst: Known;
  /** The worst draw against each limit that is for its state: places in `draws` and in the limits of the result. */
  against: { draw: number; limit: number }[];
  draws: Draw[];
}

export interface Meter {
  hose: string;
  product: string;
  error: Known;
  standard_error: Known;
  answer: string[];
  year: { sold_m3: Known; by: string; error_m3: Known; money: Known; currency: string | null; price_missing: string | null };
  provings: Proving[];
}

export interface BookMeters {
  book: string;
  product: string;
  answer: string[];
  meters: {
    hose: string | null;
    sold_m3: number;
    error: Known;
    volume_m3: Known;
    standard_error_m3: Known;
    alone_error: Known;
  }[];
}

export interface MeterDocument {
  cautions: string[];
  findings: Finding[];
  warnings: LedgerWarning[];
  result: { limits: MeterLimit[]; meters: Meter[]; unproved: string[]; books: BookMeters[] };
}

export interface MetersTold {
  document: MeterDocument;
  records: RecordsTold;
}
export type MeterAnswer = MetersTold | LedgerRefused;
