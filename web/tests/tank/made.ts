/** A delivery of two drops, made by hand so that every figure of it is known. */
import type { DeliveryDocument, DeliveryRun, Ullage } from "../../src/panels/tank/delivery/documents";

export const ullage = (changes: Partial<Ullage> = {}): Ullage => ({
  tanks: ["T1", "T3"],
  vents: ["stack"],
  problem: null,
  highest_is_least: false,
  no_way_out: false,
  highest_pressure_gauge_pa: 800,
  vent_opens_at_pa: 750,
  vented_m3: 0.6,
  air_drawn_in_m3: 0,
  to_truck_m3: 2.5,
  ...changes,
});

const drop = (compartment: string, tank: string, begins: number, ends: number) => ({
  compartment,
  tank,
  product: "regular",
  end: "emptied",
  begins_s: begins,
  ends_s: ends,
  brought_m3: 1,
  dropped_m3: 1.1,
  left_in_truck_m3: 1e-6,
  left_in_hose_m3: 1e-6,
  hose_holds_m3: 0.1,
});

const filled = (tank: string) => ({
  tank,
  capacity_m3: 10,
  volume_after_m3: 6,
  room_to_95_percent_after_m3: 3.5,
  alarm_at_s: null,
  alarm_to_shutoff_s: null,
  has_spill_container: true,
  spill_container_m3: 0.02,
});

/** Front flows from 0 to 100 s, rear from 200 to 300 s, each at 0.01 m3/s; the vent is open from 250 s on. */
export const run = (changes: Partial<DeliveryRun> = {}): DeliveryRun => ({
  name: "as entered",
  problem: null,
  stalled: false,
  under_pressure: false,
  all_dropped: true,
  time_s: 300,
  dropped_m3: 2.2,
  mean_rate_m3_per_s: 0.01,
  drops: [drop("front", "T1", 0, 100), drop("rear", "T3", 200, 300)],
  tanks: [filled("T1"), filled("T3")],
  ullages: [ullage()],
  truck: { closed_to_ullage: true },
  events: [
    { time_s: 0, event: "begins", of: "front", what: "the drop begins" },
    { time_s: 200, event: "begins", of: "rear", what: "the drop begins" },
    { time_s: 250, event: "vent-opens", of: "stack", what: "the vent valve opens outward" },
    { time_s: 300, event: "ends", of: null, what: "the delivery ends" },
  ],
  ledger: [
    { from: "front", to: "tank T1", of: "liquid", amount_m3: 1.1 },
    { from: "rear", to: "tank T3", of: "liquid", amount_m3: 1.1 },
    { from: "ullage of T1, T3", to: "open air", of: "vapor", amount_m3: 0.6 },
  ],
  liquid_balance: 1e-16,
  vapor_balance: 1e-16,
  chart: {
    time_s: [0, 100, 100, 200, 200, 250, 300],
    rate_m3_per_s: { front: [0.01, 0.01, 0, 0, 0, 0, 0], rear: [0, 0, 0, 0, 0.01, 0.01, 0.01] },
    truck_m3: { front: [1, 0, 0, 0, 0, 0, 0], rear: [1, 1, 1, 1, 1, 0.5, 0] },
    hose_m3: { front: [0.1, 0, 0, 0, 0, 0, 0], rear: [0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0] },
    tank_m3: { T1: [5, 6, 6, 6, 6, 6, 6], T3: [5, 5, 5, 5, 5, 5.5, 6] },
    depth_m: { T1: [1, 1.2, 1.2, 1.2, 1.2, 1.2, 1.2], T3: [1, 1, 1, 1, 1, 1.1, 1.2] },
    ullage_pressure_gauge_pa: { "T1, T3": [0, 500, 500, 500, 500, 750, 800] },
    return_riser_pressure_gauge_pa: { "T1, T3": [0, 400, 500, 500, 400, 650, 700] },
    vapor_hose_pressure_gauge_pa: { "T1, T3": [0, 150, 500, 500, 150, 275, 290] },
    truck_pressure_gauge_pa: [0, -100, -100, -100, -100, -100, -120],
    vented_m3_per_s: { stack: [0, 0, 0, 0, 0, 0, 0.02] },
    to_truck_m3_per_s: { "T1, T3": [0.01, 0.01, 0, 0, 0.01, 0.01, 0.01] },
  },
  ...changes,
});

/** Shorter, through the vent alone. */
export const ventAlone = () =>
  run({
    name: "vent alone",
    time_s: 250,
    truck: { closed_to_ullage: false },
    ullages: [ullage({ vented_m3: 3, to_truck_m3: 0 })],
    chart: {
      time_s: [0, 250],
      rate_m3_per_s: { front: [0.01, 0.01], rear: [0.01, 0.01] },
      truck_m3: { front: [1, 0], rear: [1, 0] },
      hose_m3: { front: [0.1, 0], rear: [0.1, 0] },
      tank_m3: { T1: [5, 6], T3: [5, 6] },
      depth_m: { T1: [1, 1.2], T3: [1, 1.2] },
      ullage_pressure_gauge_pa: { "T1, T3": [0, 1200] },
      return_riser_pressure_gauge_pa: { "T1, T3": [0, 1200] },
      vapor_hose_pressure_gauge_pa: {},
      truck_pressure_gauge_pa: null,
      vented_m3_per_s: { stack: [0.012, 0.012] },
      to_truck_m3_per_s: { "T1, T3": [0, 0] },
    },
  });

export const documentOf = (...runs: DeliveryRun[]): DeliveryDocument => ({
  cautions: [],
  warnings: [],
  findings: [],
  result: {
    delivery: "load",
    problem: null,
    runs,
    spans: [],
    time_range_s: null,
    highest_ullage_pressure_range_gauge_pa: null,
    notes: [],
  },
});
