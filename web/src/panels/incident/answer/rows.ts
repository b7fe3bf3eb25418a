import { finalOf, isFlat, mostOf, leastOf, same, valueAt, type Course } from "../../../draw/curve";
import { at, type Band, type Trace } from "../../../draw/curve_trace";
import {
  amountDecimals,
  decimalsOf,
  figure,
  signed,
  valueIn,
  withUnit,
  type Quantity,
  type UnitSystem,
} from "../../../draw/numbers";
import { sidesOf } from "../../replay/view";
import type { View } from "./view";

/** Something that is followed over time. */
interface Followed {
  /** Name of its course in a trace. */
  name: string;
  label: string;
  what: Quantity;
}

const followed: readonly Followed[] = [
  { name: "escaped", label: "Fuel lost", what: "volume" },
  { name: "escaping", label: "Leak flow", what: "flow" },
  { name: "pressure", label: "Line pressure", what: "pressure" },
  { name: "link", label: "Fusible link", what: "temperature" },
  { name: "sump", label: "In the sump", what: "volume" },
  { name: "spill container", label: "In the spill container", what: "volume" },
  { name: "slab", label: "On the slab", what: "volume" },
  { name: "ground", label: "In the ground", what: "volume" },
  { name: "interceptor", label: "In the interceptor", what: "volume" },
  { name: "air", label: "In the air", what: "volume" },
  { name: "pumped", label: "Pumped", what: "flow" },
  { name: "elsewhere", label: "At hoses elsewhere", what: "flow" },
  { name: "vehicle", label: "In vehicles", what: "volume" },
];
/** Followed where there is a tanker. */
const ofTheDrop: readonly Followed[] = [
  { name: "tank", label: "In the tank", what: "volume" },
  { name: "tanker", label: "In the tanker", what: "volume" },
  { name: "delivery hose", label: "In the delivery hose", what: "volume" },
];

const nothingIn = (course: Course) => mostOf(course) <= 1e-12 && leastOf(course) >= -1e-12;

/** How near two courses are that count as the same, as a share of the greatest value. Points of a flow that swings lie
 * too far apart to tell more. */
const exact = 1e-9;
const swinging = 5e-3;

/** A followed thing with its courses. `alike`: both choices have the same course all the time. */
export interface Told extends Followed {
  courses: { letter: "A" | "B"; course: Course; band?: Band }[];
  alike: boolean;
}

/** All that either choice tells, apart from what stays at nothing in both but for what is lost. */
export function toldOf(view: View): Told[] {
  const sides = sidesOf(view);
  const drop = sides.some((s) => s.trace.courses.has("tanker"));
  const swings = sides.some((s) => s.trace.bands.size > 0);
  const means = (name: string) => sides.some((s) => s.trace.bands.has(name));
  const labels: Record<string, string> = {
    ...(drop ? { pumped: "From the tanker", escaping: "Flow over the top" } : {}),
  };
  const likeness = swings ? swinging : exact;
  const list = drop ? [...followed, ...ofTheDrop] : followed;
  const told = list.flatMap((one) => {
    const courses = sides.flatMap(({ letter, trace }) => {
      const course = trace.courses.get(one.name);
      const band = trace.bands.get(one.name);
      return course && course.time.length ? [{ letter, course, ...(band ? { band } : {}) }] : [];
    });
    const [a, b] = courses;
    if (!a || (one.name !== "escaped" && courses.every((c) => nothingIn(c.course)))) return [];
    const alike = view.b ? b !== undefined && same(a.course, b.course, likeness) : isFlat(a.course) && !a.band;
    const label = labels[one.name] ?? one.label;
    return [{ ...one, label: means(one.name) ? `${label}, mean` : label, courses, alike }];
  });
  const escaped = told.find((one) => one.name === "escaped");
  return told.map((one) => (swings && escaped?.alike && one.name === "escaping" ? { ...one, alike: true } : one));
}

/** Decimals of a value of what is followed, SI: of an amount by its size; of others as usual, more where a flow is small
 * all the time, none where it is great. */
export function decimalsFor(one: Told, units: UnitSystem, si: number): number {
  if (one.name === "tank" || one.name === "tanker") return 0;
  if (one.what === "volume") return amountDecimals(valueIn("volume", units, si));
  if (one.what !== "flow") return decimalsOf(one.what, units);
  const most = Math.max(...one.courses.map((c) => valueIn("flow", units, mostOf(c.course))));
  if (most >= 1000) return 0;
  return [1, 0.1, 0.01].filter((size) => most < size).length + decimalsOf("flow", units);
}

/** Why a course has no value at a time, in a word. */
function wordAt(trace: Trace, name: string, t: number): string {
  if (name === "link" && trace.linkParts !== null && t > trace.linkParts) return "parted";
  return t > trace.end ? "not counted" : "–";
}

interface Row {
  name: string;
  label: string;
  what: Quantity;
  /** SI; null: none. */
  values: (number | null)[];
  shown: string[];
  /** B less A as shown; empty where one of them has no value. */
  change: string;
}

/** The table at a time. */
export function rowsAt(view: View, told: readonly Told[], t: number, units: UnitSystem): Row[] {
  const sides = sidesOf(view);
  return told.map((one) => {
    const decimals = (si: number) => decimalsFor(one, units, si);
    const values = sides.map((s) => at(s.trace, one.name, t));
    const shown = values.map((v, i) => {
      const trace = sides[i]?.trace;
      return v === null && trace ? wordAt(trace, one.name, t) : figure(one.what, units, v, decimals(v ?? 0));
    });
    const change = changeOf(one.what, units, values, decimals);
    return { name: one.name, label: one.label, what: one.what, values, shown, change };
  });
}

/** B less A as shown, from the values of both; no finer than the coarser of them is shown. */
function changeOf(
  what: Quantity,
  units: UnitSystem,
  values: readonly (number | null)[],
  decimals: (si: number) => number,
): string {
  const [a, b] = values;
  if (a === null || b === null || a === undefined || b === undefined) return "";
  const shown = (si: number) => Number(valueIn(what, units, si).toFixed(decimals(si)));
  return signed(shown(b) - shown(a), Math.min(decimals(a), decimals(b)));
}

/** The same of two amounts. */
export const amountChange = (units: UnitSystem, values: readonly (number | null)[]) =>
  changeOf("volume", units, values, (si) => amountDecimals(valueIn("volume", units, si)));

/** What is said of a course that both choices share. */
export function alikeWords(one: Told, view: View, units: UnitSystem): string {
  const course = one.courses[0]?.course;
  if (!course) return "";
  const said = (si: number | null) => withUnit(one.what, units, si, decimalsFor(one, units, si ?? 0));
  const both = view.b ? " in both" : "";
  if (isFlat(course)) return `${one.label}: stays at ${said(finalOf(course))}${both}, so it has no chart.`;
  const range = `from ${said(leastOf(course))} to ${said(mostOf(course))}`;
  return `${one.label}: the same${both} all the time, ${range}, so it has no chart.`;
}

/** A course in words, for those who do not see its chart. */
export function courseWords(one: Told, units: UnitSystem): string {
  const said = (si: number | null) => withUnit(one.what, units, si, decimalsFor(one, units, si ?? 0));
  const each = one.courses.map(({ letter, course }) => {
    const [begin, end] = [valueAt(course, course.time[0] ?? 0), finalOf(course)];
    return `${letter} begins at ${said(begin)}, reaches ${said(mostOf(course))} and ends at ${said(end)}`;
  });
  return `${one.label} over time: ${each.join("; ")}.`;
}
