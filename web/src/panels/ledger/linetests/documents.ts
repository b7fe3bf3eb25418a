/** What the study of line tests tells, as the command's JSON has it. */
import type { ErrorAnswer } from "../../../api/types";
import type { Finding } from "../../parts/finding";

type Known = number | null;

export interface Detection {
  name: string;
  detects_m3_per_s: Known;
  at_pressure_gauge_pa: Known;
  takes_s: Known;
  at_held_m3_per_s: { low: number; high: number } | null;
  false_until_s: Known;
  quiet_needed_s: Known;
  quiet_enough: Known;
  words: string;
}

export interface Catch {
  where: string;
  pressure_gauge_pa: number;
  sharp_m3_per_s: number;
  laminar_m3_per_s: number;
  caught_in_a_minute_m3: number;
}

export interface Detector {
  pump: string;
  kind: string | null;
  orifice_m: number;
  detections: Detection[];
  catches: Catch[];
  answer: string[];
}

export type Thermal =
  | { problem: string }
  | {
      problem: null;
      warmer_k: { low: number; high: number };
      fuel_expansion_per_k: number;
      line_expansion_per_k: number;
      by_time_constant: boolean;
      time_constant_s: Known;
      at_start_m3_per_s: Known;
      limit_m3_per_s: number;
      wait_s: Known;
      firm: boolean;
    };

export interface KnownLine {
  system: string;
  product: string;
  problem: null;
  lines: string[];
  volume_m3: number;
  held_pressure_gauge_pa: Known;
  thermal: Thermal;
  volume_test: { find_m3_per_s: number; threshold_m3_per_s: number; leak_m3_per_s: Known };
  pressure_test: {
    problem: string | null;
    start_pressure_gauge_pa: Known;
    wait_s: number;
    duration_s: number;
    per_degree_pa_per_k: Known;
    drop_pa: Known;
    tight_drop_pa: Known;
    leak_drop_pa: Known;
  };
  detectors: Detector[];
  answer: string[];
  proves: string[];
}

/** A line of which nothing is determined. */
export interface UnknownLine {
  system: string;
  product: string;
  problem: string;
}

export type TestedLine = KnownLine | UnknownLine;

export interface LineTestDocument {
  cautions: string[];
  warnings: ErrorAnswer[];
  findings: Finding[];
  result: { quiet_s: number[]; quiet_by: string; lines: TestedLine[] };
}
