import { arrow, flowing } from "./pieces";
import { percent, picture, some, told } from "./picture";
import { box, disc, inside, label, note, round, shape, svg, turned, way, type Point } from "./ink";

/** Dirt that cakes the outside of the element, the thicker the longer it has run. */
function dirt(clogged: number): string {
  if (!some(clogged)) return "";
  const cake = (x: number, side: number) => {
    const edge = Array.from({ length: 20 }, (_, i): Point => [
      x + side * clogged * (9 + 5 * Math.sin(i * 2.3) + 3 * Math.sin(i * 5.1)),
      154 + i * 9.8,
    ]);
    return `${way([x, 152], ...edge, [x, 342])}Z`;
  };
  return shape("dirt", cake(244, -1) + cake(396, 1));
}

const pleats = (left: number) =>
  shape("plain", box(left, 152, 52, 190)) +
  shape(
    "line",
    Array.from({ length: 8 }, (_, i) => svg`M${left + 6 + i * 6} ${i % 2 ? 152 : 160}V${i % 2 ? 334 : 342}`).join(""),
  );

export const filter = picture(
  { flow: 0, clogged: 0 },
  (v, has) =>
    told(
      has("flow") && (some(v.flow) ? "fuel passes from the outside of the element to its core" : "nothing flows"),
      has("clogged") && (some(v.clogged) ? `the element is clogged, ${percent(v.clogged)}` : "the element is clean"),
    ),
  (v, dash, has) => {
    const dirty = "M0 82H246V130H428V352Q428 366 414 366H226Q212 366 212 352V130H222V110H0Z";
    const core = "M304 150V82H640V110H336V340H304Z";
    return (
      shape("metal", "M0 70H174V52H466V70H640V122H466V136H174V122H0Z") +
      shape(
        "metal2",
        "M206 132V352Q206 372 226 372H414Q434 372 434 352V132H428V352Q428 366 414 366H226Q212 366 212 352V132Z",
      ) +
      shape("hollow", dirty) +
      shape("liquid", dirty) +
      shape("metal", "M246 82H304V136H246Z") +
      shape("metal", "M336 110H428V136H336Z") +
      shape("hollow", core) +
      shape("liquid", core) +
      shape("line", "M0 82H246V136M222 136V110H0M304 136V82H640M640 110H336V136") +
      pleats(244) +
      pleats(344) +
      shape("line", svg`M304 152V340M336 152V340`) +
      shape("plain", box(240, 342, 160, 8)) +
      shape("plain", box(240, 138, 64, 12)) +
      shape("plain", box(336, 138, 64, 12)) +
      dirt(v.clogged) +
      flowing(v.flow, dash, [
        [14, 96],
        [230, 96],
        [226, 200],
        [302, 200],
      ]) +
      flowing(v.flow, dash, [
        [226, 200],
        [226, 290],
        [302, 290],
      ]) +
      flowing(v.flow, dash, [
        [418, 142],
        [414, 245],
        [338, 245],
      ]) +
      flowing(v.flow, dash, [
        [320, 300],
        [320, 96],
        [618, 96],
      ]) +
      label("inlet", 12, 36, [90, 84]) +
      label("outlet", 628, 36, [550, 84], "", "right") +
      label(
        "element",
        12,
        210,
        [250, 240],
        has("clogged") && (some(v.clogged) ? `clogged ${percent(v.clogged)}` : "clean"),
      ) +
      label("dirty side", 12, 320, [216, 330]) +
      label("core", 628, 210, [334, 220], "", "right") +
      label("can", 628, 320, [431, 330], "", "right")
    );
  },
);

const [hub, throw_]: [Point, number] = [[320, 214], 26];

/** A pair of pistons on one yoke along an axis, `at` off the middle; drawn level, turned for the other pair. */
const pistons = (at: number, kind: string) => {
  const [x, y] = [hub[0] + at, hub[1]];
  const one = (side: number) => box(x + side * 104 - 14, y - 33, 28, 66);
  return (
    shape(kind, box(x - 90, y - 6, 180, 12)) +
    shape(kind, round(x - 17, y - 44, 34, 88, 15) + round(x - 9, y - 36, 18, 72, 8)) +
    shape("moves", one(-1)) +
    shape("moves", one(1)) +
    shape(
      "hollow",
      [-1, 1].map((side) => box(x + side * 104 - 2, y - 33, 4, 6) + box(x + side * 104 - 2, y + 27, 4, 6)).join(""),
    )
  );
};

/** The way of the liquid at the head of a cylinder: in while the piston draws back, out while it comes. */
const port = (angle: number, fills: boolean, share: number, dash: number) => {
  const far: Point = [hub[0] + 196, hub[1]];
  const near: Point = [hub[0] + 158, hub[1]];
  return turned(
    angle,
    hub,
    flowing(
      share,
      dash,
      fills
        ? [far, near]
        : [
            [near[0] - 10, near[1]],
            [far[0] - 12, far[1]],
          ],
    ),
  );
};

export const meter = picture(
  { flow: 0, count: 0 },
  (v, has) =>
    told(
      has("flow") && (some(v.flow) ? "fuel pushes the pistons, they turn the crank" : "the meter stands"),
      has("count") && `${v.count.toFixed(2)} turns counted`,
    ),
  (v, dash, has) => {
    const turn = 2 * Math.PI * v.count;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const cross = (half: number, long: number) => {
      const quarter: Point[] = [
        [-half, -long],
        [half, -long],
        [half, -half],
      ];
      const corners = [0, 1, 2, 3].flatMap((i) =>
        quarter.map(
          ([x, y]) =>
            [
              [x, y],
              [-y, x],
              [-x, -y],
              [y, -x],
            ][i] as unknown as Point,
        ),
      );
      return `${way(...corners.map(([x, y]): Point => [hub[0] + x, hub[1] + y]))}Z`;
    };
    const wet = cross(34, 154);
    const pin: Point = [hub[0] + throw_ * cos, hub[1] + throw_ * sin];
    return (
      shape("metal", cross(46, 170) + wet) +
      shape("hollow", box(hub[0] - 171, hub[1] - 9, 342, 18)) +
      shape("hollow", box(hub[0] - 9, hub[1] - 171, 18, 342)) +
      shape("hollow", wet) +
      shape("liquid", wet) +
      shape(
        "liquid",
        [-1, 1]
          .map(
            (side) =>
              box(hub[0] + side * 163 - 8, hub[1] - 9, 16, 18) + box(hub[0] - 9, hub[1] + side * 163 - 8, 18, 16),
          )
          .join(""),
      ) +
      turned(90, hub, pistons(throw_ * sin, "plain")) +
      pistons(throw_ * cos, "plain") +
      shape("line", disc(hub[0], hub[1], throw_)) +
      shape("bar-line", way(hub, pin)) +
      shape("moves", disc(pin[0], pin[1], 9)) +
      shape("bore", disc(hub[0], hub[1], 6)) +
      port(0, sin > 0, v.flow, dash) +
      port(180, sin < 0, v.flow, dash) +
      port(90, cos < 0, v.flow, dash) +
      port(270, cos > 0, v.flow, dash) +
      label("piston", 12, 110, [210 + throw_ * cos, 190]) +
      label("cylinder", 12, 320, [200, 255]) +
      label("crank", 628, 110, [pin[0] + 4, pin[1] - 4], has("count") && `${v.count.toFixed(2)} turns`, "right") +
      label("yoke", 628, 320, [hub[0] + throw_ * cos + 14, hub[1] + 26], "", "right")
    );
  },
);

const slots = 12;

export const price = picture(
  { flow: 0, count: 0 },
  (v, has) =>
    told(
      has("flow") && (some(v.flow) ? "the meter turns the pulser" : "the meter stands"),
      has("count") && `${v.count.toFixed(2)} turns, ${Math.floor(v.count * slots)} pulses of the disc that is drawn`,
    ),
  (v, _dash, has) => {
    const [x, y, r]: [number, number, number] = [146, 236, 104];
    const round_ = (i: number, by: number): Point => [x + by * Math.cos(i), y + by * Math.sin(i)];
    const holes = Array.from({ length: slots }, (_, i) => disc(...round_((2 * Math.PI * i) / slots, 80), 11)).join("");
    const period = 44;
    const shift = (((v.count * slots) % 1) + 1) % 1;
    const train = Array.from({ length: 9 }, (_, i) => svg`M${330 + (i - 1 + shift) * period} 132h22v-36h22v36`).join(
      "",
    );
    const shown = (top: number, name: string, value: string) =>
      shape("plain", round(330, top, 280, 40, 6)) +
      note(name, 346, top + 26, "start") +
      (value && note(value, 594, top + 26, "end", "state"));
    const swing = Array.from({ length: 12 }, (_, i) =>
      round_(Math.PI * (0.55 + (0.1 + 0.5 * v.flow) * (i / 11)), r + 16),
    );
    return (
      turned(
        360 * v.count,
        [x, y],
        shape("moves", disc(x, y, r) + holes) +
          shape("bore", disc(x, y, 26)) +
          shape("moves", box(x - 5, y - 24, 10, 14)),
      ) +
      (some(v.flow) ? arrow("pull", ...swing) : "") +
      shape("plain", svg`M${x + 58} ${y - 30}h90v60h-90v-16h62v-28h-62Z`) +
      shape("line", "M330 76V148M610 76V148") +
      inside("train", box(330, 70, 280, 90), shape("marked", train)) +
      shape("wire", svg`M${x + 148} ${y}H310V132H330`) +
      label("pulses", 440, 50, [470, 92]) +
      shown(184, "pulses counted", has("count") ? String(Math.floor(v.count * slots)) : "") +
      note("× volume per pulse", 470, 246) +
      shown(262, "volume", "") +
      note("× unit price", 470, 324) +
      shown(340, "price", "") +
      label("disc with slots", 12, 60, [x - 40, y - 69]) +
      label("reader", 222, 60, [270, y - 30]) +
      label("meter's shaft", 12, 396, [x - 10, y + 18], has("flow") && (some(v.flow) ? "turns" : "stands"))
    );
  },
);
