/** Geometry of the plan: meters of the site to places of the drawing and back, snapping, dimensions. Nothing here
 * knows of the page. Meters count to the right and upward; places of the drawing to the right and downward. */
import { shownUnits } from "../api/units";
import type { UnitSystem } from "./numbers";

export interface Point {
  x: number;
  y: number;
}

/** One scale both ways: drawn x = left + scale x, drawn y = top - scale y. */
export interface PlanFrame {
  /** Units of the drawing to a meter. */
  scale: number;
  left: number;
  top: number;
}

export const foot = shownUnits.length.us.size;
/** Within this of another part's center line a part snaps to it, m. */
export const reach = 1.2 * foot;

/** Steps of the grid, m: the usual one, and the fine one with Alt. */
export const gridOf = (units: UnitSystem, fine = false) => (units === "us" ? foot : 0.3) * (fine ? 0.1 : 1);

export const drawn = (frame: PlanFrame, at: Point): Point => ({
  x: frame.left + frame.scale * at.x,
  y: frame.top - frame.scale * at.y,
});

export const onSite = (frame: PlanFrame, at: Point): Point => ({
  x: (at.x - frame.left) / frame.scale,
  y: (frame.top - at.y) / frame.scale,
});

/** A frame of its own for a sheet of this size, where nothing is drawn yet to fit to. */
export function ownFrame(places: readonly Point[], width: number, height: number): PlanFrame {
  const margin = 70;
  const xs = places.length ? places.map((p) => p.x) : [0];
  const ys = places.length ? places.map((p) => p.y) : [0];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const leastAcross = 30;
  const scale = Math.min(
    (width - 2 * margin) / Math.max(right - left, leastAcross),
    (height - 2 * margin) / Math.max(high - low, leastAcross / 4),
  );
  return {
    scale,
    left: width / 2 - (scale * (left + right)) / 2,
    top: height / 2 + (scale * (low + high)) / 2,
  };
}

/** Where a moved part comes to stand, and the center lines of others that it stands on. */
interface Snapped {
  at: Point;
  /** It stands on the center line x = this, m; null: on none. */
  x: number | null;
  y: number | null;
}

const nearestLine = (value: number, lines: readonly number[]): number | null => {
  const near = lines.filter((l) => Math.abs(l - value) <= reach);
  return near.length ? near.reduce((a, b) => (Math.abs(b - value) < Math.abs(a - value) ? b : a)) : null;
};

const onGrid = (value: number, step: number) => Math.round(value / step) * step;

/** To the center line of another part where one is near, else to the grid. Fine steps know no center lines. */
export function snap(at: Point, others: readonly Point[], units: UnitSystem, fine: boolean): Snapped {
  const step = gridOf(units, fine);
  const x = fine ? null : nearestLine(at.x, others.map((o) => o.x));
  const y = fine ? null : nearestLine(at.y, others.map((o) => o.y));
  return { at: { x: x ?? onGrid(at.x, step), y: y ?? onGrid(at.y, step) }, x, y };
}

/** A dimension on the plan, level or upright. */
export interface Dimension {
  from: Point;
  to: Point;
  length: number;
}

/** The nearest other, where those in the same row come first. */
function neighbor(others: readonly Point[], along: (o: Point) => number, aside: (o: Point) => number): Point | null {
  const apart = others.filter((o) => along(o) > 0.01);
  const row = apart.filter((o) => aside(o) <= reach);
  const among = row.length ? row : apart;
  return among.length ? among.reduce((a, b) => (along(b) + aside(b) < along(a) + aside(a) ? b : a)) : null;
}

/** One level and one upright dimension, each to the nearest neighbor that way; fewer where there is none. */
export function dimensions(at: Point, others: readonly Point[]): Dimension[] {
  const dx = (o: Point) => Math.abs(o.x - at.x);
  const dy = (o: Point) => Math.abs(o.y - at.y);
  const out: Dimension[] = [];
  const level = neighbor(others, dx, dy);
  if (level) out.push({ from: at, to: { x: level.x, y: at.y }, length: dx(level) });
  const upright = neighbor(others, dy, dx);
  if (upright) out.push({ from: at, to: { x: at.x, y: upright.y }, length: dy(upright) });
  return out;
}

/** Where a copy stands: its row goes on at its own pitch; without one, ten steps of the grid to the right. On none of
 * what is `taken`. */
export function nextInRow(at: Point, row: readonly Point[], units: UnitSystem, taken: readonly Point[] = row): Point {
  const level = row.filter((o) => Math.abs(o.y - at.y) <= reach && Math.abs(o.x - at.x) > reach);
  const near = level.length ? level.reduce((a, b) => (Math.abs(b.x - at.x) < Math.abs(a.x - at.x) ? b : a)) : null;
  const pitch = near ? Math.abs(at.x - near.x) : 10 * gridOf(units);
  const free = (p: Point) => taken.every((o) => Math.hypot(o.x - p.x, o.y - p.y) > reach);
  let next = { x: at.x + pitch, y: at.y };
  while (!free(next)) next = { x: next.x + pitch, y: at.y };
  return next;
}

/** A length as it is entered: no more decimals than it needs, to a hundredth of a foot or a millimeter. */
export function lengthText(meters: number, units: UnitSystem): string {
  const value = units === "us" ? meters / foot : meters;
  const rounded = Number(value.toFixed(units === "us" ? 2 : 3));
  return `${Object.is(rounded, -0) ? 0 : rounded} ${units === "us" ? "ft" : "m"}`;
}

/** A position as it stands in the file: ["100 ft", "0 ft"]. */
export const positionText = (at: Point, units: UnitSystem) =>
  `["${lengthText(at.x, units)}", "${lengthText(at.y, units)}"]`;

/** Lines of a grid between two values, m. */
export function gridLines(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}
