/** A shear valve in section: lower body in the sump, groove at island level, upper body on the dispenser's pipe. */
import { drops, flowing, fountain, hose, spring, upright } from "./pieces";
import { between, on, some } from "./picture";
import { box, disc, moved, shape, svg, turned, turnedPlace, way, type Point } from "./ink";

/** How its parts stand, each a share. */
export interface ShearState {
  /** The top is carried away. */
  hit: number;
  /** Gone at the groove. */
  broken: number;
  lower: number;
  upper: number;
  flow: number;
  escape: number;
  /** The trip arm has turned. */
  tripped: number;
  /** The link is in two. */
  parted: number;
  anchored: number;
  /** The valve has a chamber around its groove that gathers what seeps from a crack: how full it is. */
  chamber?: number;
}

export const middle = 320;
export const groove = 200;
const shaft: Point = [370, 262];
const armEnd: Point = [416, 176];

const mirrored = (points: readonly Point[]) => points.map(([x, y]): Point => [2 * middle - x, y]);
const closed = (points: readonly Point[]) => `${way(...points)}Z`;

// The inner and the outer side of the left walls, from the groove on.
const lowerInner: Point[] = [
  [300, 200],
  [300, 222],
  [264, 246],
  [264, 316],
  [300, 338],
  [300, 404],
];
const lowerOuter: Point[] = [
  [288, 404],
  [288, 344],
  [250, 322],
  [250, 240],
  [286, 216],
  [286, 208],
  [294, 200],
];
const upperInner: Point[] = [
  [300, 200],
  [300, 176],
  [264, 152],
  [264, 102],
  [300, 80],
  [300, 30],
];
const upperOuter: Point[] = [
  [288, 30],
  [288, 74],
  [250, 96],
  [250, 158],
  [286, 182],
  [286, 192],
  [294, 200],
];

const body = (inner: Point[], outer: Point[]) => {
  const wall = [...inner, ...outer];
  return (
    shape("hollow", closed([...inner, ...mirrored(inner).reverse()])) +
    shape("liquid", closed([...inner, ...mirrored(inner).reverse()])) +
    shape("metal", closed(wall)) +
    shape("metal2", closed(mirrored(wall)))
  );
};

/** The web that guides a stem. */
const guide = (y: number) => shape("plain", box(264, y, 112, 6)) + shape("plain", box(middle - 9, y - 5, 18, 16));

/** A poppet whose cone points to its seat; `up`: 1 upward, -1 downward. */
const poppet = (y: number, up: number) =>
  shape(
    "moves",
    svg`M${middle - 24} ${y}H${middle + 24}L${middle + 40} ${y + up * 11}v${up * 7}H${middle - 40}v${-up * 7}Z`,
  ) + shape("moves", box(middle - 4, up > 0 ? y + 17 : y - 87, 8, 70));

export const lowerPoppetAt = (shut: number): number => between(276, 225, shut);
export const upperPoppetAt = (shut: number): number => between(139, 173, shut);

function lowerBody(state: ShearState): string {
  const y = lowerPoppetAt(state.lower);
  return body(lowerInner, lowerOuter) + spring([middle, y + 19], [middle, 322], 34, 4) + guide(324) + poppet(y, 1);
}

function upperBody(state: ShearState): string {
  const y = upperPoppetAt(state.upper);
  return body(upperInner, upperOuter) + spring([middle, y - 19], [middle, 98], 34, 3) + guide(92) + poppet(y, -1);
}

const bar = (from: Point, to: Point, width: number) => hose(way(from, to), width + 3, "bar");

/** Where a label of the trip arm points. */
export const armPlace = (tripped: number): Point => turnedPlace(50 * tripped, shaft, [398, 210]);

/** Trip arm and lever on one shaft; tripped, the lever lets the lower poppet go. */
const arm = (tripped: number) =>
  turned(
    50 * tripped,
    shaft,
    bar(shaft, armEnd, 9) + bar(shaft, [341, 271], 7) + shape("moves", disc(armEnd[0], armEnd[1], 6)),
  ) +
  shape("bore", disc(shaft[0], shaft[1], 7)) +
  shape("pin", disc(shaft[0], shaft[1], 2.5));

const lug: Point = [350, 166];
const half: Point = [383, 171];

/** The fusible link between the upper body and the trip arm: two straps that solder holds. */
function link(state: ShearState): string {
  const strap = (from: Point, to: Point) => svg`<path class="strap" d="${way(from, to)}"/>`;
  if (on(state.parted)) {
    const loose = turned(50 * state.tripped, shaft, turned(40, armEnd, strap(armEnd, [388, 172])));
    return loose + turned(48, lug, strap(lug, [378, 170])) + shape("pin", disc(lug[0], lug[1], 4));
  }
  const lifted = on(state.tripped) ? -26 : 0;
  const whole =
    strap(lug, [390, 172]) +
    strap([376, 170], armEnd) +
    turned(9, half, shape("solder", box(half[0] - 8, half[1] - 4.5, 16, 9)));
  return turned(lifted, lug, whole) + shape("pin", disc(lug[0], lug[1], 4));
}

/** The chamber about the groove, and its pin that lifts the link off the arm. */
function crackChamber(fill: number, tripped: number): string {
  const side = (x: number) =>
    shape("bore", box(x, 186, 22, 28)) +
    shape("liquid", box(x, 214 - 28 * fill, 22, 28 * fill)) +
    shape("line", box(x, 186, 22, 28));
  const lift = 12 * tripped;
  return (
    side(264) +
    side(354) +
    shape("bore", box(376, 192, 18, 22)) +
    shape("moves", svg`M378 ${204 - lift}h14v6h-4.500v${lift + 2}h-5v${-lift - 2}h-4.500Z`) +
    shape("moves", box(383, 182 - lift, 4, 22))
  );
}

/** The way of the flow past both poppets on one side; `side`: -1 left, 1 right. */
function streams(state: ShearState, dash: number): string {
  const way = (side: number, end: number): Point[] =>
    (
      [
        [9, 404],
        [9, 346],
        [46, 312],
        [46, 252],
        [10, 222],
        [10, 178],
        [46, 144],
        [46, 110],
        [9, 78],
        [9, 40],
      ] as const
    )
      .map(([dx, y]): Point => [middle + side * dx, y])
      .slice(0, end);
  const end = on(state.broken) ? 5 : 10;
  return flowing(state.flow, dash, way(-1, end)) + flowing(state.flow, dash, way(1, end));
}

/** How far the top has gone and turned: it bends, and once it is broken it goes. */
function stand(state: { hit: number; broken: number; anchored?: number }): { x: number; y: number; angle: number } {
  if (on(state.broken)) {
    const gone = Math.max(0.4, state.hit);
    return { x: 104 * gone, y: -8 * gone, angle: 20 * gone };
  }
  return { x: 0, y: 0, angle: on(state.anchored ?? 1) ? 5 * state.hit : 0 };
}

/** Where a place of the upper body lies now. */
export function topPlace(state: { hit: number; broken: number; anchored?: number }, place: Point): Point {
  const by = stand(state);
  const [x, y] = turnedPlace(by.angle, [middle, groove], place);
  return [x + by.x, y + by.y];
}
function placed(state: ShearState, body: string): string {
  const by = stand(state);
  return moved(by.x, by.y, turned(by.angle, [middle, groove], body));
}

/** The foot of a valve that is not anchored, about which it leans, and by how much. */
const foot: Point = [middle, 420];
const leanOf = (hit: number) => 13 * hit;
export const leanPlace = (hit: number, place: Point): Point => turnedPlace(leanOf(hit), foot, place);

/** The whole valve. Not anchored, it goes with what hits it, and the riser tears below it. */
export function shearValve(state: ShearState, dash: number): string {
  const loose = !on(state.anchored) && some(state.hit);
  const tripped = Math.max(state.tripped, state.lower);
  const low =
    lowerBody(state) + (state.chamber === undefined ? "" : crackChamber(state.chamber, tripped)) + arm(tripped);
  const high = upperBody(state) + link({ ...state, tripped });
  const whole = low + placed(state, high) + (loose ? "" : streams(state, dash));
  if (loose) {
    return (
      upright(middle, 386, 420, 40, 12) +
      turned(leanOf(state.hit), foot, whole) +
      fountain(state.escape, dash, [middle - 24, 390], 70)
    );
  }
  const spill = on(state.broken) ? fountain(state.escape, dash, [middle, groove - 2], 170) : "";
  const drain =
    on(state.broken) && !on(state.upper) ? drops(state.hit, dash, [topPlace(state, [middle, groove])[0], 214], 60) : "";
  return whole + spill + drain;
}
