/** A run of a delivery over time, by the names of its courses. Nothing here knows of the page. */
import { valueAt, type Course } from "../../../draw/curve";
import { capital } from "../../../draw/words";
import type { DeliveryChart, DeliveryRun, Ullage } from "./documents";

/** Names of the courses that a run has once; the others are "left front", "full T1", "pressure T1, T2". */
export type OnceNamed = "rate" | "left" | "vented" | "returned" | "truck";

export interface DropTrace {
  /** s */
  end: number;
  events: DeliveryRun["events"];
  courses: ReadonlyMap<string, Course>;
}

/** The name of an ullage in the chart. */
export const spaceOf = (ullage: Pick<Ullage, "tanks">) => ullage.tanks.join(", ");

const sumOf = (all: readonly number[][], points: number) =>
  Array.from({ length: points }, (_, i) => all.reduce((sum, one) => sum + (one[i] ?? 0), 0));

/** What has passed by each time at a rate that runs straight between the points; ends at `total`. What the points do
 * not tell is spread over where something flows. */
export function passedBy(time: readonly number[], rate: readonly number[], total: number): number[] {
  const steps = time.map((t, i) => {
    const width = t - (time[i - 1] ?? t);
    return (width * ((rate[i - 1] ?? 0) + (rate[i] ?? 0))) / 2;
  });
  const both = steps.reduce((sum, s) => sum + Math.abs(s), 0);
  const missing = total - steps.reduce((sum, s) => sum + s, 0);
  let passed = 0;
  return steps.map((s) => (passed += s + (both > 0 ? (missing * Math.abs(s)) / both : 0)));
}

const determined = (run: DeliveryRun) => run.ullages.every((u) => u.problem === null);

const totalOf = (run: DeliveryRun, of: (ullage: Ullage) => number | null) =>
  run.ullages.reduce((sum, u) => sum + (of(u) ?? 0), 0);

/** Vapor that leaves at the vents, net: by the end. */
export const ventedOf = (run: DeliveryRun): number | null =>
  determined(run) ? totalOf(run, (u) => (u.vented_m3 ?? 0) - (u.air_drawn_in_m3 ?? 0)) : null;
/** Vapor that goes back to the truck, by the end. */
export const returnedOf = (run: DeliveryRun): number | null =>
  determined(run) ? totalOf(run, (u) => u.to_truck_m3) : null;

function vaporCourses(run: DeliveryRun, chart: DeliveryChart): [string, number[]][] {
  const time = chart.time_s;
  const passed = (rates: Record<string, number[]>, total: number | null): number[] | null =>
    total === null ? null : passedBy(time, sumOf(Object.values(rates), time.length), total);
  const vented = passed(chart.vented_m3_per_s, ventedOf(run));
  const returned = passed(chart.to_truck_m3_per_s, returnedOf(run));
  return [...(vented ? [["vented", vented] as const] : []), ...(returned ? [["returned", returned] as const] : [])].map(
    ([name, value]) => [name, value],
  );
}

const named = (kind: string, courses: Record<string, number[]>): [string, number[]][] =>
  Object.entries(courses).map(([of, value]) => [`${kind} ${of}`, value]);

export function traceOf(run: DeliveryRun): DropTrace {
  const { chart, time_s: end } = run;
  const events = run.events.map((e) => ({ ...e, what: capital(e.what) }));
  if (!chart) return { end, events, courses: new Map() };
  const points = chart.time_s.length;
  const capacity = (tank: string) => run.tanks.find((t) => t.tank === tank)?.capacity_m3 ?? NaN;
  const all: [string, number[]][] = [
    ["rate", sumOf(Object.values(chart.rate_m3_per_s), points)],
    ["left", sumOf(Object.values(chart.truck_m3), points)],
    ...vaporCourses(run, chart),
    ...named("rate", chart.rate_m3_per_s),
    ...named("left", chart.truck_m3),
    ...named("hose", chart.hose_m3),
    ...named("volume", chart.tank_m3),
    ...named("depth", chart.depth_m),
    ...Object.entries(chart.tank_m3).map(([tank, value]): [string, number[]] => [
      `full ${tank}`,
      value.map((v) => v / capacity(tank)),
    ]),
    ...named("pressure", chart.ullage_pressure_gauge_pa),
    ...named("riser", chart.return_riser_pressure_gauge_pa),
    ...named("vapor hose", chart.vapor_hose_pressure_gauge_pa),
    ...named("vent", chart.vented_m3_per_s),
    ...named("return", chart.to_truck_m3_per_s),
    ...(chart.truck_pressure_gauge_pa ? [["truck", chart.truck_pressure_gauge_pa] as [string, number[]]] : []),
  ];
  return { end, events, courses: new Map(all.map(([name, value]) => [name, { time: chart.time_s, value }])) };
}

/** The value of a course at a time; null: it has none then. */
export function at(trace: DropTrace, name: string, t: number): number | null {
  const course = trace.courses.get(name);
  return course ? valueAt(course, t) : null;
}

/** The same, and after the run as it ended: of what rests then. */
export const restingAt = (trace: DropTrace, name: string, t: number) => at(trace, name, Math.min(t, trace.end));
