/** What the flotation study tells, as the command's JSON has it. */
import type { ErrorAnswer } from "../../../api/types";
import type { Finding } from "../../parts/finding";

export interface Factor {
  factor: number | null;
  definition: string;
}

export interface Body {
  part: string;
  volume_m3: number;
  submerged_m3: number;
  weight_n: number;
  submerged_weight_n: number;
  lifted: boolean;
}

export interface FlotationState {
  water_level_m: number;
  filled_m3: number;
  buoyant_force_n: number;
  hold_down_force_n: number;
  hold_down: Factor;
  total: Factor;
  submerged: Factor;
  hold_down_without_deadmen: number | null;
  missing_weight_n: number | null;
  missing_contents_m3: number | null;
  contents_fit: boolean | null;
  strap_pull_n: number | null;
  bodies: Body[];
}

export interface TankFlotation {
  tank: string;
  problems: string[];
  left_out: string[];
  assumed: string[];
  water_level_m: number | null;
  factor_wanted: number | null;
  outside_volume_m3?: number;
  capacity_m3?: number;
  empty?: FlotationState | null;
  filled?: FlotationState | null;
  water_at_grade?: FlotationState | null;
  lifts_at_m?: number | null;
  keeps_factor_to_m?: number | null;
  open_hole?: { lifts_at_m: number | null; ballast_m3: number | null; ballast_fits: boolean | null };
  strap_working_load_n?: number | null;
  straps?: number | null;
  by_fill?: { filled_m3: number; factor: number }[];
}

export interface FlotationDocument {
  cautions: string[];
  warnings: ErrorAnswer[];
  findings: Finding[];
  result: { tanks: TankFlotation[] };
}
