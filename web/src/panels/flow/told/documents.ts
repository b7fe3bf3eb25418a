// What this sheet reads of the documents that the engine writes; values in SI, null: not known.
import type { ErrorAnswer } from "../../../api/types";

type Known = number | null;

export interface BudgetPart {
  part: string;
  owner: string;
  flow_m3_per_s: Known;
  velocity_m_per_s: Known;
  pressure_loss_pa: Known;
}
interface GradePoint {
  place: string;
  part: string | null;
  distance_m: Known;
  elevation_m: Known;
  grade_m: Known;
  pressure_gauge_pa: Known;
}
export interface HoseTold {
  id: string;
  dispenser: string;
  open: boolean;
  share: number;
  /** Of this product. */
  flow_m3_per_s: Known;
  /** Of all that the hose gives. */
  hose_flow_m3_per_s: Known;
  hose_flow_low_m3_per_s: Known;
  hose_flow_high_m3_per_s: Known;
  limit_m3_per_s: Known;
  at_limit: boolean;
  ratio_met: boolean;
  rule_cap_m3_per_s: Known;
  rule_clause: string | null;
  above_rule_cap: boolean;
  below_keep_flow: boolean;
  budget: BudgetPart[];
  grade_line: GradePoint[];
}
export interface PumpTold {
  id: string;
  running: boolean;
  speed_share: Known;
  flow_m3_per_s: Known;
  pressure_rise_pa: Known;
  discharge_pressure_gauge_pa: Known;
  dead_headed: boolean;
  runs_back: boolean;
  opens_at: { total_flow_m3_per_s: Known; drawn_at: string } | null;
}
export interface ControlState {
  pumps: string[];
  determined: boolean;
  line_pressure_gauge_pa: Known;
  total_flow_m3_per_s: Known;
}
export interface ControlTold {
  id: string;
  kind: string;
  order: string[];
  hoses_open: number;
  starts_below_pressure_gauge_pa: Known;
  stops_above_pressure_gauge_pa: Known;
  hoses_calling: Known;
  holds_pressure_gauge_pa: Known;
  speed_share: Known;
  pressure: string | null;
  states: ControlState[];
  state_told: number;
  short_cycles_with_state: number | null;
}
export interface SystemTold {
  id: string;
  product: string | null;
  status: string;
  reason: string | null;
  total_flow_m3_per_s: Known;
  hoses: HoseTold[];
  pumps: PumpTold[];
  control: ControlTold | null;
}
export interface StateTold {
  systems: SystemTold[];
}
interface LadderStep {
  open: number;
  slowest_m3_per_s: Known;
  slowest_hose: string;
  tied: number;
  proof: string | null;
}
export interface LadderTold {
  system: string;
  order: string;
  keeps: number | null;
  steps: LadderStep[];
}
export interface Extreme {
  flow_m3_per_s?: Known;
  pressure_gauge_pa?: Known;
  velocity_m_per_s?: Known;
  open: string[];
  proof: string | null;
  id?: string;
  place?: string;
  kind?: string;
}
export interface WorstTold {
  system: string;
  hose_count: number;
  sets_solved: number;
  sets_failed: number;
  slowest: Extreme | null;
  highest_at_inlet: Extreme | null;
  highest_at_pump: Extreme | null;
  runs: Extreme[];
  hoses: { id: string; least: Extreme }[];
}
interface SpanEnd {
  slowest_flow_m3_per_s: Known;
}
export interface SpanTold {
  kind: string;
  subject: string;
  system: string;
  quantity: string | null;
  low_si: Known;
  high_si: Known;
  at_low: SpanEnd | null;
  at_likely: SpanEnd | null;
  at_high: SpanEnd | null;
  note: string | null;
  reason: string | null;
}
interface MarginTold {
  system: string;
  place: string;
  margin_pa: Known;
  reason: string | null;
}
export interface SpansTold {
  sets: { open_set: string; flows: SpanTold[] }[];
  vapor_margins: MarginTold[];
  monotone: boolean;
}
export interface FirstFlow {
  time_s: Known;
  time_without_leak_detector_s: Known;
  volume_m3: Known;
  reason: string | null;
}
export interface RestTold {
  id: string;
  reason: string | null;
  held_pressure_gauge_pa: Known;
  held_by: string;
  line_volume_m3: Known;
  compliance_reason: string | null;
  leak_detector_note: string | null;
  places: {
    id: string;
    held_pressure_gauge_pa: Known;
    decayed_pressure_gauge_pa: Known;
  }[];
  hoses: { id: string; first_flow_held: FirstFlow; first_flow_decayed: FirstFlow; first_flow_empty: FirstFlow }[];
}
interface SystemSummary {
  id: string;
  product: string | null;
}
export interface FlowDocument {
  cautions: string[];
  warnings: { message: string; hint: string }[];
  options: { keep_flow_m3_per_s: Known };
  result: {
    systems?: SystemSummary[];
    states?: StateTold[];
    ladders?: LadderTold[];
    worst_states?: WorstTold[];
    spans?: SpansTold;
    lines_at_rest?: RestTold[];
  };
}
export interface WorthStep {
  open: number;
  slowest_a_m3_per_s: Known;
  slowest_b_m3_per_s: Known;
  gain: Known;
  verdict: "gains" | "same" | "loses" | "not determined";
  same_flow: boolean;
  proof_a: string | null;
  proof_b: string | null;
}
export interface WorthTold {
  system: string;
  least_gain: number;
  worth_it_from: number | null;
  worse_from: number | null;
  keeps_a: number | null;
  keeps_b: number | null;
  nothing_below: boolean;
  limiters_hold_below: boolean;
  steps: WorthStep[];
}
/** One figure in A and in B; `a` and `b` carry their SI unit in the key. */
export interface CompareRow {
  topic: string;
  open: string | null;
  system: string | null;
  of: string | null;
  differs: boolean;
  [value: string]: unknown;
}
export interface FindingChange {
  rule: string;
  subject: string;
  a: string | null;
  b: string | null;
}
export interface CompareDocument {
  cautions: string[];
  result: {
    worth: WorthTold[];
    no_answer: { system: string; fed_in: string; reason: string }[];
    rows: CompareRow[];
    changed_findings: FindingChange[];
  };
}
export type Told<D> = { document: D } | ErrorAnswer;

export const documentOf = <D>(answer: unknown): D | null =>
  answer && typeof answer === "object" && "document" in answer ? (answer as { document: D }).document : null;
export const errorOf = (answer: unknown): ErrorAnswer | null =>
  answer && typeof answer === "object" && "error" in answer ? (answer as ErrorAnswer) : null;
