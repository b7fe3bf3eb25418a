/** What the page draws on the plan itself, as paths in the drawing: grid, dimensions, straight runs, marks of parts. */
import { drawn, gridLines, lengthText, onSite, type Dimension, type PlanFrame, type Point } from "./plan";
import type { UnitSystem } from "./numbers";

const place = (value: number) => String(Number(value.toFixed(2)));
const at = (p: Point) => `${place(p.x)} ${place(p.y)}`;

/** A straight run from one place of the site to another. */
export const runPath = (frame: PlanFrame, from: Point, to: Point) =>
  `M${at(drawn(frame, from))}L${at(drawn(frame, to))}`;

/** Upright and level lines of a grid over the whole drawing; `step` in m. */
export function gridPath(frame: PlanFrame, width: number, height: number, step: number): string {
  const low = onSite(frame, { x: 0, y: height });
  const high = onSite(frame, { x: width, y: 0 });
  const upright = gridLines(low.x, high.x, step).map((x) => `M${place(drawn(frame, { x, y: 0 }).x)} 0V${height}`);
  const level = gridLines(low.y, high.y, step).map((y) => `M0 ${place(drawn(frame, { x: 0, y }).y)}H${width}`);
  return [...upright, ...level].join("");
}

/** A dimension line with a tick at its far end, and where its number stands. */
interface DimensionMark {
  path: string;
  text: string;
  x: number;
  y: number;
  anchor: "start" | "middle" | "end";
}

export function dimensionMark(frame: PlanFrame, dimension: Dimension, units: UnitSystem): DimensionMark {
  const [a, b] = [drawn(frame, dimension.from), drawn(frame, dimension.to)];
  const level = a.y === b.y;
  const tick = level ? `M${at({ x: b.x, y: b.y - 5 })}v10` : `M${at({ x: b.x - 5, y: b.y })}h10`;
  const told = { path: `M${at(a)}L${at(b)}${tick}`, text: lengthText(dimension.length, units) };
  // Where the line is too short for its number, the number stands behind its end.
  if (level) {
    const short = Math.abs(b.x - a.x) < 72;
    const right = b.x > a.x;
    if (!short) return { ...told, x: (a.x + b.x) / 2, y: b.y - 7, anchor: "middle" };
    return { ...told, x: b.x + (right ? 22 : -22), y: b.y + 4, anchor: right ? "start" : "end" };
  }
  const short = Math.abs(b.y - a.y) < 48;
  return { ...told, x: b.x + 8, y: short ? b.y + (b.y > a.y ? 34 : -26) : (a.y + b.y) / 2 + 4, anchor: "start" };
}

/** The outline of a part around its place, as the engine draws one: a tank round with its center, all else square. */
export const markPath = (kind: string) =>
  kind === "tank"
    ? "M-11 0a11 11 0 1 0 22 0a11 11 0 1 0 -22 0M-15 0H15M0 -15V15"
    : kind === "branch"
      ? "M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0"
      : "M-9 -9H9V9H-9Z";
