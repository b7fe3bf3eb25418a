import type { RunTold } from "../../../draw/curve_trace";

export interface Spread {
  low: number;
  likely: number;
  high: number;
}

export interface LedgerLine {
  from: string;
  to: string;
  product: string;
  cause: string;
  amount_m3: number;
}

export interface IncidentRun extends RunTold {
  missing: string[];
  status: string;
  reason: string;
  escaped_m3: number;
  to_environment_m3: number;
  isolated_at_s: number | null;
  /** From when on the dispenser lies, s; null: it stands to the end. */
  dispenser_over_at_s: number | null;
  amounts: { holder: string; start_m3: number }[];
  ledger: LedgerLine[];
}

export interface BarrierState {
  barrier: string;
  of: string;
  state: "assured" | "not assured" | "not there" | "not asked";
  reasons: string[];
  does: string;
}

export interface OpenEnd {
  product: string;
  system: string;
  height_above_liquid_m: number;
  shutoff_at_opening_gauge_pa: number;
  steady_flow_m3_per_s: number;
  steady_flow_figure_m3: number | null;
  in_45_s_m3: number | null;
  elsewhere: { hose: string; before_m3_per_s: number; during_m3_per_s: number }[];
}

export interface Jet {
  area_share: number;
  flow_m3_per_s: number;
  velocity_m_per_s: number;
  height_low_m: number;
  height_high_m: number;
}

export interface MonteCarlo {
  runs: number;
  failed: number;
  seed: number;
  mean_escaped_m3: number;
  quantiles: { share_below: number; escaped_m3: number; to_environment_m3: number }[];
  exceeded_m3: number[];
  exceedance: number[];
  weights: { input: string; rank_correlation: number; illustrative: boolean }[];
  mainly_illustrative: boolean;
}

interface InputUsed {
  what: string;
  value: Spread;
  unit: string;
  standing: string;
  source: string;
}

export interface IncidentResult {
  at: string;
  dispenser: string | null;
  problem: string | null;
  first_line: string;
  escaped_m3: Spread;
  to_environment_m3: Spread;
  /** The worst of the cases told, where it lies above the range. */
  beyond_range_m3: number | null;
  barriers: BarrierState[];
  open_ends: OpenEnd[];
  runs: IncidentRun[];
  jets: Jet[];
  pack_and_column: Record<"neither_m3" | "with_spring_m3" | "with_columns_m3" | "with_both_m3", number> | null;
  pool: { volume_m3: number; radius_m: Spread } | null;
  crack: {
    running_pressure_gauge_pa: number;
    holding_pressure_gauge_pa: number;
    at_running_m3_per_s: Spread;
    at_holding_m3_per_s: Spread;
    mean_m3_per_s: Spread;
    hole_diameter_m: number;
    bound_to_be_seen: boolean | null;
    seen_reason: string;
    to_sensor_s: Spread | null;
    to_lowest_seal_s: Spread | null;
    to_brim_s: Spread | null;
  } | null;
  drive_off: {
    tight_at_s: number;
    speed_then_m_per_s: number;
    separation_force_n: Spread | null;
    may_never_release: boolean;
    limits: { limit: string; pull_n: Spread | null }[];
    outcome: string;
    parts_at_s: number | null;
  } | null;
  fire: {
    fuel: string | null;
    pool_diameter_m: number;
    heat_release_w: Spread;
    flame_height_m: Spread;
    radiation: { from_edge_m: number; flux_w_per_m2: Spread }[];
    link_parts_at_s: number | null;
    link_reason: string;
    isolated_at_s: number | null;
    fed_with_link_m3: number | null;
    fed_without_link_m3: number | null;
  } | null;
  overfill: {
    tank: string;
    delivery: string;
    truck_flow_m3_per_s: number;
    alarm_at_s: number | null;
    restricts_at_s: number | null;
    closes_at_s: number | null;
    full_at_s: number | null;
    spilled_m3: number;
    in_container_m3: number;
    notes: string[];
  } | null;
  spread: MonteCarlo | null;
  return_to_service: { step: string; what: string; by: string; source: string }[];
  inputs: InputUsed[];
}

export interface IncidentDocument {
  cautions: string[];
  options: { kind: string; at: string; open: string[] };
  warnings: { message: string; hint: string }[];
  result: IncidentResult;
}

export interface IncidentAnswer {
  document?: IncidentDocument;
  error?: string;
  hint?: string;
}
