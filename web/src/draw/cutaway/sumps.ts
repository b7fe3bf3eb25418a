import { drops, earth, flowing, ground, hoseOf, slab } from "./pieces";
import { between, on, percent, picture, some, told, type Has } from "./picture";
import { box, curve, filled, label, note, round, shape, stacked, svg, type Point } from "./ink";

const [left, right] = [176, 464];

interface SumpState {
  liquid: number;
  sensor_height: number;
  seal_height: number;
  sensor: number;
  leak: number;
}

type Told = keyof SumpState;

const words = (v: SumpState, has: Has<Told>) => [
  has("liquid") && (some(v.liquid) ? `sump ${percent(v.liquid)} of its depth full` : "sump dry"),
  has("sensor") && (on(v.sensor) ? "the sensor calls" : "the sensor is quiet"),
  has("liquid", "sensor", "sensor_height") &&
    !on(v.sensor) &&
    v.liquid >= v.sensor_height &&
    "though liquid stands at it",
  has("leak") && (some(v.leak) ? "a joint leaks" : "nothing leaks"),
  has("liquid", "seal_height") && some(v.liquid) && v.liquid >= v.seal_height && "liquid stands at the entry seals",
];

/** Walls, liquid, and a sensor on its rod; `top` and `floor` of the sump. */
function basin(
  v: SumpState,
  top: number,
  floor: number,
): { back: string; front: string; at: (share: number) => number } {
  const at = (share: number) => between(floor, top, share);
  const y = Math.min(at(v.sensor_height), floor - 9);
  return {
    at,
    back:
      shape("hollow", box(left, top - 4, right - left, floor - top + 4)) +
      (some(v.liquid) ? filled("sump-fuel", box(left, top, right - left, floor - top), at(v.liquid)) : ""),
    front:
      shape("rubber", svg`M${left - 10} ${top}h10V${floor}H${right}V${top}h10V${floor + 10}H${left - 10}Z`) +
      shape("wire", svg`M206 ${y - 8}V${top + 6}`) +
      shape(on(v.sensor) ? "on" : "off", round(195, y - 9, 22, 18, 4)) +
      shape("mark-line", svg`M${left + 2} ${y}H194M218 ${y}H262`),
  };
}

/** A pipe through a wall with its seal. */
const entry = (x: number, y: number) =>
  shape("seal", box(x - 12, y - 17, 24, 8)) + shape("seal", box(x - 12, y + 9, 24, 8));
const pipe = (from: Point, to: Point) => hoseOf([from, to], 18, "full");

const sensorY = (v: SumpState, at: (share: number) => number) => at(v.sensor_height) - 12;

function labels(v: SumpState, has: Has<Told>, at: (share: number) => number, sensorAt: number): string {
  const [sealY, liquidY] = stacked([Math.max(136, at(v.seal_height) - 40), 352]) as [number, number];
  const under = v.liquid >= v.seal_height && some(v.liquid);
  return (
    label(
      "sensor",
      12,
      sensorAt,
      [196, Math.min(at(v.sensor_height), at(0) - 9)],
      has("sensor") && (on(v.sensor) ? "calls" : "quiet"),
    ) +
    label(
      "entry seal",
      628,
      sealY,
      [right + 6, at(v.seal_height) - 13],
      has("liquid", "seal_height") && (under ? "under liquid" : "dry"),
      "right",
    ) +
    label(
      "liquid",
      628,
      liquidY,
      [440, Math.max(Math.min(at(v.liquid) + 8, at(0) - 3), Math.min(at(0) - 3, liquidY - 5))],
      has("liquid") && (some(v.liquid) ? percent(v.liquid) : "none"),
      "right",
    )
  );
}

export const tankSump = picture(
  { liquid: 0, sensor_height: 0.12, seal_height: 0.35, sensor: 0, leak: 0, brim: 0 },
  (v, has) => told(...words(v, has), has("brim") && on(v.brim) && "it runs over the brim"),
  (v, dash, has) => {
    const basinOf = basin(v, 66, 350);
    const y = basinOf.at(v.seal_height);
    const surface = basinOf.at(v.liquid);
    const [headY, sensorAt] = stacked([Math.max(112, y - 60), sensorY(v, basinOf.at)]) as [number, number];
    return (
      earth(60) +
      basinOf.back +
      shape("plain", box(left - 14, 52, right - left + 28, 8)) +
      shape("shell", "M60 420V388Q60 372 84 372H556Q580 372 580 388V420") +
      shape("plain", box(300, y, 20, 376 - y)) +
      shape("plain", round(280, y - 34, 60, 56, 5)) +
      shape("plain", box(292, y - 46, 36, 12)) +
      pipe([341, y], [640, y]) +
      shape("plain", box(384, y - 14, 26, 28)) +
      basinOf.front +
      entry(right + 5, y) +
      drops(v.leak, dash, [397, y + 30], Math.max(8, surface - y - 34)) +
      (v.liquid >= v.seal_height && some(v.liquid)
        ? flowing(
            0.4,
            dash,
            [
              [478, y + 22],
              [512, y + 32],
              [530, y + 58],
            ],
            "escape",
          )
        : "") +
      (on(v.brim)
        ? flowing(
            0.7,
            dash,
            [
              [470, 66],
              [486, 44],
              [540, 44],
              [560, 52],
            ],
            "escape",
          ) +
          flowing(
            0.7,
            dash,
            [
              [170, 66],
              [154, 44],
              [110, 44],
              [90, 52],
            ],
            "escape",
          )
        : "") +
      label("pump's head", 12, headY, [284, y - 20]) +
      label(
        "union",
        376,
        y < 170 ? y + 60 : y - 62,
        [397, y < 170 ? y + 12 : y - 12],
        has("leak") && (some(v.leak) ? "leaks" : "tight"),
      ) +
      note("tank", 320, 408) +
      (on(v.brim) ? note("over the brim", 628, 36, "end", "bad") : "") +
      labels(v, has, basinOf.at, sensorAt)
    );
  },
);

/** The valve's base with its inlets from the line: by a tee below it, or through it. */
function inlets(through: boolean, y: number): string {
  if (through) {
    const side = (x: number, base: number) =>
      hoseOf(curve([x, y], [between(x, base, 0.7), y], [base, y - 10], [base, 186]), 18, "full");
    return side(-20, 300) + side(660, 340) + shape("plain", box(284, 164, 72, 26));
  }
  return (
    pipe([0, y], [640, y]) +
    pipe([320, y - 8], [320, 180]) +
    shape("plain", svg`M292 ${y - 14}h14v-14h28v14h14v28h-56Z`) +
    shape("plain", box(300, 164, 40, 22))
  );
}

export const sump = picture(
  { liquid: 0, sensor_height: 0.15, seal_height: 0.4, sensor: 0, leak: 0, through: 0 },
  (v, has) =>
    told(
      ...words(v, has),
      has("through") &&
        (on(v.through) ? "the line enters and leaves at the valve's base" : "the riser stands on a tee of the line"),
    ),
  (v, dash, has) => {
    const basinOf = basin(v, 122, 372);
    const y = Math.max(210, basinOf.at(v.seal_height));
    const surface = basinOf.at(v.liquid);
    const sensor = sensorY(v, basinOf.at);
    // Below the line, if the sensor is about as high as the line.
    const [teeY, lineY, sensorAt] = stacked([190, y - 22, sensor > y - 40 ? Math.max(sensor, y + 30) : sensor]) as [
      number,
      number,
      number,
    ];
    const drip: Point = on(v.through) ? [366, 204] : [338, y + 24];
    return (
      earth(122) +
      ground(122, 0, 640) +
      slab(0, 84, left - 10, 40) +
      slab(right + 10, 84, 640, 40) +
      basinOf.back +
      shape("hollow", box(left - 8, 84, right - left + 16, 38)) +
      shape("line", "M186 0V84M454 0V84M150 84H186M454 84H490") +
      inlets(on(v.through), y) +
      shape("plain", "M300 164V128L314 108V84H326V108L340 128V164Z") +
      shape("plain", box(310, 0, 20, 84)) +
      shape("marked", "M304 84H336") +
      shape("plain", box(left, 138, 130, 9)) +
      shape("plain", box(334, 138, right - 334, 9)) +
      basinOf.front +
      entry(left - 5, y) +
      entry(right + 5, y) +
      drops(v.leak, dash, drip, Math.max(8, surface - drip[1] - 4)) +
      label("shear valve", 12, 40, [306, 120]) +
      label("island", 628, 64, [560, 96], "", "right") +
      label("dispenser", 628, 24, [455, 30], "", "right") +
      label(
        on(v.through) ? "through" : "tee",
        12,
        teeY,
        on(v.through) ? [286, 178] : [294, y],
        has("leak") && (some(v.leak) ? "leaks" : "tight"),
      ) +
      label("line", 12, lineY, [90, y - 8]) +
      labels(v, has, basinOf.at, sensorAt)
    );
  },
);
