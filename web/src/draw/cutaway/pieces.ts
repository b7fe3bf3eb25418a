/** Pieces that many cutaways share: pipes, springs, flow, drops, gauges, ground. */
import { between, some } from "./picture";
import { box, curve, disc, filled, inside, round, shape, svg, turned, way, type Point } from "./ink";

/** The two walls of an upright pipe, cut; `bore` about `x`. */
export const upright = (x: number, top: number, foot: number, bore: number, wall = 6, kind = "metal") =>
  shape(kind, box(x - bore / 2 - wall, top, wall, foot - top)) + shape(kind, box(x + bore / 2, top, wall, foot - top));
/** The two walls of a level pipe, cut; `bore` about `y`. */
export const level = (y: number, left: number, right: number, bore: number, wall = 6, kind = "metal") =>
  shape(kind, box(left, y - bore / 2 - wall, right - left, wall)) +
  shape(kind, box(left, y + bore / 2, right - left, wall));

/** A pipe, hose or bar seen from outside along a path, with an edge; `kind`: `hose`, `full`, `gas`, `bar`. */
export const hose = (path: string, width: number, kind = "hose") =>
  shape(`${kind}-edge`, path, svg` stroke-width="${width}"`) +
  shape(`${kind}-body`, path, svg` stroke-width="${width - 3}"`);

/** A helical spring between two places, as a section draws it. */
export function spring([x1, y1]: Point, [x2, y2]: Point, width: number, coils = 5): string {
  const [long, turns] = [Math.hypot(x2 - x1, y2 - y1) || 1, 2 * coils];
  const [ax, ay] = [((y2 - y1) / long) * (width / 2), ((x1 - x2) / long) * (width / 2)];
  const points = Array.from({ length: turns + 1 }, (_, i): Point => {
    const side = i === 0 || i === turns ? 0 : i % 2 ? 1 : -1;
    return [between(x1, x2, i / turns) + side * ax, between(y1, y2, i / turns) + side * ay];
  });
  return shape("spring", way(...points));
}

/** A head of an arrow at the end of a way. */
function head(points: readonly Point[], kind: string, size = 9): string {
  const [from, to] = [points.at(-2), points.at(-1)];
  if (!from || !to) return "";
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return turned(angle, to, shape(kind, svg`M${to[0] + size} ${to[1]}l${-1.7 * size} ${-0.7 * size}v${1.4 * size}Z`));
}

export const arrow = (kind: string, ...points: Point[]) => shape(kind, way(...points)) + head(points, `${kind}-head`);

/** Dashes along a way that move, as wide as the share of the flow; none: nothing. `kind`: `fuel-flow`, `vapor-flow`,
 * `air-flow`, `escape`. */
export const stream = (share: number, dash: number, points: readonly Point[], kind = "fuel-flow") =>
  some(share)
    ? shape(kind, way(...points), svg` stroke-width="${between(2.2, 5, share)}" stroke-dashoffset="${-dash % 24}"`)
    : "";

/** The same with an arrow at its end. */
export const flowing = (share: number, dash: number, points: readonly Point[], kind = "fuel-flow") =>
  some(share) ? stream(share, dash, points, kind) + head(points, `${kind}-head`, between(7, 10, share)) : "";

/** What escapes upward from a place, as high as its share. */
export function fountain(share: number, dash: number, [x, y]: Point, high: number): string {
  if (!some(share)) return "";
  const top = between(0.25, 1, share) * high;
  const jet = (side: number) =>
    way(
      ...curve(
        [x + side * 4, y],
        [x + side * 8, y - top * 1.25],
        [x + side * 26, y - top * 1.2],
        [x + side * 38, y - top * 0.35],
      ),
    );
  const offset = svg` stroke-width="${between(2.5, 5, share)}" stroke-dashoffset="${-dash % 24}"`;
  return [-1.8, -0.7, 0.7, 1.8].map((side) => shape("escape", jet(side), offset)).join("");
}

/** Drops that fall from a place through a height. */
export function drops(share: number, dash: number, [x, y]: Point, high: number, kind = "drop"): string {
  if (!some(share)) return "";
  const gap = between(44, 22, share);
  const first = ((dash % gap) + gap) % gap;
  const size = between(3, 5, share);
  const [wide, tall] = [1.6 * size, 3.2 * size];
  const one = (at: number) =>
    svg`M${x} ${y + at - 2 * size}q${wide} ${0.75 * tall} 0 ${tall}q${-wide} ${-0.25 * tall} 0 ${-tall}Z`;
  return Array.from({ length: Math.max(1, Math.floor((high - first) / gap) + 1) }, (_, i) =>
    shape(kind, one(Math.min(high, first + i * gap))),
  ).join("");
}

/** A dial with its needle at a share of the scale; null: without one. */
export function dial([x, y]: Point, r: number, share: number | null): string {
  const tick = (part: number) => turned(between(-120, 120, part), [x, y], shape("line", svg`M${x} ${y - r}v6`));
  return (
    shape("dial", disc(x, y, r)) +
    [0, 0.25, 0.5, 0.75, 1].map(tick).join("") +
    (share === null
      ? ""
      : turned(between(-120, 120, share), [x, y], shape("needle", svg`M${x} ${y + 5}V${y - r + 6}`))) +
    shape("pin", disc(x, y, 3))
  );
}

/** The ground line: thick, with slanting ticks under it. */
export function ground(y: number, left: number, right: number): string {
  const ticks = Array.from(
    { length: Math.floor((right - left) / 16) },
    (_, i) => svg`M${left + 14 + i * 16} ${y + 2}l-8 9`,
  );
  return shape("ground", svg`M${left} ${y}H${right}`) + shape("line", ticks.join(""));
}

export const slab = (x: number, y: number, width: number, height: number) =>
  shape("concrete", box(x, y, width, height));

/** A round seal, cut. */
export const seal = (x: number, y: number, r = 5) => shape("seal", disc(x, y, r));

/** A dimension of height from a base up to y, at x. */
export const height = (x: number, base: number, y: number) =>
  shape("leader", svg`M${x - 5} ${base}h10M${x - 5} ${y}h10M${x} ${base}V${y}`);

/** A pipe or hose from outside along points. */
export const hoseOf = (points: readonly Point[], width: number, kind = "hose") => hose(way(...points), width, kind);

/** Earth below the ground line. */
export const earth = (y: number, left = 0, right = 640) =>
  shape("earth", box(left, y, right - left, 420 - y)) + ground(y, left, right);

/** A lying tank along its length: shell, fuel up to a share of its height, vapor above. */
export interface Tank {
  x: number;
  y: number;
  width: number;
  height: number;
}
export const tankLevel = (tank: Tank, share: number) => tank.y + tank.height * (1 - share);
export function lyingTank(tank: Tank, share: number, more = ""): string {
  const shell = round(tank.x, tank.y, tank.width, tank.height, Math.min(26, tank.height / 3));
  const y = tankLevel(tank, share);
  return (
    shape("hollow", shell) +
    inside("tank-vapor", shell, shape("vapor", box(tank.x, tank.y, tank.width, y - tank.y))) +
    filled("tank-fuel", shell, y) +
    inside("tank-more", shell, more) +
    shape("shell", shell)
  );
}
