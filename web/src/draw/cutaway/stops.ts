/** What stops the pump: circuits with the pump, the line and a dispenser that they guard. */
import { earth, flowing, fountain, lyingTank, upright } from "./pieces";
import { on, percent, picture, some, told } from "./picture";
import { box, disc, label, note, round, shape, svg, turned, type Point } from "./ink";

const tank = { x: 24, y: 310, width: 230, height: 92 };

/** A contact between two terminals; `open`: angle of its blade then, degrees. */
const contact = ([x, y]: Point, closed: boolean, open = -28) =>
  shape("bore", disc(x - 22, y, 4)) +
  shape("bore", disc(x + 22, y, 4)) +
  turned(closed ? 0 : open, [x - 22, y], shape("blade", svg`M${x - 18} ${y}H${x + 22}`));

/** The pump in its tank, the line to the dispenser, and the relay that feeds the pump. */
function plant(runs: boolean, fed: boolean): string {
  return (
    earth(250) +
    lyingTank(tank, 0.6) +
    shape("hollow", box(130, 270, 24, 42)) +
    upright(142, 284, 360, 14, 4, "plain") +
    shape("hollow", box(135, 284, 14, 76)) +
    shape("liquid", box(135, 270, 14, 90)) +
    shape(runs ? "on" : "off", round(124, 352, 36, 40, 6)) +
    shape("line", svg`M130 372h24M142 360v24`) +
    shape("hollow", box(134, 270, 420, 16)) +
    shape("liquid", box(134, 270, 420, 16)) +
    shape("line", "M134 286V270H536M150 286H552") +
    shape("wire", "M24 66H178M222 66H232V200H96V372H124") +
    contact([200, 66], fed) +
    shape("hidden", "M200 72V116") +
    shape(fed ? "on" : "off", box(180, 116, 40, 26))
  );
}

/** The way of the fuel from the pump to the dispenser. */
const course: Point[] = [
  [142, 350],
  [142, 278],
  [545, 278],
  [545, 248],
];

/** The dispenser on its riser; where fuel escapes it is gone and the riser is open. */
const dispenserBox = (escape: number, dash: number) =>
  (some(escape)
    ? shape("plain", box(500, 244, 90, 6))
    : shape("plain", box(504, 132, 82, 118)) + shape("line", "M516 148H574V178H516Z")) +
  shape("hollow", box(537, 240, 16, 46)) +
  shape("liquid", box(537, 240, 16, 46)) +
  shape("line", "M536 270V240M552 286V240") +
  fountain(escape, dash, [545, 238], 120);

export const emergencyStop = picture(
  { pressed: 0, runs: 1, flow: 0, escape: 0 },
  (v, has) =>
    told(
      has("pressed") && (on(v.pressed) ? "the emergency stop is pressed" : "the emergency stop is not pressed"),
      has("runs") && (on(v.runs) ? "the pump runs" : "the pump stands"),
      has("flow") && some(v.flow) && "fuel flows",
      has("escape") && some(v.escape) && `fuel escapes, ${percent(v.escape)} of the greatest`,
    ),
  (v, dash, has) => {
    const fed = !on(v.pressed);
    const push = 9 * v.pressed;
    return (
      plant(on(v.runs), fed) +
      dispenserBox(v.escape, dash) +
      flowing(v.flow, dash, course) +
      shape("wire", "M220 129H360V92H378M422 92H450V150H24V66") +
      shape("plain", box(366, 66, 68, 44)) +
      contact([400, 92], fed, 24) +
      shape("moves", box(396, 40 + push, 8, 46)) +
      shape("moves", svg`M370 ${48 + push}q0 -22 30 -22t30 22Z`) +
      shape("line", "M384 66h32") +
      label(
        "emergency stop",
        628,
        40,
        [426, 44 + push],
        has("pressed") && (on(v.pressed) ? "pressed" : "not pressed"),
        "right",
      ) +
      label("relay", 250, 52, [216, 122], has("pressed") && (fed ? "closed" : "open")) +
      label("pump", 180, 340, [158, 366], has("runs") && (on(v.runs) ? "runs" : "stands")) +
      label("line", 340, 340, [360, 284]) +
      note("supply", 24, 50, "start") +
      (some(v.escape)
        ? note("fuel escapes", 462, 226, "end", "bad") + label("open riser", 628, 340, [552, 262], "", "right")
        : label("dispenser", 628, 340, [570, 246], "", "right"))
    );
  },
);

export const interlocks = picture(
  { sensor: 0, signal: 0, runs: 1, flow: 0 },
  (v, has) =>
    told(
      has("sensor") && (on(v.sensor) ? "the sensor is wet" : "the sensor is dry"),
      has("signal", "sensor") &&
        (on(v.signal) ? "its signal reaches the relay" : on(v.sensor) ? "no signal reaches the relay" : "no signal"),
      has("runs") && (on(v.runs) ? "the pump runs" : "the pump stands"),
      has("flow") && some(v.flow) && "fuel flows",
    ),
  (v, dash, has) => {
    const fed = !on(v.signal);
    return (
      plant(on(v.runs), fed) +
      shape("hollow", box(470, 252, 150, 140)) +
      (on(v.sensor) ? shape("liquid", box(470, 350, 150, 40)) + shape("surface", "M470 350H620") : "") +
      shape("rubber", "M462 250H470V390H620V250H628V398H462Z") +
      shape("hollow", box(455, 270, 90, 16)) +
      shape("liquid", box(455, 270, 90, 16)) +
      shape("line", "M455 270H536M455 286H552") +
      dispenserBox(0, dash) +
      shape(on(v.signal) ? "marked" : "wire", "M596 372V112H440M340 112H300V129H220") +
      shape(on(v.sensor) ? "on" : "off", round(584, 358, 24, 22, 4)) +
      shape("plain", round(340, 84, 100, 56, 5)) +
      shape(on(v.signal) ? "on" : "off", disc(390, 112, 12)) +
      flowing(v.flow, dash, course) +
      label("controller", 330, 40, [376, 92], has("signal") && (on(v.signal) ? "signal" : "no signal")) +
      label("relay", 250, 52, [216, 122], has("signal") && (fed ? "closed" : "open")) +
      label("pump", 180, 340, [158, 366], has("runs") && (on(v.runs) ? "runs" : "stands")) +
      label("line", 300, 340, [330, 284]) +
      label("sensor", 440, 340, [586, 372], has("sensor") && (on(v.sensor) ? "wet" : "dry"), "right") +
      label("dispenser", 628, 40, [574, 140], "", "right") +
      note("supply", 24, 50, "start")
    );
  },
);
