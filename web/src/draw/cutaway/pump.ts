import { dial, drops, earth, flowing, lyingTank, spring, stream, tankLevel, upright } from "./pieces";
import { on, percent, picture, some, told } from "./picture";
import { box, label, note, shape, stacked, svg, type Point } from "./ink";

const tank = { x: 176, y: 176, width: 400, height: 228 };

/** The unit at the foot of the column: impellers above the inlet, the motor above them, fuel around it. */
function unit(foot: number, runs: boolean, dash: number): string {
  const top = foot - 122;
  const slit = (((dash % 12) + 12) % 12) * (runs ? 1 : 0);
  const blades = (y: number) =>
    shape("moves", box(279, y, 42, 8)) +
    shape("hollow", [0, 12, 24].map((x) => box(281 + ((x + slit) % 36), y + 1.5, 3, 5)).join(""));
  return (
    shape("hollow", svg`M266 ${foot}V${top + 12}L286 ${top}H314L334 ${top + 12}V${foot}Z`) +
    shape("liquid", svg`M266 ${foot}V${top + 12}L286 ${top}H314L334 ${top + 12}V${foot}Z`) +
    shape("metal", svg`M262 ${foot}V${top + 10}L284 ${top - 2}H289V${top + 2}L268 ${top + 14}V${foot}Z`) +
    shape("metal2", svg`M338 ${foot}V${top + 10}L316 ${top - 2}H311V${top + 2}L332 ${top + 14}V${foot}Z`) +
    shape("plain", box(280, top + 16, 40, 54)) +
    shape("metal2", box(284, top + 22, 9, 42)) +
    shape("metal2", box(307, top + 22, 9, 42)) +
    shape("moves", box(296, top + 20, 8, foot - top - 30)) +
    blades(foot - 46) +
    blades(foot - 33) +
    blades(foot - 20) +
    shape("line", svg`M268 ${foot}h8M280 ${foot}h8M292 ${foot}h8M304 ${foot}h8M316 ${foot}h8`)
  );
}

export const pump = picture(
  { runs: 0, flow: 0, check: 0, tank: 0.6, suction: 0.12 },
  (v, has) =>
    told(
      has("runs") && (on(v.runs) ? "the pump runs" : "the pump stands"),
      has("check") && (on(v.check) ? "the check valve is open" : "the check valve is shut and holds the line"),
      has("flow") && some(v.flow) && "fuel goes up the column and into the line",
      has("tank", "suction") && `tank ${percent(v.tank)} of its height, drawn at ${percent(v.suction)}`,
      has("tank", "suction") && v.tank <= v.suction && "the inlet is dry",
    ),
  (v, dash, has) => {
    const foot = Math.max(tank.y + 126, tankLevel(tank, v.suction));
    const poppet = 98 - 14 * v.check;
    const cavity = "M289 178V108H278V68H322V84H402V104H322V108H311V178Z";
    const [checkY, columnY, motorY, impellerY, inletY] = stacked([90, 176, foot - 116, foot - 56, foot + 4]) as [
      number,
      number,
      number,
      number,
      number,
    ];
    const side = (x: number): Point[] => [
      [300, foot + 14],
      [300, foot - 4],
      [x, foot - 52],
      [x, foot - 108],
      [300, foot - 128],
    ];
    return (
      earth(44) +
      shape("hollow", box(232, 46, 236, 104)) +
      shape("thick", "M232 44V152H468V44") +
      lyingTank(tank, v.tank) +
      shape("metal", "M256 58H404V130H256Z") +
      shape("hollow", cavity) +
      shape("liquid", cavity) +
      shape("line", cavity) +
      shape("hollow", box(402, 84, 240, 20)) +
      shape("liquid", box(402, 84, 240, 20)) +
      shape("metal2", box(402, 78, 240, 6)) +
      shape("metal2", box(402, 104, 240, 6)) +
      shape("hollow", box(284, 130, 32, foot - 250)) +
      shape("liquid", box(289, 130, 22, foot - 250)) +
      upright(300, 130, foot - 120, 22, 5) +
      unit(foot, on(v.runs), dash) +
      spring([300, 70], [300, poppet], 22, 3) +
      shape("moves", svg`M284 ${poppet}h32v5l-8 6h-16l-8 -6Z`) +
      stream(v.flow, dash, side(273)) +
      stream(v.flow, dash, side(327)) +
      flowing(v.flow, dash, [
        [300, foot - 130],
        [300, 124],
        [318, 104],
        [330, 94],
        [622, 94],
      ]) +
      label("check valve", 12, checkY, [286, poppet + 4], has("check") && (on(v.check) ? "open" : "shut")) +
      label("column", 12, columnY, [286, 166]) +
      label("motor", 12, motorY, [284, foot - 80], has("runs") && (on(v.runs) ? "runs" : "stands")) +
      label("impellers", 12, impellerY, [282, foot - 30]) +
      label("inlet", 12, inletY, [272, foot + 1], has("tank", "suction") && (v.tank > v.suction ? "" : "dry")) +
      label("manifold", 628, 28, [392, 70], "", "right") +
      label("line", 628, 142, [600, 107], "", "right") +
      label("fuel", 500, Math.max(210, Math.min(390, tankLevel(tank, v.tank) - 14)), [470, tankLevel(tank, v.tank)])
    );
  },
);

const state = (v: { opened: number; trips: number; runs: number }) =>
  v.opened > 0.95 ? "full flow" : on(v.trips) ? "restricts" : on(v.runs) ? "trickle only" : "shut";

export const leakDetector = picture(
  { runs: 0, opened: 0, pressure: 0, leak: 0, trips: 0, detector_gone: 0 },
  (v, has) =>
    told(
      on(v.detector_gone) && "there is no leak detector",
      has("runs") && (on(v.runs) ? "the pump runs" : "the pump stands"),
      has("opened", "trips", "runs") &&
        (v.opened > 0.95
          ? "the leak detector is open to full flow"
          : on(v.trips)
            ? "the leak detector restricts the line"
            : on(v.runs)
              ? "the leak detector lets a trickle by and feels for pressure"
              : "the leak detector is shut"),
      has("pressure") && `pressure in the line ${percent(Math.max(0, v.pressure))} of the pump's shut-off`,
      has("leak") && some(v.leak) && "the line leaks",
    ),
  (v, dash, has) => {
    const gone = on(v.detector_gone);
    const lift = 38 * v.opened;
    const under = "M170 420V300H300V292H340V300H340V344H212V420Z";
    const chamber = "M276 232H364V242H640V288H364V292H340V300H300V292H276Z";
    const [piston, poppet] = [162 - lift, 282 - lift];
    const open = gone || v.opened > 0.3;
    return (
      shape("metal", "M146 420V276H250V40H390V218H640V312H364V368H236V420Z") +
      shape("hollow", under) +
      shape("liquid", under) +
      shape("line", "M170 420V300H300M340 300V344H212V420") +
      shape("hollow", chamber) +
      shape("liquid", chamber) +
      shape("line", "M300 292H276V232H364V242H640M640 288H364V292H340") +
      shape("hollow", box(270, 60, 100, 146)) +
      shape("liquid", gone ? box(270, 60, 100, 146) : box(270, piston + 14, 100, 192 - piston)) +
      shape("line", box(270, 60, 100, 146)) +
      shape("hollow", box(350, 205, 8, 28)) +
      shape("liquid", box(350, 205, 8, 28)) +
      (gone
        ? ""
        : spring([320, 62], [320, piston], 44, 5) +
          shape("moves", box(272, piston, 96, 14)) +
          shape("moves", box(316, piston + 12, 8, poppet - piston - 10)) +
          shape("moves", svg`M290 ${poppet}h60v6l-12 12h-36l-12 -12Z`) +
          shape("hollow", box(332, poppet + 3, 4, 16))) +
      dial([560, 120], 52, has("pressure") ? Math.max(0, v.pressure) : null) +
      shape("line", "M560 172V218") +
      shape("hollow", box(556, 218, 8, 24)) +
      shape("liquid", box(556, 218, 8, 24)) +
      (on(v.runs) && open
        ? flowing(Math.max(0.2, v.opened), dash, [
            [191, 410],
            [191, 322],
            [300, 322],
            [312, 310],
            [284, 284 - lift * 0.2],
            [290, 254],
            [420, 264],
            [622, 264],
          ])
        : "") +
      (on(v.runs) && !open
        ? flowing(0.02, dash, [
            [191, 410],
            [191, 322],
            [334, 322],
            [334, 268],
            [410, 264],
            [622, 264],
          ])
        : "") +
      (some(v.leak) ? shape("crack", "M500 290l5 7l-6 6l5 9") + drops(v.leak, dash, [502, 326], 70) : "") +
      (gone
        ? note("no leak detector", 12, 140, "start", "bad")
        : label("spring", 12, 74, [300, 84]) +
          label("piston", 12, 140, [280, piston + 7], has("opened") && (lift > 4 ? "lifted" : "down")) +
          label("poppet", 12, 220, [294, poppet + 5], has("opened", "trips", "runs") && state(v))) +
      label("from the pump", 12, 396, [180, 384], has("runs") && (on(v.runs) ? "runs" : "stands")) +
      note("line pressure", 628, 52, "end") +
      label("seat", 420, 396, [338, 300]) +
      label("line", 628, 350, [610, 282], has("leak") && (some(v.leak) ? "leaks" : "tight"), "right")
    );
  },
);
