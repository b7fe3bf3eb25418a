import { at, type Trace } from "./curve_trace";

/** What the scene shows at a moment, SI; null: not told. */
export interface SceneMoment {
  sump: number | null;
  slab: number | null;
  escaping: number | null;
  jetLow: number | null;
  jetHigh: number | null;
  /** The dispenser stands. */
  stands: boolean;
}

/** The scene of a trace at a time. `downAt`: from when on the dispenser lies, s; null: it stands to the end. */
export function momentOf(trace: Trace, t: number, downAt: number | null): SceneMoment {
  return {
    sump: at(trace, "sump", t),
    slab: at(trace, "slab", t),
    escaping: at(trace, "escaping", t),
    jetLow: at(trace, "jet low", t),
    jetHigh: at(trace, "jet high", t),
    stands: downAt === null || t <= downAt,
  };
}

/** What full scales of the drawing stand for, SI; null: the drawing has no such thing. */
export interface SceneScales {
  sump: number | null;
  slab: number | null;
  escaping: number | null;
  jet: number | null;
}

const scaleNames = {
  sump: "data-full-sump-m3",
  slab: "data-full-pool-m3",
  escaping: "data-full-flow-m3-per-s",
  jet: "data-full-jet-m",
} as const;

/** The scales that a drawing says of itself, from its SVG. */
export function scalesIn(svg: string): SceneScales {
  const number = (name: string) => {
    const value = Number(new RegExp(` ${name}="([^"]*)"`).exec(svg)?.[1]);
    return value > 0 ? value : null;
  };
  return {
    sump: number(scaleNames.sump),
    slab: number(scaleNames.slab),
    escaping: number(scaleNames.escaping),
    jet: number(scaleNames.jet),
  };
}

const larger = (a: number | null, b: number | null) => (a === null || b === null ? (a ?? b) : Math.max(a, b));

/** One scale for two drawings, so that they can be compared; a sump is full at its own brim. */
export const jointly = (own: SceneScales, other: SceneScales): SceneScales => ({
  sump: own.sump,
  slab: larger(own.slab, other.slab),
  escaping: larger(own.escaping, other.escaping),
  jet: larger(own.jet, other.jet),
});

/** The drawing with other ids, so that two stand in one page. */
export const renamed = (svg: string, prefix: string) => svg.replace(/\bscene-(title|desc)\b/g, `${prefix}-$1`);

/** Attributes of an element of the drawing. */
export type Attributes = Record<string, string>;
/** Reads a number that an element says of itself. */
export type Extents = (name: string) => number;

const share = (value: number | null, full: number | null) =>
  value === null || full === null ? 0 : Math.min(1, Math.max(0, value / full));
const px = (value: number) => value.toFixed(2);

/** The fuel in the sump, its fill by volume. */
export function sumpAt(now: SceneMoment, full: SceneScales, of: Extents): Attributes {
  const height = share(now.sump, full.sump) * of("data-full");
  return { height: px(height), y: px(of("data-foot") - height) };
}

/** The pool on the slab: its radius goes with the root of its volume. */
export function poolAt(now: SceneMoment, full: SceneScales, of: Extents): Attributes {
  const half = Math.sqrt(share(now.slab, full.slab)) * of("data-full");
  return { width: px(2 * half), x: px(of("data-middle") - half) };
}

/** What flows in the pipe, as wide as its share. */
export function flowAt(now: SceneMoment, full: SceneScales, of: Extents): Attributes {
  const part = share(now.escaping, full.escaping);
  return { "stroke-width": px(part * of("data-full")), display: part > 0 ? "inline" : "none" };
}

/** The four lines of the jet's range, from the foot up; null: no jet is told. */
export function jetAt(now: SceneMoment, full: SceneScales, of: Extents): Attributes[] | null {
  if (now.jetHigh === null || full.jet === null) return null;
  const y = (value: number | null) => px(of("data-foot") - share(value, full.jet) * of("data-full"));
  const [low, high] = [y(now.jetLow), y(now.jetHigh)];
  return [{ y2: low }, { y1: low, y2: high }, { y1: low, y2: low }, { y1: high, y2: high }];
}
