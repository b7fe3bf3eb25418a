import { dial, earth, flowing, lyingTank, tankLevel, upright } from "./pieces";
import { between, on, percent, picture, some, told } from "./picture";
import { box, disc, filled, inside, label, note, shape, svg, type Point } from "./ink";
import { pressurePlace, vacuumPlace, ventValve } from "./vent_valve";

const center: Point = [320, 240];
const [inner, outer] = [126, 148];

export const tankWalls = picture(
  { tank: 0.6, double: 1, space: 0, sensor: 0 },
  (v, has) =>
    told(
      has("double") && (on(v.double) ? "two walls" : "one wall, no space to watch"),
      has("tank") && `tank ${percent(v.tank)} of its height`,
      has("double", "space") &&
        on(v.double) &&
        (some(v.space) ? `liquid in the space between, ${percent(v.space)} of its height` : "the space between is dry"),
      has("double", "sensor") && on(v.double) && (on(v.sensor) ? "the sensor calls" : "the sensor is quiet"),
    ),
  (v, _dash, has) => {
    const [x, y] = center;
    const two = on(v.double);
    const ring = disc(x, y, outer) + disc(x, y, inner);
    const shell = disc(x, y, inner);
    return (
      earth(52) +
      shape("hollow", disc(x, y, two ? outer : inner)) +
      inside("tank-vapor", shell, shape("vapor", shell)) +
      filled("tank-fuel", shell, between(y + inner, y - inner, v.tank)) +
      (two
        ? filled("space-fuel", ring, between(y + outer, y - outer, v.space)) +
          shape("shell", disc(x, y, outer)) +
          upright(400, 40, 116, 16, 5) +
          shape("wire", svg`M400 36V124A137 137 0 0 1 332 376.500`) +
          shape(on(v.sensor) ? "on" : "off", box(306, 369, 28, 15))
        : "") +
      shape("shell", shell) +
      label(two ? "inner wall" : "wall", 12, 130, [207, 185]) +
      (two ? label("outer wall", 12, 210, [173, 256]) : "") +
      label(
        "space between",
        12,
        330,
        two ? [232, 345] : [206, 296],
        has("space") && (!two ? "none" : some(v.space) ? `${percent(v.space)} high` : "dry"),
      ) +
      (two
        ? label("sensor", 628, 360, [332, 377], has("sensor") && (on(v.sensor) ? "calls" : "quiet"), "right") +
          label("cable", 628, 200, [457, 240], "", "right")
        : "") +
      label(
        "fuel",
        628,
        110,
        [392, between(y + inner, y - inner, v.tank)],
        has("tank") && percent(v.tank) + " high",
        "right",
      )
    );
  },
);

const long = { x: 150, y: 112, width: 340, height: 284 };

export const tankWater = picture(
  { tank: 0.6, water: 0.04, suction: 0.12 },
  (v, has) =>
    told(
      has("tank") && `fuel to ${percent(v.tank)} of the diameter`,
      has("water") && (some(v.water) ? `water to ${percent(v.water)}` : "no water"),
      has("suction") && `the pump draws at ${percent(v.suction)}`,
      has("water", "suction") && v.water >= v.suction && some(v.water) && "water reaches the pump's inlet",
    ),
  (v, _dash, has) => {
    const y = (share: number) => tankLevel(long, share);
    const drawn = some(v.water) && v.water >= v.suction;
    const inlet = y(v.suction);
    const full = Math.max(v.tank, v.water);
    const float = (at: number) =>
      shape("moves", svg`M210 ${at - 6}h28v12h-28Z`) +
      shape("hollow", box(220, at - 7, 8, 14)) +
      shape("wire", svg`M224 ${at - 8}v16`);
    return (
      earth(62) +
      lyingTank(
        long,
        full,
        shape("hollow", box(0, y(v.water), 640, 300)) +
          shape("water", box(0, y(v.water), 640, 300)) +
          shape("surface", svg`M0 ${y(v.water)}H640`),
      ) +
      shape("wire", svg`M224 54V390`) +
      float(Math.min(y(full), 388)) +
      float(Math.min(y(v.water), 389)) +
      upright(420, 46, 118, 18, 5) +
      shape("plain", box(411, 100, 18, Math.max(0, inlet - 210))) +
      shape("plain", box(403, inlet - 110, 34, 96)) +
      shape("bore", box(407, inlet - 14, 26, 14)) +
      shape("line", svg`M411 ${inlet - 12}v10M417 ${inlet - 12}v10M423 ${inlet - 12}v10M429 ${inlet - 12}v10`) +
      shape("mark-line", svg`M${long.x + 4} ${inlet}H402M438 ${inlet}H486`) +
      (drawn
        ? flowing(
            0.5,
            0,
            [
              [330, inlet + 8],
              [396, inlet + 8],
              [404, inlet - 6],
            ],
            "escape",
          )
        : "") +
      label("fuel", 12, 180, [190, Math.min(380, y(full) + 20)], has("tank") && percent(v.tank) + " high") +
      label(
        "water",
        12,
        366,
        [176, Math.min(390, (y(v.water) + 396) / 2)],
        has("water") && (some(v.water) ? `${percent(v.water)} high` : "none"),
      ) +
      label("probe, floats", 12, 100, [222, 130]) +
      label("pump", 628, 170, [431, Math.min(inlet - 60, 290)], "", "right") +
      label(
        "inlet",
        628,
        300,
        [430, inlet - 6],
        has("water", "suction") && (drawn ? "draws water" : "above water"),
        "right",
      )
    );
  },
);

const low = { x: 30, y: 292, width: 580, height: 112 };

export const tankBreathing = picture(
  { tank: 0.5, pressure: 0, out: 0, in: 0 },
  (v, has) =>
    told(
      has("pressure") &&
        (v.pressure > 0.02
          ? `pressure at ${percent(v.pressure)} of the vent's setting`
          : v.pressure < -0.02
            ? `vacuum at ${percent(-v.pressure)} of the vent's setting`
            : "no pressure and no vacuum"),
      has("out") && some(v.out) && "the pressure poppet lifts, vapor leaves",
      has("in") && some(v.in) && "the vacuum poppet swings, air comes in",
      has("out", "in") && !some(v.out) && !some(v.in) && "the vent is shut",
    ),
  (v, dash, has) => {
    const at: Point = [440, 206];
    return (
      earth(262) +
      lyingTank(low, v.tank) +
      upright(130, 190, 296, 12, 4) +
      upright(440, 206, 296, 44, 6) +
      shape("hollow", "M404 240L476 228V238L404 250Z") +
      shape("line", "M404 240L476 228M404 250L476 238") +
      dial([130, 130], 62, has("pressure") ? (v.pressure + 1) / 2 : null) +
      note("vacuum", 62, 224) +
      note("pressure", 200, 224) +
      note("0", 130, 58) +
      ventValve(at, v.out, v.in, dash) +
      label("pressure poppet", 176, 40, pressurePlace(at, v.out), has("out") && (some(v.out) ? "lifts" : "shut")) +
      label("vacuum poppet", 628, 232, vacuumPlace(at, v.in), has("in") && (some(v.in) ? "swings" : "shut"), "right") +
      label("vapor", 590, 328, [500, Math.min(340, (tankLevel(low, v.tank) + low.y) / 2 + 6)], "", "right") +
      label("fuel", 40, 386, [110, (tankLevel(low, v.tank) + 404) / 2])
    );
  },
);
