/** Where things stand in the two sections of a tank; lengths in m, places on the drawing in px. Nothing here knows of the
 * page. */
import type { KnownTank, Place, TankPlace } from "../documents";

/** How the drawing lies: one scale for both sections and for height and length. */
export interface Layout {
  width: number;
  height: number;
  /** px in a meter. */
  scale: number;
  /** Of the long section: px of its low end. */
  left: number;
  /** px of the lowest point inside. */
  foot: number;
  /** Middle of the section across, px. */
  middle: number;
}

const margin = { left: 40, right: 24, top: 56, foot: 44, between: 64 };
const tallest = 300;

/** Half the width of the section across, m. */
export const halfWidth = (tank: KnownTank) => (tank.section_width_m ?? tank.inside_diameter_m ?? tank.full_level_m) / 2;

const extentOf = (outline: readonly Place[]) => {
  const along = outline.map((p) => p.along_m);
  return { from: Math.min(...along), to: Math.max(...along) };
};

/** Half way along. */
export function middleOf(outline: readonly Place[]): number {
  const { from, to } = extentOf(outline);
  return (from + to) / 2;
}

/** The layout in a room of a width; null: the tank has no shape to draw. */
export function layoutOf(tank: KnownTank, width: number): Layout | null {
  if (tank.outline.length === 0 || width <= 0) return null;
  const { from, to } = extentOf(tank.outline);
  const across = 2 * halfWidth(tank);
  const room = width - margin.left - margin.between - margin.right;
  const scale = Math.min(room / (across + to - from), tallest / tank.full_level_m);
  const height = margin.top + scale * tank.full_level_m + margin.foot;
  const spare = Math.max(0, room - scale * (across + to - from));
  const middle = margin.left + spare / 3 + (scale * across) / 2;
  return {
    width,
    height,
    scale,
    left: middle + (scale * across) / 2 + margin.between + spare / 3 - scale * from,
    foot: height - margin.foot,
    middle,
  };
}

export const xOf = (layout: Layout, along: number) => layout.left + layout.scale * along;
export const yOf = (layout: Layout, level: number) => layout.foot - layout.scale * level;
export const levelAt = (layout: Layout, y: number) => (layout.foot - y) / layout.scale;

export const pathOf = (layout: Layout, outline: readonly Place[]) =>
  `${outline.map((p, i) => `${i ? "L" : "M"}${xOf(layout, p.along_m).toFixed(1)} ${yOf(layout, p.level_m).toFixed(1)}`).join("")}Z`;

/** Depth on a stick at a level; it stands from foot to head. */
export function depthAt(place: TankPlace, level: number): number {
  const rise = place.head.level_m - place.foot.level_m;
  return Math.min(place.stick_m, Math.max(0, ((level - place.foot.level_m) / rise) * place.stick_m));
}

/** The level that a stick shows a depth of. */
export const levelOf = (place: TankPlace, depth: number) =>
  place.foot.level_m + (depth / place.stick_m) * (place.head.level_m - place.foot.level_m);

/** Middle of the section across at a stick, m above the lowest point inside. */
export const middleAt = (place: TankPlace | undefined, tank: KnownTank) =>
  place ? (place.foot.level_m + place.head.level_m) / 2 : tank.full_level_m / 2;

/** Names of places so far apart that each can be read: those that stand too near share one. */
export function apart<T extends { x: number }>(marks: readonly T[], least: number): T[][] {
  const out: T[][] = [];
  for (const mark of [...marks].sort((a, b) => a.x - b.x)) {
    const last = out.at(-1);
    if (last?.[0] && mark.x - last[0].x < least) last.push(mark);
    else out.push([mark]);
  }
  return out;
}
