import { valueAt, type Course } from "./curve";

/** Something that happens. */
export interface Happening {
  time_s: number;
  of: string | null;
  what: string;
}

/** What is played: when it ends, s, and what happens in it. */
export interface Played {
  end: number;
  events: readonly Happening[];
}

/** One event, as the incident document tells it. */
export interface EventTold extends Happening {
  of: string;
  escaped_m3: number;
  flow_m3_per_s: number;
  pressure_gauge_pa: number | null;
  held: Record<string, number>;
}

/** What a trace is made of, as the incident document tells it. */
export interface RunTold {
  name: string;
  counted_s: number;
  events: EventTold[];
  /** Null: the course is not determined, or has no value at that point. */
  chart: Record<string, (number | null)[] | null>;
  /** What courses do since the point before; null: the points tell it. */
  chart_between: Record<string, BetweenTold | null> | null;
}

/** Of each point; of the first its value. */
interface BetweenTold {
  mean: number[];
  low: number[];
  high: number[];
}

/** The least and the greatest about a course that is a mean. */
export interface Band {
  low: Course;
  high: Course;
}

/** All that is known of one run over time. */
export interface Trace extends Played {
  name: string;
  courses: ReadonlyMap<string, Course>;
  events: readonly EventTold[];
  /** When the fusible link parts: its course ends there, s; null: it does not. */
  linkParts: number | null;
  /** Of the courses that swing faster than the points of the document tell: they are means between them. */
  bands: ReadonlyMap<string, Band>;
}

/** Where fuel is that has escaped. */
export const outside = ["sump", "spill container", "slab", "ground", "interceptor", "air"] as const;

/** Names of the courses in the document, and what they are called here. */
const named: Record<string, string> = {
  escaping_m3_per_s: "escaping",
  pumped_m3_per_s: "pumped",
  elsewhere_m3_per_s: "elsewhere",
  pressure_gauge_pa: "pressure",
  link_temperature_k: "link",
  jet_low_m: "jet low",
  jet_high_m: "jet high",
};

const holderOf = (key: string) => (key.endsWith("_m3") ? key.slice(0, -3) : null);

/** What an event says of a course; null: nothing. */
function saidBy(event: EventTold, name: string): number | null {
  if (name === "escaping") return event.flow_m3_per_s;
  if (name === "pressure") return event.pressure_gauge_pa;
  return event.held[`${name}_m3`] ?? null;
}

/** A course with the events that fall between its points. What is before its first point holds until it. */
function withEvents(name: string, course: Course, events: readonly EventTold[]): Course {
  const begin = course.time[0] ?? 0;
  const known = new Set(course.time);
  const told = events.flatMap((e) => {
    const value = known.has(e.time_s) ? null : saidBy(e, name);
    return value === null ? [] : [{ time: e.time_s, value }];
  });
  const early = told.filter((p) => p.time < begin);
  const last = early.at(-1);
  const later = told.filter((p) => p.time > begin && p.time < (course.time.at(-1) ?? 0));
  const own = course.time.map((time, i) => ({ time, value: course.value[i] ?? 0 }));
  const all = [...early, ...(last ? [{ time: begin, value: last.value }] : []), ...merged(own, later)];
  return { time: all.map((p) => p.time), value: all.map((p) => p.value) };
}

interface Point {
  time: number;
  value: number;
}

function merged(a: readonly Point[], b: readonly Point[]): Point[] {
  const out: Point[] = [];
  let k = 0;
  for (const point of a) {
    for (let next = b[k]; next && next.time < point.time; next = b[k]) {
      out.push(next);
      ++k;
    }
    out.push(point);
  }
  return out;
}

function until(course: Course, end: number): Course {
  const last = valueAt(course, end);
  const kept = course.time.filter((t) => t < end).length;
  const time = course.time.slice(0, kept);
  const value = course.value.slice(0, kept);
  return last === null ? { time, value } : { time: [...time, end], value: [...value, last] };
}

/** What has escaped: the sum of what lies where escaped fuel lies. */
function escapedOf(courses: ReadonlyMap<string, Course>): Course {
  const parts = outside.flatMap((name) => courses.get(name) ?? []);
  const time = parts[0]?.time ?? [];
  return { time, value: time.map((_, i) => parts.reduce((sum, part) => sum + (part.value[i] ?? 0), 0)) };
}

/** What holds from point to point, in steps. */
function stepped(time: readonly number[], value: readonly number[]): Course {
  const later = time.slice(1);
  return {
    time: later.flatMap((t, i) => [time[i] ?? t, t]),
    value: later.flatMap((_, i) => [value[i + 1] ?? NaN, value[i + 1] ?? NaN]),
  };
}

const points = (told: readonly (number | null)[]) => told.map((value) => value ?? NaN);

/** The trace of a run. `linkPartsAt`: of the document, s; counts if the run has an event then. */
export function traceOf(run: RunTold, linkPartsAt: number | null = null): Trace {
  const time = points(run.chart["time_s"] ?? []);
  const hasPart = linkPartsAt !== null && run.events.some((e) => Math.abs(e.time_s - linkPartsAt) < 1e-3);
  const parts = hasPart ? linkPartsAt : null;
  const courses = new Map<string, Course>();
  for (const [key, told] of Object.entries(run.chart)) {
    const name = named[key] ?? holderOf(key);
    const value = points(told ?? []);
    if (name === null || value.length !== time.length || value.every(Number.isNaN)) continue;
    courses.set(name, withEvents(name, { time, value }, run.events));
  }
  const link = courses.get("link");
  if (link && parts !== null) courses.set("link", until(link, parts));
  courses.set("escaped", escapedOf(courses));
  const bands = new Map<string, Band>();
  for (const [key, between] of Object.entries(run.chart_between ?? {})) {
    const name = named[key];
    if (!between || name === undefined) continue;
    courses.set(name, stepped(time, between.mean));
    bands.set(name, { low: stepped(time, between.low), high: stepped(time, between.high) });
  }
  return { name: run.name, end: run.counted_s, courses, events: run.events, linkParts: parts, bands };
}

/** The value of a course of a trace at a time; null: it has none then. */
export function at(trace: Trace, name: string, t: number): number | null {
  const course = trace.courses.get(name);
  return course ? valueAt(course, t) : null;
}

/** Times of all events of several traces, each once, in order. */
export function eventTimes(traces: readonly Played[]): number[] {
  return [...new Set(traces.flatMap((trace) => trace.events.map((e) => e.time_s)))].sort((a, b) => a - b);
}

/** The last event at or before a time. */
export const lastEvent = (trace: Played, t: number): Happening | undefined =>
  trace.events.filter((e) => e.time_s <= t).at(-1);
