import { clockText } from "../../../draw/clock";
import { amount, digits, span, unitOf, withUnit, type Quantity, type UnitSystem } from "../../../draw/numbers";
import type { IncidentResult, Jet, OpenEnd, Spread } from "./documents";

/** A figure of a kind: what, and its value as shown. */
export type Figure = readonly [string, string];
export interface FigureGroup {
  title: string;
  rows: Figure[];
}

const notDetermined = "not determined";

class Writer {
  constructor(private readonly units: UnitSystem) {}
  one(what: Quantity, si: number | null | undefined, decimals?: number): string {
    return si === null || si === undefined ? notDetermined : withUnit(what, this.units, si, decimals);
  }
  amount(si: number | null | undefined): string {
    return si === null || si === undefined
      ? notDetermined
      : `${amount(this.units, si)}\u00A0${unitOf("volume", this.units)}`;
  }
  range(what: Quantity, s: Spread | null, decimals?: number): string {
    return s ? `${span(what, this.units, s.low, s.high, decimals)}\u00A0${unitOf(what, this.units)}` : notDetermined;
  }
  /** Times from one to another. */
  times(s: Spread | null): string {
    if (!s) return notDetermined;
    const [low, high] = [clockText(s.low), clockText(s.high)];
    return low === high ? low : `${low} to ${high}`;
  }
  time = (si: number | null) => (si === null ? "does not happen" : clockText(si));
}

function openEnd(e: OpenEnd, several: boolean, w: Writer): FigureGroup {
  return {
    title: several ? `The open end, ${e.product}` : "The open end",
    rows: [
      ["Flow once steady", w.one("flow", e.steady_flow_m3_per_s)],
      ["Height above the liquid in the tank", w.one("length", e.height_above_liquid_m)],
      ["Line pressure at the opening before it opens", w.one("pressure", e.shutoff_at_opening_gauge_pa)],
      ...(e.in_45_s_m3 === null ? [] : [["Lost in 45 s, if nothing shuts", w.amount(e.in_45_s_m3)] as const]),
      ...(e.steady_flow_figure_m3 === null
        ? []
        : [["Steady-flow figure of the shear valve", w.amount(e.steady_flow_figure_m3)] as const]),
      ...e.elsewhere.map((h): Figure => {
        const [before, during] = [w.one("flow", h.before_m3_per_s), w.one("flow", h.during_m3_per_s)];
        return [`Hose ${h.hose}`, `${before} before, ${during} during`];
      }),
    ],
  };
}

function jetRow(jet: Jet, w: Writer): Figure {
  const height = w.range("length", { low: jet.height_low_m, likely: jet.height_low_m, high: jet.height_high_m });
  const opening = jet.area_share === 1 ? "full opening" : `${digits(100 * jet.area_share, 0)}\u00A0% of the opening`;
  return [`Jet, ${opening}`, `${w.one("flow", jet.flow_m3_per_s)}, height ${height}`];
}

function ofCrack(c: NonNullable<IncidentResult["crack"]>, w: Writer): FigureGroup {
  const at = (leak: Spread, pressure: number) => `${w.range("leak", leak)} at ${w.one("pressure", pressure)}`;
  const seen = c.bound_to_be_seen === null ? notDetermined : c.bound_to_be_seen ? "yes" : "no";
  return {
    title: "The crack",
    rows: [
      ["Leak while the pump runs", at(c.at_running_m3_per_s, c.running_pressure_gauge_pa)],
      ["Leak while it rests", at(c.at_holding_m3_per_s, c.holding_pressure_gauge_pa)],
      ["Mean leak", w.range("leak", c.mean_m3_per_s)],
      ["Round hole of the same leak", w.one("bore", c.hole_diameter_m, 3)],
      ["The leak detector is bound to see it", c.seen_reason ? `${seen}: ${c.seen_reason}` : seen],
      ["Until the sump sensor is wet", w.times(c.to_sensor_s)],
      ["Until fuel stands at the lowest entry seal", w.times(c.to_lowest_seal_s)],
      ["Until the sump runs over", w.times(c.to_brim_s)],
    ],
  };
}

function ofDriveOff(d: NonNullable<IncidentResult["drive_off"]>, w: Writer): FigureGroup {
  return {
    title: "The pull",
    rows: [
      ["Outcome", d.outcome || notDetermined],
      ["The hose is tight after", `${clockText(d.tight_at_s)}, at ${w.one("velocity", d.speed_then_m_per_s)}`],
      ["Pull that parts the breakaway", d.may_never_release ? "may never be reached" : w.range("force", d.separation_force_n)],
      ...d.limits.map((l) => [`Limit: ${l.limit}`, w.range("force", l.pull_n)] as const),
      ["Something parts after", w.time(d.parts_at_s)],
    ],
  };
}

const smallFire = 1e4; // W; below it decimals tell something

function ofFire(f: NonNullable<IncidentResult["fire"]>, w: Writer): FigureGroup {
  const parts = f.link_parts_at_s === null ? f.link_reason || notDetermined : clockText(f.link_parts_at_s);
  return {
    title: "The fire, in orders of magnitude",
    rows: [
      ["What burns", f.fuel ?? notDetermined],
      ["Pool", w.one("length", f.pool_diameter_m)],
      ["Heat released", w.range("heat", f.heat_release_w, f.heat_release_w.high < smallFire ? 2 : 0)],
      ["Flame", w.range("length", f.flame_height_m)],
      ...f.radiation.map((r): Figure => {
        return [`Radiation ${w.one("length", r.from_edge_m)} from its edge`, w.range("heat flux", r.flux_w_per_m2)];
      }),
      ["The fusible link parts after", parts],
      ["Fed to the fire with the link", w.amount(f.fed_with_link_m3)],
      ["Fed to the fire without it", w.amount(f.fed_without_link_m3)],
    ],
  };
}

function ofOverfill(o: NonNullable<IncidentResult["overfill"]>, w: Writer): FigureGroup {
  return {
    title: `The drop into ${o.tank}`,
    rows: [
      ["Flow from the truck", w.one("flow", o.truck_flow_m3_per_s, 0)],
      ["The alarm sounds after", w.time(o.alarm_at_s)],
      ["The overfill valve restricts after", w.time(o.restricts_at_s)],
      ["The overfill valve shuts after", w.time(o.closes_at_s)],
      ["The tank is full after", w.time(o.full_at_s)],
      ["In the spill container", w.amount(o.in_container_m3)],
      ["Spilled past it", w.amount(o.spilled_m3)],
      ...o.notes.map((note) => ["Mind", note] as const),
    ],
  };
}

/** The figures that a kind has beside its courses. */
export function figuresOf(result: IncidentResult, units: UnitSystem): FigureGroup[] {
  const w = new Writer(units);
  const out: FigureGroup[] = [];
  const { crack, drive_off, fire, overfill, pool, pack_and_column: pack } = result;
  if (crack) out.push(ofCrack(crack, w));
  if (drive_off) out.push(ofDriveOff(drive_off, w));
  if (fire) out.push(ofFire(fire, w));
  if (overfill) out.push(ofOverfill(overfill, w));
  if (!crack) out.push(...result.open_ends.map((e) => openEnd(e, result.open_ends.length > 1, w)));
  if (result.jets.length) out.push({ title: "The jet", rows: result.jets.map((j) => jetRow(j, w)) });
  if (pack) {
    out.push({
      title: "What makes the difference while the valve shuts",
      rows: [
        ["Steady flow only", w.amount(pack.neither_m3)],
        ["With the line springing back", w.amount(pack.with_spring_m3)],
        ["With the columns of fuel", w.amount(pack.with_columns_m3)],
        ["With both", w.amount(pack.with_both_m3)],
      ],
    });
  }
  if (pool) {
    out.push({
      title: "The pool",
      rows: [
        ["Fuel on the slab", w.amount(pool.volume_m3)],
        ["Radius of the pool", w.range("length", pool.radius_m)],
      ],
    });
  }
  return out;
}
