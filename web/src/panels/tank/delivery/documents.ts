/** What the delivery study tells, as the command's JSON has it. */
import type { Diagnostic } from "../../../api/types";
import type { Finding } from "../../parts/finding";

type Known = number | null;

export interface Drop {
  compartment: string;
  tank: string;
  product: string;
  end: string;
  begins_s: Known;
  ends_s: Known;
  brought_m3: number;
  dropped_m3: number;
  left_in_truck_m3: number;
  left_in_hose_m3: number;
  hose_holds_m3: number;
}

export interface FilledTank {
  tank: string;
  capacity_m3: number;
  volume_after_m3: number;
  room_to_95_percent_after_m3: number;
  alarm_at_s: Known;
  alarm_to_shutoff_s: Known;
  has_spill_container: boolean;
  spill_container_m3: Known;
}

/** The vapor above one tank, or above tanks that are joined. */
export interface Ullage {
  tanks: string[];
  /** Names of its vents in the chart. */
  vents: string[];
  /** Why its pressure is not determined. */
  problem: string | null;
  highest_is_least: boolean;
  no_way_out: boolean;
  highest_pressure_gauge_pa: Known;
  vent_opens_at_pa: Known;
  vented_m3: Known;
  air_drawn_in_m3: Known;
  to_truck_m3: Known;
}

export interface DeliveryEvent {
  time_s: number;
  event: string;
  of: string | null;
  what: string;
}

export interface Move {
  from: string;
  to: string;
  of: "liquid" | "vapor";
  amount_m3: number;
}

type Courses = Record<string, number[]>;

export interface DeliveryChart {
  time_s: number[];
  rate_m3_per_s: Courses;
  truck_m3: Courses;
  hose_m3: Courses;
  tank_m3: Courses;
  depth_m: Courses;
  ullage_pressure_gauge_pa: Courses;
  /** At grade, of each ullage with a vapor return. */
  return_riser_pressure_gauge_pa: Courses;
  /** Midway, of each ullage that has a vapor hose on. */
  vapor_hose_pressure_gauge_pa: Courses;
  truck_pressure_gauge_pa: number[] | null;
  vented_m3_per_s: Courses;
  to_truck_m3_per_s: Courses;
}

export interface DeliveryRun {
  name: string;
  problem: string | null;
  stalled: boolean;
  under_pressure: boolean;
  all_dropped: boolean;
  time_s: number;
  dropped_m3: number;
  mean_rate_m3_per_s: number;
  drops: Drop[];
  tanks: FilledTank[];
  ullages: Ullage[];
  truck: { closed_to_ullage: boolean };
  events: DeliveryEvent[];
  ledger: Move[];
  liquid_balance: number;
  vapor_balance: number;
  chart: DeliveryChart | null;
}

interface Range {
  low: number;
  high: number;
}

export interface DeliverySpan {
  value: string;
  time_at_low_s: number;
  time_at_high_s: number;
  highest_ullage_pressure_at_low_gauge_pa: number;
  highest_ullage_pressure_at_high_gauge_pa: number;
}

export interface DeliveryDocument {
  cautions: string[];
  warnings: Diagnostic[];
  findings: Finding[];
  result: {
    delivery: string | null;
    problem: string | null;
    /** The one asked for, then the cases beside it. */
    runs: DeliveryRun[];
    spans: DeliverySpan[];
    time_range_s: Range | null;
    highest_ullage_pressure_range_gauge_pa: Range | null;
    notes: string[];
  };
}
