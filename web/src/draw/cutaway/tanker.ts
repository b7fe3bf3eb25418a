import { earth, flowing, hoseOf, lyingTank, slab, tankLevel, upright } from "./pieces";
import { between, on, percent, picture, shutWord, some, told } from "./picture";
import {
  box,
  curve,
  disc,
  filled,
  inside,
  label,
  moved,
  note,
  round,
  shape,
  svg,
  turned,
  turnedPlace,
  type Point,
} from "./ink";

const dropTank = { x: 300, y: 262, width: 312, height: 136 };
const deliveryHose = curve([224, 146], [224, 206], [330, 110], [330, 194]);
const vaporHose: Point[] = [
  ...curve([444, 192], [444, 70], [330, 120], [272, 120], 16),
  [272, 36],
  [196, 36],
  [196, 58],
];

function truck(left: number): string {
  const shell = round(26, 56, 236, 76, 28);
  const wheel = (x: number) => shape("plain", disc(x, 170, 25)) + shape("bore", disc(x, 170, 9));
  return (
    shape("plain", box(20, 132, 244, 12)) +
    shape("hollow", shell) +
    inside("truck-vapor", shell, shape("vapor", shell)) +
    filled("truck-fuel", shell, between(132, 56, left)) +
    shape("shell", shell) +
    shape("plain", box(88, 48, 44, 9)) +
    wheel(62) +
    wheel(122) +
    shape("metal", box(214, 132, 20, 16))
  );
}

export const drop = picture(
  { truck: 0.7, tank: 0.4, flow: 0, vapor: 0, vent: 0 },
  (v, has) =>
    told(
      has("truck") && `compartment ${percent(v.truck)} full`,
      has("tank") && `tank ${percent(v.tank)} of its height`,
      has("flow") && (some(v.flow) ? "fuel runs down by its own weight" : "nothing runs"),
      has("vapor") && some(v.vapor) && "vapor goes back to the tanker by the hose",
      has("vent") && some(v.vent) && "vapor leaves by the vent",
    ),
  (v, dash, has) =>
    earth(196) +
    lyingTank(dropTank, v.tank, upright(330, 258, 386, 18, 3, "plain")) +
    upright(330, 198, 262, 18, 5) +
    upright(444, 198, 262, 16, 5) +
    upright(592, 64, 262, 14, 4) +
    shape("plain", svg`M574 64q18 -26 36 0Z`) +
    hoseOf(vaporHose, 13, "gas") +
    hoseOf(deliveryHose, 20, some(v.flow) ? "full" : "hose") +
    truck(v.truck) +
    flowing(v.flow, dash, [...deliveryHose, [330, 372]]) +
    flowing(v.vapor, dash, [[444, 282], ...vaporHose], "vapor-flow") +
    flowing(
      v.vent,
      dash,
      [
        [592, 284],
        [592, 52],
        [592, 24],
      ],
      "vapor-flow",
    ) +
    label("compartment", 12, 22, [70, 84], has("truck") && percent(v.truck) + " full") +
    label("vapor hose", 300, 40, [362, 116], has("vapor") && (some(v.vapor) ? "vapor returns" : "no vapor")) +
    label("vent", 460, 84, [586, 80], has("vent") && (some(v.vent) ? "vapor leaves" : "shut")) +
    label("delivery hose", 12, 236, [262, 164], has("flow") && (some(v.flow) ? "fuel runs" : "still")) +
    label("drop tube", 12, 304, [320, 320]) +
    label("tank", 12, 372, [301, 350], has("tank") && percent(v.tank) + " high"),
);

const fillTank = { x: 40, y: 336, width: 560, height: 76 };

export const fill = picture(
  { cap: 1, container: 0, flow: 0, tank: 0.5 },
  (v, has) =>
    told(
      has("cap") && (v.cap > 0.95 ? "the cap is on" : "the cap is off"),
      has("container") &&
        (some(v.container) ? `spill container ${percent(v.container)} full` : "spill container empty"),
      has("flow") && some(v.flow) && "fuel runs down the drop tube",
      has("tank") && `tank ${percent(v.tank)} of its height`,
    ),
  (v, dash, has) => {
    const off = 1 - v.cap;
    const capPlace: Point = [320 + 168 * off, 124 - 20 * off - 40 * Math.sin(Math.PI * off)];
    const elbow: Point[] = [[320, 132], ...curve([320, 104], [320, 56], [270, 40], [150, 40], 10)];
    return (
      earth(116) +
      slab(0, 116, 226, 22) +
      slab(414, 116, 226, 22) +
      shape("hollow", box(228, 100, 184, 156)) +
      filled("container-fuel", box(236, 116, 168, 132), between(248, 116, v.container)) +
      shape("rubber", svg`M224 116h12v132h168v-132h12v144h-192Z`) +
      lyingTank(fillTank, v.tank, "") +
      shape("hollow", box(290, 128, 60, 212)) +
      filled("tube-fuel", box(303, 132, 34, 270), some(v.flow) ? 132 : tankLevel(fillTank, v.tank)) +
      upright(320, 140, 340, 46, 7) +
      upright(320, 140, 402, 34, 3, "plain") +
      shape("metal2", box(288, 128, 15, 14)) +
      shape("metal2", box(337, 128, 15, 14)) +
      shape("bore", svg`M376 254v18h-32v8h40v-26Z`) +
      shape("moves", box(370, 240, 20, 10)) +
      shape("wire", svg`M380 240v-26`) +
      (some(v.flow) && !on(v.cap) ? hoseOf(elbow, 42, "full") + shape("plain", box(284, 118, 72, 12)) : "") +
      moved(-212 * off, -46 * Math.sin(Math.PI * off), shape("plain", box(226, 107 - off, 188, 8))) +
      moved(
        capPlace[0],
        capPlace[1],
        shape("moves", svg`M-40 -4h80v16h-7v-8h-66v8h-7Z`) + shape("moves", box(-12, -9, 24, 5)),
      ) +
      flowing(
        v.flow,
        dash,
        on(v.cap)
          ? [
              [320, 170],
              [320, 392],
            ]
          : [...[...elbow].reverse(), [320, 392]],
      ) +
      label("cap", 628, 40, [capPlace[0] + 12, capPlace[1] - 2], has("cap") && (v.cap > 0.95 ? "on" : "off"), "right") +
      label(
        "spill container",
        12,
        196,
        [232, 216],
        has("container") && (some(v.container) ? `${percent(v.container)} full` : "empty"),
      ) +
      label("drop tube", 12, 296, [302, 300]) +
      label("drain", 628, 196, [386, 246], "", "right") +
      label("fill pipe", 628, 262, [349, 296], "", "right") +
      label("tank", 628, 304, [500, 337], has("tank") && percent(v.tank) + " high", "right")
    );
  },
);

/** The whole tank as a small round section, with the level and where the valve shuts. */
function smallTank(tank: number, at: number | null): string {
  const [x, y, r] = [110, 118, 84];
  const shell = disc(x, y, r);
  const heightOf = (share: number) => y + r - 2 * r * share;
  return (
    shape("hollow", shell) +
    inside("small-vapor", shell, shape("vapor", shell)) +
    filled("small-fuel", shell, heightOf(tank)) +
    shape("shell", shell) +
    shape("wire", svg`M106 24V194M114 24V194`) +
    (at === null
      ? ""
      : shape("mark-line", svg`M16 ${heightOf(at)}H204`) +
        shape("marked", box(94, heightOf(at) - 12, 32, 24)) +
        shape("leader", svg`M206 ${heightOf(at)}H250`))
  );
}

const pivot: Point = [365, 226];

export const overfillValve = picture(
  { tank: 0.6, flow: 0, valve: 0, valve_height: 0.95, valve_gone: 0 },
  (v, has) =>
    told(
      on(v.valve_gone) && "there is no overfill valve",
      has("valve") && `overfill valve ${shutWord(v.valve)}`,
      has("tank") && `liquid at ${percent(v.tank)} of the diameter`,
      has("valve_height") && `the valve shuts at ${percent(v.valve_height)}`,
      has("flow", "valve") && (some(v.flow) ? (v.valve > 0.95 ? "a trickle passes" : "fuel runs") : "nothing runs"),
    ),
  (v, dash, has) => {
    const surface = Math.min(396, Math.max(76, 206 + (v.valve_height - v.tank) * 1100));
    const view = box(250, 30, 250, 375);
    const angle = 90 * v.valve;
    const turn = (place: Point) => turnedPlace(angle, pivot, place);
    const shut = v.valve > 0.9;
    const tube = (from: number, to: number) => shape("liquid", box(365, from, 70, to - from));
    return (
      smallTank(v.tank, on(v.valve_gone) ? null : v.valve_height) +
      shape("hollow", view) +
      inside("view-vapor", view, shape("vapor", box(250, 62, 250, 350))) +
      filled("view-fuel", view, surface) +
      inside(
        "view-tube",
        view,
        shape("earth", box(250, 30, 250, 22)) +
          shape("metal", box(250, 50, 108, 12)) +
          shape("metal", box(442, 50, 60, 12)) +
          shape("hollow", box(365, 24, 70, 390)) +
          (some(v.flow) && !shut
            ? tube(30, 405)
            : shut
              ? tube(30, 226) + tube(Math.max(surface, 232), 405)
              : tube(surface, 405)) +
          upright(400, 24, 420, 70, 6) +
          shape("hollow", box(357, 214, 10, 24)) +
          shape("plain", svg`M435 232h-9v12h9Z`),
      ) +
      flowing(
        v.flow,
        dash,
        shut
          ? [
              [416, 200],
              [416, 252],
              [416, 388],
            ]
          : [
              [404, 40],
              [404, 392],
            ],
      ) +
      (on(v.valve_gone)
        ? note("no overfill valve", 110, 232, "middle", "bad")
        : turned(
            angle,
            pivot,
            shape("moves", svg`M362 226L366 158h8v66Z`) +
              shape("moves", svg`M361 224L340 252v6h10L370 232Z`) +
              shape("moves", round(330, 254, 24, 84, 11)),
          ) + shape("bore", disc(pivot[0], pivot[1], 6))) +
      shape("line", view) +
      (has("valve_height") && !on(v.valve_gone)
        ? note("shuts at", 110, 232) +
          note(`${percent(v.valve_height)} of the`, 110, 258, "middle", "state") +
          note("diameter", 110, 284, "middle", "state")
        : "") +
      (on(v.valve_gone)
        ? ""
        : label(
            "float",
            24,
            350,
            turn([343, 296]),
            has("valve") && (v.valve > 0.95 ? "lifted" : v.valve < 0.05 ? "hangs" : "rises"),
          ) + label("flapper", 628, 130, turn([369, 186]), has("valve") && shutWord(v.valve), "right")) +
      label("drop tube", 628, 330, [438, 340], "", "right") +
      label("tank top", 628, 40, [480, 56], "", "right") +
      label("liquid", 628, 250, [488, surface], has("tank") && percent(v.tank), "right")
    );
  },
);
