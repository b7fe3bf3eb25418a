/** A breakaway in section: two halves, each with a poppet that the other half holds open. */
import { drops, fountain, seal, spring } from "./pieces";
import { between, on, some } from "./picture";
import { box, moved, shape, svg, turned, turnedPlace, way, type Point } from "./ink";

const axis = 210;
const joint = 322;

type Side = [inner: Point[], outer: Point[]];
// Upper walls; y is the distance from the axis.
const dispenserSide: Side = [
  [
    [110, 18],
    [184, 18],
    [204, 42],
    [268, 42],
    [292, 20],
    [300, 20],
    [300, 32],
    [344, 32],
  ],
  [
    [344, 46],
    [300, 46],
    [282, 56],
    [194, 56],
    [172, 30],
    [110, 30],
  ],
];
const hoseSide: Side = [
  [
    [300, 20],
    [348, 20],
    [372, 42],
    [436, 42],
    [456, 18],
    [530, 18],
  ],
  [
    [530, 30],
    [468, 30],
    [446, 56],
    [362, 56],
    [350, 40],
    [346, 30],
    [300, 30],
  ],
];

const wall = ([inner, outer]: Side, side: number) =>
  `${way(...[...inner, ...outer].map(([x, y]): Point => [x, axis + side * y]))}Z`;
const bore = ([inner]: Side, to: number) => {
  const edge = inner.slice(0, to);
  return `${way(...edge.map(([x, y]): Point => [x, axis - y]), ...edge.map(([x, y]): Point => [x, axis + y]).reverse())}Z`;
};

/** `f`: the front of its cone; `toward`: 1 when it shuts to the right. */
const poppet = (f: number, toward: number, stem: number) =>
  shape(
    "moves",
    svg`M${f} ${axis - 24}V${axis + 24}L${f - toward * 13} ${axis + 37}h${-toward * 7}V${axis - 37}h${toward * 7}Z`,
  ) + shape("moves", toward > 0 ? box(f, axis - 4, stem, 8) : box(f - stem, axis - 4, stem, 8));

const hoseEnd = (x: number, width: number) =>
  shape("rubber", box(x, axis - 42, width, 24)) +
  shape("rubber", box(x, axis + 18, width, 24)) +
  shape("liquid", box(x, axis - 18, width, 36));

export interface BreakawayState {
  angle: number;
  parted: number;
  shut: number;
  escape: number;
  pull: number;
}

/** How far the side of the hose has gone. */
export function goneBy(v: { angle: number; parted: number }): Point {
  const angle = (Math.PI / 2) * v.angle * 0.7;
  return [92 * v.parted * Math.max(0.5, Math.cos(angle)), 70 * v.parted * Math.sin(angle)];
}

/** Where a place of the hose's half lies now. */
export function hosePlace(v: { angle: number; parted: number }, place: Point): Point {
  const [gone, [x, y]] = [goneBy(v), turnedPlace(tiltOf(v), [joint, axis], place)];
  return [x + gone[0], y + gone[1]];
}
const tiltOf = (v: { angle: number; parted: number }) => 12 * v.angle * v.parted;

export function breakawayValve(v: BreakawayState, dash: number): string {
  const [left, right] = [between(258, 288, v.shut), between(382, 352, v.shut)];
  const apart = some(v.parted);
  const ring = (x: number) => [-1, 1].map((side) => shape("moves", box(x, axis + side * 39 - 8, 9, 16))).join("");
  const stay =
    hoseEnd(0, 112) +
    shape("hollow", bore(dispenserSide, 6)) +
    shape("liquid", bore(dispenserSide, 6)) +
    shape("metal", wall(dispenserSide, -1)) +
    shape("metal", wall(dispenserSide, 1)) +
    spring([212, axis], [left - 22, axis], 34, 4) +
    shape("plain", box(206, axis - 42, 6, 84)) +
    poppet(left, 1, 42);
  const go =
    hoseEnd(528, 112) +
    shape("hollow", bore(hoseSide, 6)) +
    shape("liquid", bore(hoseSide, 6)) +
    shape("metal2", wall(hoseSide, -1)) +
    shape("metal2", wall(hoseSide, 1)) +
    seal(312, axis - 30, 4) +
    seal(312, axis + 30, 4) +
    spring([428, axis], [right + 22, axis], 34, 4) +
    shape("plain", box(428, axis - 42, 6, 84)) +
    poppet(right, -1, 82);
  const [x, y] = goneBy(v);
  const spill = apart
    ? drops(v.escape, dash, [joint, axis + 62], 50) +
      fountain(v.escape, dash, [joint + 4, axis - 20], 90) +
      drops(v.escape, dash, [joint + x - 14, axis + y + 56], 50)
    : "";
  return (
    shape("center", svg`M0 ${axis}H640`) +
    stay +
    moved(x, y, turned(tiltOf(v), [joint, axis], go)) +
    (on(v.parted) ? "" : ring(joint)) +
    spill
  );
}
