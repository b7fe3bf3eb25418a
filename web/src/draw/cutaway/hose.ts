import { arrow, drops, flowing, hoseOf, seal } from "./pieces";
import { between, on, percent, picture, shutWord, some, told, type Has } from "./picture";
import { box, curve, disc, inside, label, moved, note, round, shape, svg, turned, type Point } from "./ink";
import { breakawayValve, hosePlace } from "./breakaway_valve";

const degrees = (share: number) => `${Math.round(90 * share)}°`;
type Hung = "pull" | "angle" | "parted" | "shut" | "escape";
const partedWords = (v: Record<Hung, number>, has: Has<Hung>) =>
  told(
    has("pull") && `pulled with ${percent(v.pull)} of what parts it`,
    has("angle") && `${degrees(v.angle)} off its axis`,
    has("parted") && (on(v.parted) ? "the breakaway has parted" : "the breakaway holds"),
    has("parted", "shut") && on(v.parted) && (v.shut > 0.95 ? "both ends are shut" : "its ends are not shut"),
    some(v.escape) && "fuel escapes",
  );
const rest = { pull: 0, angle: 0, parted: 0, shut: 0, escape: 0 };

export const whipHose = picture(rest, partedWords, (v, dash, has) => {
  const turn = (Math.PI / 2) * (1 - v.angle);
  const axis: Point = [Math.cos(turn), Math.sin(turn)];
  const along = (from: Point, length: number): Point => [from[0] + axis[0] * length, from[1] + axis[1] * length];
  const start: Point = [between(286, 236, v.angle), between(176, 96, v.angle)];
  const gone = 64 * v.parted;
  const end = along(start, 84);
  const foot: Point = [end[0] + 46 * v.angle, 420];
  const whip = curve([166, 96], [between(246, 190, v.angle), 96], along(start, -50 * (1 - v.angle) - 6), start);
  const curb = curve(end, along(end, between(20, 60, v.angle)), [foot[0], between(360, 170, v.angle)], foot);
  const half = (from: number, kind: string) =>
    turned(
      (turn * 180) / Math.PI,
      start,
      shape(kind, round(start[0] + from, start[1] - 17, 41, 34, 4)) +
        shape("line", box(start[0] + from + 8, start[1] - 17, 5, 34)),
    );
  const middle = along(start, 42);
  return (
    shape("plain", box(0, 20, 130, 400)) +
    shape("line", "M20 60H110V130H20Z") +
    shape("metal", box(122, 74, 16, 44)) +
    shape("plain", box(138, 82, 28, 28)) +
    hoseOf(whip, 22) +
    moved(0, gone, hoseOf(curb, 22) + half(43, "moves")) +
    half(0, "moves") +
    (on(v.parted) ? drops(v.escape, dash, [middle[0], middle[1] + 22], 90) : "") +
    shape(
      "center",
      svg`M${along(start, -60)[0]} ${along(start, -60)[1]}L${along(start, 170)[0]} ${along(start, 170)[1]}`,
    ) +
    shape("hidden", svg`M${end[0]} ${end[1]}V${end[1] + 90}`) +
    (some(v.pull) ? arrow("pull", [foot[0] + 44, 270], [foot[0] + 44, 276 + 76 * v.pull]) : "") +
    note("dispenser", 64, 260) +
    label("whip hose", 300, 40, whip[5]!, has("angle") && (some(v.angle) && v.angle > 0.5 ? "straight" : "bends")) +
    label("breakaway", 628, 150, along(start, 20), has("parted") && (on(v.parted) ? "parted" : "holds"), "right") +
    label(
      "angle",
      628,
      230,
      [end[0] + (v.angle > 0.1 ? 8 : 2), end[1] + 44],
      has("angle") && degrees(v.angle),
      "right",
    ) +
    label("curb hose", 628, 396, [foot[0] - 2, 392], "", "right") +
    (some(v.pull) ? label("pull", 628, 310, [foot[0] + 48, 280], has("pull") && percent(v.pull), "right") : "") +
    (on(v.parted) && has("shut")
      ? note(v.shut > 0.95 ? "both ends shut" : "ends open", 628, 40, "end", v.shut > 0.95 ? "state" : "bad")
      : "")
  );
});

export const breakaway = picture(rest, partedWords, (v, dash, has) => {
  const from: Point = [336, 348];
  const long = 20 + 70 * v.pull;
  const angle = (Math.PI / 2) * v.angle;
  return (
    breakawayValve(v, dash) +
    (some(v.pull) || some(v.angle)
      ? arrow("pull", from, [from[0] + long * Math.cos(angle), from[1] + long * Math.sin(angle) * 0.6]) +
        shape("mark-line", svg`M${from[0]} ${from[1]}h104`)
      : "") +
    label("dispenser's half", 12, 60, [230, 158]) +
    label(
      "hose's half",
      628,
      60,
      hosePlace(v, [408, 158]),
      has("parted") && (on(v.parted) ? "parted" : "joined"),
      "right",
    ) +
    label("poppet", 12, 376, [246 + 30 * v.shut, 240], has("shut") && shutWord(v.shut)) +
    label("spring", 12, 330, [224, 222]) +
    label(on(v.parted) ? "ring broken" : "ring", 250, 60, [326, 166]) +
    label("seat", 130, 390, [284, 228]) +
    (some(v.pull) ? label("pull", 250, 340, [from[0] - 4, from[1]], has("pull") && percent(v.pull)) : "") +
    (some(v.angle) ? note(`${degrees(v.angle)} off the axis`, 628, 406, "end", "state") : "") +
    (some(v.escape) ? note("fuel escapes", 628, 130, "end", "bad") : "")
  );
});

/** The braid under the cover: two sets of threads that a pull lays flatter and a turn shifts. */
function braid(pull: number, turn: number): string {
  const lean = between(44, 74, pull);
  const shift = 26 * turn;
  const set = (side: number, by: number) =>
    Array.from({ length: 22 }, (_, i) => svg`M${i * 16 - 20 + by} ${side > 0 ? 142 : 200}l${lean} ${side * 58}`).join(
      "",
    );
  return inside("braid", box(92, 146, 140, 54), shape("line", set(1, shift)) + shape("thread", set(-1, -shift)));
}

export const curbHose = picture(
  { pull: 0, turn: 0, flow: 0 },
  (v, has) =>
    told(
      has("flow") && (some(v.flow) ? "fuel flows in the hose" : "the hose is still"),
      has("pull") && some(v.pull) && `pulled, ${percent(v.pull)}`,
      has("turn") && some(v.turn) && `twisted, ${percent(v.turn)}`,
    ),
  (v, dash, has) => {
    const axis = 200;
    const below = (x: number, to: number, top: number, thick: number, kind: string) =>
      shape(kind, box(x, axis + top, to - x, thick));
    return (
      shape("plain", box(0, axis - 44, 92, 44)) +
      shape("hollow", box(92, axis - 54, 140, 54)) +
      braid(v.pull, v.turn) +
      shape("line", box(92, axis - 54, 140, 54)) +
      shape("wire-mark", svg`M92 ${axis - 30}q18 -18 36 0t36 0t36 0t32 0`) +
      shape("plain", box(232, axis - 64, 180, 64)) +
      shape("plain", box(392, axis - 74, 108, 74)) +
      shape("line", svg`M412 ${axis - 74}V${axis}M446 ${axis - 74}V${axis}M480 ${axis - 74}V${axis}`) +
      shape("plain", box(500, axis - 58, 64, 58)) +
      shape("line", svg`M500 ${axis - 30}H564`) +
      shape("plain", box(564, axis - 40, 76, 40)) +
      shape("liquid", box(0, axis, 640, 30)) +
      below(0, 488, 30, 14, "rubber") +
      below(92, 488, 44, 8, "metal") +
      below(232, 488, 52, 12, "rubber") +
      shape(
        "metal2",
        svg`M392 ${axis + 64}H488V${axis + 30}H400l8 -8H640V${axis + 40}H564V${axis + 58}H500V${axis + 74}H392Z`,
      ) +
      shape("center", svg`M0 ${axis}H640`) +
      flowing(v.flow, dash, [
        [10, axis + 12],
        [618, axis + 12],
      ]) +
      (some(v.pull)
        ? arrow("pull", [510, 330], [518 + 84 * v.pull, 330]) +
          label("pull", 400, 330, [506, 330], has("pull") && percent(v.pull))
        : "") +
      (some(v.turn)
        ? arrow("pull", ...turnArc([560, 84], 34, v.turn)) + note(`turned ${percent(v.turn)}`, 628, 30, "end", "state")
        : "") +
      label("inner tube", 12, 100, [46, 162]) +
      label("braid", 124, 100, [140, 152], has("pull") && (some(v.pull) ? "stretched" : "at rest")) +
      label("bonding wire", 180, 40, [220, axis - 30]) +
      label("cover", 290, 100, [316, 140]) +
      label("ferrule", 400, 100, [436, 130]) +
      label("bore", 12, 330, [60, axis + 22], has("flow") && (some(v.flow) ? "fuel flows" : "still")) +
      note("section below, outside above", 320, 400)
    );
  },
);

/** Points along a turn about a place, from below its left on. */
function turnArc([x, y]: Point, r: number, share: number): Point[] {
  return Array.from({ length: 16 }, (_, i): Point => {
    const a = Math.PI * (0.75 + (1.5 * share * i) / 15 + 0.1 * (i / 15));
    return [x + r * Math.cos(a), y + r * Math.sin(a) * 0.9];
  });
}

export const swivel = picture(
  { pull: 0, turn: 0, flow: 0 },
  (v, has) =>
    told(
      has("flow") && (some(v.flow) ? "fuel flows through the swivel" : "nothing flows"),
      has("turn") && `the nozzle's side has turned ${Math.round(360 * v.turn)}°`,
      has("pull") && some(v.pull) && `pulled, ${percent(v.pull)}`,
    ),
  (v, dash, has) => {
    const y = 176;
    const pair = (draw: (side: number) => string) => draw(-1) + draw(1);
    return (
      shape("hollow", box(80, y - 24, 480, 48)) +
      shape("liquid", box(0, y - 24, 640, 48)) +
      pair((s) => shape("rubber", s < 0 ? box(0, y - 46, 110, 22) : box(0, y + 24, 110, 22))) +
      pair((s) =>
        shape(
          "metal",
          svg`M96 ${y + s * 24}H226V${y + s * 46}H404V${y + s * 70}H206L186 ${y + s * 50}H150V${y + s * 36}H96Z`,
        ),
      ) +
      pair((s) =>
        shape("moves-cut", svg`M230 ${y + s * 24}H560V${y + s * 40}H506V${y + s * 54}H440V${y + s * 45}H230Z`),
      ) +
      pair((s) => shape("bore", disc(330, y + s * 46, 8))) +
      pair((s) => shape("bore", disc(372, y + s * 46, 8))) +
      pair((s) => seal(262, y + s * 45, 5)) +
      pair((s) => seal(288, y + s * 45, 5)) +
      shape("center", svg`M0 ${y}H640`) +
      flowing(v.flow, dash, [
        [10, y],
        [618, y],
      ]) +
      shape("bore", disc(500, 336, 52)) +
      shape("center", "M436 336H564M500 272V400") +
      turned(360 * v.turn, [500, 336], shape("moves", "M494 336V290h12V336Z") + shape("pin", disc(500, 336, 6))) +
      (some(v.pull) ? arrow("pull", [524, 78], [532 + 80 * v.pull, 78]) : "") +
      label("hose's side", 12, 70, [196, 118]) +
      label("nozzle's side", 628, 250, [520, 210], has("turn") && `${Math.round(360 * v.turn)}°`, "right") +
      label("balls", 300, 70, [330, 124]) +
      label("seals", 180, 330, [262, 228]) +
      label("bore", 12, 330, [130, 196], has("flow") && (some(v.flow) ? "fuel flows" : "still")) +
      (some(v.pull) ? label("pull", 420, 60, [520, 78], has("pull") && percent(v.pull)) : "") +
      note("seen along the axis", 500, 410)
    );
  },
);
