import { earth, flowing, hoseOf, lyingTank, spring, tankLevel, upright } from "./pieces";
import { percent, picture, some, told } from "./picture";
import { box, curve, disc, label, note, shape, svg, turned, type Point } from "./ink";
import { pressurePlace, vacuumPlace, ventValve } from "./vent_valve";

const tank = { x: 60, y: 292, width: 540, height: 112 };

/** The adaptor of the vapor riser: a poppet on a spring that the hose's elbow pushes open. */
function dryBreak(x: number, open: number): string {
  const y = 158 + 20 * open;
  return (
    shape("metal", svg`M${x - 34} 240V172L${x - 22} 158V150H${x - 30}V144H${x - 16}V158L${x - 24} 174V240Z`) +
    shape("metal2", svg`M${x + 34} 240V172L${x + 22} 158V150H${x + 30}V144H${x + 16}V158L${x + 24} 174V240Z`) +
    spring([x, y + 14], [x, 222], 20, 4) +
    shape("plain", box(x - 24, 222, 48, 5)) +
    shape("moves", svg`M${x - 14} ${y}h28l6 12h-40Z`)
  );
}

export const vaporReturn = picture(
  { flow: 0, vapor: 0, vent: 0, tank: 0.5 },
  (v, has) =>
    told(
      has("flow") && (some(v.flow) ? "fuel runs into the tank" : "nothing runs"),
      has("vapor") && (some(v.vapor) ? "its vapor goes back to the tanker by a second hose" : "no vapor goes back"),
      has("vent") && some(v.vent) && "vapor leaves by the vent",
      has("tank") && `tank ${percent(v.tank)} of its height`,
    ),
  (v, dash, has) => {
    const open = some(v.vapor) ? 1 : 0;
    const fuelHose: Point[] = curve([160, 190], [160, 100], [120, 84], [0, 84]);
    const gasHose: Point[] = curve([330, 146], [330, 50], [230, 40], [0, 40]);
    return (
      earth(236) +
      lyingTank(tank, v.tank, upright(160, 280, 392, 26, 3, "plain")) +
      shape("hollow", box(147, 190, 26, 106)) +
      upright(160, 200, 296, 26, 6) +
      shape("hollow", box(306, 150, 48, 144)) +
      upright(330, 240, 296, 48, 8) +
      upright(560, 70, 296, 16, 5) +
      shape("plain", svg`M540 70q20 -28 40 0Z`) +
      (open ? hoseOf(gasHose, 34, "gas") : "") +
      dryBreak(330, open) +
      (open ? shape("plain", svg`M296 136h68v14h-68Z`) : "") +
      hoseOf(fuelHose, 34, some(v.flow) ? "full" : "hose") +
      shape("plain", box(132, 186, 56, 14)) +
      flowing(v.flow, dash, [...[...fuelHose].reverse(), [160, 378]]) +
      flowing(
        v.vapor,
        dash,
        [[296, 312], [312, 296], [312, 200], [311, 176], [330, 150], ...gasHose.slice(1)],
        "vapor-flow",
      ) +
      flowing(
        v.vent,
        dash,
        [
          [560, 314],
          [560, 30],
        ],
        "vapor-flow",
      ) +
      (open
        ? label("vapor hose", 390, 30, [318, 90], "vapor returns")
        : note("vapor hose", 390, 30, "start") + (has("vapor") ? note("not on", 390, 49, "start", "state") : "")) +
      label("dry break", 390, 138, [340, open ? 182 : 164], has("vapor") && (open ? "pushed open" : "shut")) +
      label("fuel hose", 12, 156, [130, 120], has("flow") && (some(v.flow) ? "fuel runs" : "still")) +
      label("vapor riser", 390, 214, [358, 262]) +
      label("vent", 426, 84, [550, 74], has("vent") && (some(v.vent) ? "vapor leaves" : "shut")) +
      label("drop tube", 206, 386, [176, 350]) +
      label("vapor", 440, 336, [420, Math.min(330, (tank.y + tankLevel(tank, v.tank)) / 2)])
    );
  },
);

export const vent = picture(
  { pressure: 0, out: 0, in: 0, blocked: 0 },
  (v, has) =>
    told(
      has("pressure") &&
        (v.pressure > 0.02
          ? `pressure at ${percent(v.pressure)} of the setting`
          : v.pressure < -0.02
            ? `vacuum at ${percent(-v.pressure)} of the setting`
            : "no pressure and no vacuum"),
      has("blocked") && some(v.blocked) && "the pipe is blocked",
      has("out") && some(v.out) && "the pressure poppet lifts, vapor leaves",
      has("in") && some(v.in) && "the vacuum poppet swings, air comes in",
      has("out", "in") && !some(v.out) && !some(v.in) && "both poppets are shut",
    ),
  (v, dash, has) => {
    const at: Point = [290, 206];
    const plug = 34 * v.blocked;
    return (
      upright(290, 214, 420, 44, 6) +
      shape("line", svg`M318 330H480`) +
      ventValve(at, v.out, v.in, dash) +
      (some(v.blocked) ? shape("rubber", svg`M268 ${272 - plug}q22 -14 44 0v${2 * plug}q-22 14 -44 0Z`) : "") +
      flowing(
        v.out,
        dash,
        [
          [282, 408],
          [282, 246],
        ],
        "vapor-flow",
      ) +
      flowing(
        v.in,
        dash,
        [
          [298, 250],
          [298, 400],
        ],
        "air-flow",
      ) +
      shape("hollow", disc(530, 330, 62)) +
      gauge(has("pressure") ? v.pressure : null) +
      label("pressure poppet", 12, 30, pressurePlace(at, v.out), has("out") && (some(v.out) ? "lifts" : "shut")) +
      label("hood", 628, 60, [408, 110], "", "right") +
      label("vacuum poppet", 628, 216, vacuumPlace(at, v.in), has("in") && (some(v.in) ? "swings" : "shut"), "right") +
      label("vent pipe", 12, 310, [265, 280], has("blocked") && (some(v.blocked) ? "blocked" : "clear")) +
      label("seat", 12, 236, [220, 122])
    );
  },
);

const gauge = (pressure: number | null) => {
  const tick = (angle: number) => turned(angle, [530, 330], shape("line", "M530 276v7"));
  return (
    shape("dial", disc(530, 330, 56)) +
    [-120, -60, 0, 60, 120].map(tick).join("") +
    (pressure === null ? "" : turned(120 * pressure, [530, 330], shape("needle", "M530 336V286"))) +
    shape("pin", disc(530, 330, 4)) +
    note("vacuum", 448, 404) +
    note("pressure", 592, 404)
  );
};
