import { arrow, flowing, hose, hoseOf, slab, spring, stream } from "./pieces";
import { between, on, percent, picture, some, told } from "./picture";
import { box, curve, disc, filled, label, moved, round, shape, svg, way, type Point } from "./ink";

const spoutAxis: Point[] = [[352, 178], ...curve([380, 178], [450, 178], [484, 214], [520, 318])];
/** A line beside the spout's axis, by its distance. */
function beside(by: number): Point[] {
  return spoutAxis.map(([x, y], i): Point => {
    const [a, b] = [spoutAxis[Math.max(0, i - 1)]!, spoutAxis[Math.min(spoutAxis.length - 1, i + 1)]!];
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return [x - (by * (b[1] - a[1])) / long, y + (by * (b[0] - a[0])) / long];
  });
}

/** The pipe of the vehicle that the spout stands in, with the liquid in it. */
function filler(level: number): string {
  const bore = "M448 262L520 414H640L536 224Z";
  return (
    shape("hollow", bore) +
    (some(level) ? filled("filler-fuel", bore, between(414, 292, level)) : "") +
    shape("thick", "M440 266L510 414M536 222L630 414") +
    shape("shell", "M404 284L440 266M536 222L640 176")
  );
}

export const nozzle = picture(
  { flow: 0, tank: 0, shut: 0, lever: 0 },
  (v, has) =>
    told(
      has("shut", "lever") &&
        (on(v.shut) ? "the nozzle has shut itself off" : on(v.lever) ? "the lever is held" : "the lever hangs"),
      has("flow") && (some(v.flow) ? "fuel flows" : "nothing flows"),
      has("tank") &&
        (v.tank >= 0.95
          ? "liquid covers the tip of the spout"
          : `liquid in the filler at ${percent(v.tank)} of the way to the tip`),
    ),
  (v, dash, has) => {
    const [front, rear] = [252 + 26 * v.shut, 304 - 40 * v.lever];
    const under = between(rear, front, 0.59);
    const lift = Math.min(22, Math.max(0, 272 - under));
    const seat = 150;
    const top = seat - 8 - lift;
    const wet = "M0 104H150V74H268V150H246V160H352V196H160V150H174V136H0Z";
    const spout = `${way(...beside(-15), ...beside(15).reverse())}Z`;
    return (
      filler(v.tank) +
      shape("rubber", box(0, 92, 60, 12)) +
      shape("rubber", box(0, 136, 60, 12)) +
      shape(
        "metal",
        "M52 92H138V62H280V76H330V88H346V148H372V210H148V150H52V136H174V150H160V196H352V160H246V150H268V74H150V104H52Z",
      ) +
      shape("hollow", wet) +
      shape("liquid", wet) +
      shape("line", wet) +
      shape("metal2", svg`M150 ${seat}H188V${seat + 10}H160V${seat}Z`) +
      shape("metal2", svg`M232 ${seat}H268V${seat + 10}H232Z`) +
      shape("hollow", spout) +
      (some(v.flow) ? shape("liquid", spout) : "") +
      shape("thick-line", way(...beside(-16))) +
      shape("thick-line", way(...beside(16))) +
      shape("wire", way(...beside(-10))) +
      shape("bore", disc(beside(-12).at(-2)![0], beside(-12).at(-2)![1], 4)) +
      shape("hollow", box(284, 92, 56, 50)) +
      shape("line", box(284, 92, 56, 50)) +
      shape("wire", "M354 168H346V132H340") +
      shape("bar-line-thin", svg`M284 ${118}Q312 ${118 - 22 * v.shut} 340 118`) +
      spring([312, 94], [312, 114 - 11 * v.shut], 20, 2) +
      shape("plain", box(302, 142, 20, 72)) +
      shape("moves", box(307, 124 + 26 * v.shut, 10, front - 124 - 26 * v.shut)) +
      spring([210, 76], [210, top], 30, 4) +
      shape("moves", svg`M186 ${top}h48v8l-6 0h-36l-6 0Z`) +
      shape("moves", box(206, top + 8, 8, under - top - 12)) +
      hose(svg`M64 ${rear + 8}Q80 ${rear} 100 ${between(rear, front, 0.09)}L312 ${front}`, 12, "bar") +
      shape("bore", disc(312, front, 6)) +
      shape("line", "M148 210Q28 244 28 330Q28 346 48 346H330Q352 346 352 320V210") +
      stream(v.flow, dash, [
        [10, 120],
        [166, 120],
        [178, 142],
        [204, 156],
        [226, 178],
        [350, 178],
      ]) +
      flowing(v.flow, dash, spoutAxis) +
      label("main valve", 12, 40, [190, top + 4], has("lever", "shut") && (lift > 3 ? "open" : "shut")) +
      label("diaphragm", 340, 40, [324, 112 - 10 * v.shut], has("shut") && (on(v.shut) ? "drawn up" : "at rest")) +
      label(
        "lever",
        100,
        388,
        [130, between(rear, front, 0.2) + 4],
        has("lever") && (v.lever > 0.05 ? "held" : "hangs"),
      ) +
      label("plunger", 250, 388, [312, 236 + 20 * v.shut], has("shut") && (on(v.shut) ? "let go" : "latched")) +
      label("sensing tube", 470, 100, beside(-10)[5]!) +
      label("tip", 400, 376, beside(-12).at(-2)!, has("tank") && (v.tank >= 0.95 ? "covered" : "free")) +
      label("filler", 628, 150, [588, 330], "", "right")
    );
  },
);

const body = "M236 322V190Q240 164 276 160L330 92Q340 80 360 80H520Q546 80 560 104L600 170H760";
const glass = "M236 322H760M352 160L380 102H450V160ZM466 160V102H520L556 160Z";

export const vehicle = picture(
  { flow: 0, tank: 0.3, away: 0 },
  (v, has) =>
    told(
      has("away") && (some(v.away) ? "the vehicle drives off with the nozzle in its tank" : "the vehicle stands"),
      has("tank") && `its tank ${percent(v.tank)} full`,
      has("flow") && (some(v.flow) ? "fuel flows" : "nothing flows"),
    ),
  (v, dash, has) => {
    const go = 120 * v.away;
    const at = (x: number, y: number): Point => [x + go, y];
    const tank = round(270 + go, 262, 126, 54, 16);
    const neck: Point[] = [at(250, 206), at(262, 222), at(290, 270)];
    const slack = curve(
      [100, 96],
      [180 + 0.4 * go, 96],
      [between(150, 200, v.away) + go * 0.6, between(330, 150, v.away)],
      at(214, 206),
      18,
    );
    const wheel = (x: number) => shape("plain", disc(x + go, 330, 36)) + shape("bore", disc(x + go, 330, 13));
    return (
      slab(0, 366, 640, 54) +
      shape("ground", "M0 366H640") +
      slab(0, 346, 130, 20) +
      shape("plain", box(24, 56, 78, 290)) +
      shape("line", "M36 80H90V126H36Z") +
      moved(go, 0, shape("outline", `${body}V320H236`) + shape("shell", body) + shape("line", glass)) +
      wheel(330) +
      shape("hollow", tank) +
      filled("car-fuel", tank, between(316, 262, v.tank)) +
      shape("shell", tank) +
      hoseOf(neck, 18, "gas") +
      hoseOf(slack, 12, some(v.flow) ? "full" : "hose") +
      shape("moves", svg`M${206 + go} 196h38l8 8v10l-8 -2h-22l-8 22h-10l6 -26h-4Z`) +
      flowing(v.flow, dash, [...slack, ...neck]) +
      (some(v.away) ? arrow("pull", [440, 392], [452 + 90 * v.away, 392]) : "") +
      label("hose", 130, 40, slack[5]!, has("away") && (v.away > 0.8 ? "tight" : "slack")) +
      label("nozzle", 136, 286, at(218, 220)) +
      label("tank", 628, 236, at(397, 290), has("tank") && percent(v.tank) + " full", "right") +
      label("filler", 230, 40, at(258, 214))
    );
  },
);
