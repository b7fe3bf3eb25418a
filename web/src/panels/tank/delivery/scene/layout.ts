/** Where things stand in the scene of a delivery, px. It is schematic; levels are to the scale of their tank. Nothing
 * here knows of the page. */

/** A tank of the scene. */
export interface TankPlace {
  tank: string;
  x: number;
  width: number;
  /** Of its fill. */
  fill: number;
  /** Of its vapor return. */
  riser: number;
}

/** Vapor spaces: the tanks that share one, and where their vent stands. */
export interface SpacePlace {
  space: string;
  tanks: TankPlace[];
  vent: number;
}

export interface SceneLayout {
  width: number;
  height: number;
  /** Of the ground. */
  ground: number;
  /** Top and bottom inside of each tank. */
  top: number;
  foot: number;
  /** Of pipes that join vapor spaces. */
  header: number;
  /** Of the outlet of a vent. */
  outlet: number;
  tanks: TankPlace[];
  spaces: SpacePlace[];
  truck: { x: number; width: number; top: number; foot: number; outlet: number };
}

const height = 250;
const truckShare = 0.32;
const [gap, edge] = [34, 26];

/** `spaces`: names of the tanks that share one, in the order of the study; only those of `tanks` are drawn. */
export function layoutOf(width: number, tanks: readonly string[], spaces: readonly (readonly string[])[]): SceneLayout {
  const truck = { x: 10, width: Math.min(190, truckShare * width), top: 48, foot: 98, outlet: 104 };
  const from = truck.x + truck.width - 20;
  const room = width - from - edge;
  const each = Math.max(30, (room - gap * tanks.length) / Math.max(tanks.length, 1));
  const places = tanks.map((tank, i): TankPlace => {
    const x = from + i * (each + gap);
    return { tank, x, width: each, fill: x + Math.max(36, 0.3 * each), riser: x + Math.max(60, 0.6 * each) };
  });
  return {
    width,
    height,
    ground: 132,
    top: 172,
    foot: 238,
    header: 152,
    outlet: 26,
    tanks: places,
    spaces: spaces.map((all) => {
      const own = places.filter((p) => all.includes(p.tank));
      const last = own.at(-1);
      return { space: all.join(", "), tanks: own, vent: last ? last.x + last.width + gap / 2 : width - edge };
    }),
    truck,
  };
}

/** Where liquid stands in a tank that is `share` of its height full of it. */
export const surfaceOf = (layout: SceneLayout, share: number) =>
  layout.foot - Math.min(1, Math.max(0, share)) * (layout.foot - layout.top);

/** The parts of the truck's vessel: where each compartment begins and how wide it is. */
export function compartmentsOf(layout: SceneLayout, brought: readonly number[]) {
  const { x, width } = layout.truck;
  const [from, room] = [x + 36, width - 36];
  const all = brought.reduce((sum, b) => sum + b, 0);
  let left = from;
  return brought.map((b) => {
    const place = { x: left, width: (room * b) / all };
    left += place.width;
    return place;
  });
}

/** The delivery hose: from the truck's outlet over the ground to a fill. */
export function hosePath({ truck, ground }: SceneLayout, fill: number): string {
  const from = truck.x + truck.width - 14;
  const sag = ground - 8;
  const bend = Math.max(from + 4, fill - 26);
  return [
    `M${from} ${truck.outlet}`,
    `C${from} ${sag} ${from + 12} ${sag} ${Math.min(bend, from + 24)} ${sag}`,
    `L${bend} ${sag}`,
    `C${fill - 6} ${sag} ${fill - 14} ${truck.outlet} ${fill} ${truck.outlet}`,
    `V${ground}`,
  ].join("");
}

/** The vapor hose: from a riser over to the top of the truck. */
export function vaporPath({ truck, ground }: SceneLayout, riser: number): string {
  const to = truck.x + 0.72 * truck.width;
  return `M${riser} ${ground - 12}C${riser} ${truck.top - 34} ${to + 40} ${truck.top - 26} ${to} ${truck.top}`;
}
