import { arrow, dial, drops, earth, flowing, level, seal, spring } from "./pieces";
import { between, on, percent, picture, some, told } from "./picture";
import { box, disc, filled, inside, label, note, shape, svg, turned } from "./ink";

const axis = 170;
/** The section of the line across, with what stands between its walls. */
function across(space: number): string {
  const [x, y, inner, outer] = [540, 342, 38, 60];
  const ring = disc(x, y, outer) + disc(x, y, inner);
  return (
    shape("hollow", disc(x, y, outer + 8)) +
    filled("ring-fuel", ring, between(y + outer, y - outer, space)) +
    shape("metal", disc(x, y, outer + 7) + disc(x, y, outer)) +
    shape("hollow", disc(x, y, inner)) +
    shape("liquid", disc(x, y, inner)) +
    shape("metal2", disc(x, y, inner) + disc(x, y, inner - 7)) +
    shape("center", svg`M${x - 78} ${y}H${x + 78}M${x} ${y - 76}V${y + 76}`)
  );
}

export const doubleWall = picture(
  { flow: 0, leak: 0, space: 0, sump: 0 },
  (v, has) =>
    told(
      has("flow") && (some(v.flow) ? "fuel flows in the inner pipe" : "the line stands"),
      has("leak") && (some(v.leak) ? "the inner wall leaks" : "the inner wall is tight"),
      has("space") &&
        (some(v.space) ? `liquid between the walls, ${percent(v.space)} of their height` : "dry between the walls"),
      has("sump") && (some(v.sump) ? "it reaches the sump" : "the sump is dry"),
    ),
  (v, dash, has) => {
    const gap = (y: number) => box(150, y, 490, 22);
    return (
      earth(60) +
      shape("hollow", box(20, 62, 140, 330)) +
      shape("hollow", box(150, 104, 500, 132)) +
      (some(v.sump) ? filled("sump-fuel", box(20, 62, 140, 320), between(382, 250, v.sump)) : "") +
      shape("rubber", "M10 60H20V382H160V236H170V392H10Z") +
      shape("rubber", "M160 60H170V104H160Z") +
      inside("gaps", gap(112) + gap(206), shape("liquid", box(0, between(228, 112, v.space), 640, 120))) +
      shape("liquid", box(40, 142, 600, 56)) +
      level(axis, 40, 640, 56, 8, "metal2") +
      level(axis, 150, 640, 116, 8) +
      shape("plain", "M20 112H40V228H20Z") +
      seal(165, 108, 6) +
      seal(165, 232, 6) +
      flowing(v.flow, dash, [
        [56, axis],
        [620, axis],
      ]) +
      (some(v.leak)
        ? shape("crack", "M430 196l6 5l-6 4l7 4") +
          flowing(
            v.leak * 0.5,
            dash,
            [
              [434, 206],
              [400, 220],
              [200, 220],
            ],
            "escape",
          )
        : "") +
      drops(v.space > 0.02 && some(v.sump) ? Math.max(v.leak, 0.3) : 0, dash, [148, 238], between(140, 16, v.sump)) +
      across(v.space) +
      label("inner pipe", 190, 30, [300, 139]) +
      label("outer pipe", 330, 30, [440, 108]) +
      label("space between", 250, 290, [330, 216], has("space") && (some(v.space) ? "liquid" : "dry")) +
      label("inner wall", 250, 360, [434, 204], has("leak") && (some(v.leak) ? "leaks" : "tight")) +
      label("sump", 28, 284, [120, 376], has("sump") && (some(v.sump) ? "liquid" : "dry"))
    );
  },
);

/** Heat between the line and the ground: out of a line that is warmer, into one that is colder. */
function heat(warm: number): string {
  if (!some(warm)) return "";
  const long = between(8, 34, Math.abs(warm));
  const one = (x: number, side: number): string => {
    const [near, far] = [240 + side * 38, 240 + side * (42 + long)];
    return warm > 0 ? arrow("heat", [x, near], [x, far]) : arrow("heat", [x, far], [x, near]);
  };
  return [230, 310, 390].map((x) => one(x, 1)).join("") + [230, 390].map((x) => one(x, -1)).join("");
}

export const line = picture(
  { runs: 0, pressure: 0.5, flow: 0, check: 0, warm: 0 },
  (v, has) =>
    told(
      has("runs") && (on(v.runs) ? "the pump runs" : "the pump stands"),
      has("check") && (on(v.check) ? "the check valve is open" : "the check valve holds the line"),
      has("pressure") && `pressure ${percent(Math.max(0, v.pressure))} of the pump's shut-off`,
      has("flow") && some(v.flow) && "fuel flows",
      has("warm") && v.warm > 0.02 && "the fuel is warmer than the ground and cools",
      has("warm") && v.warm < -0.02 && "the fuel is colder than the ground and warms",
    ),
  (v, dash, has) => {
    const poppet = between(106, 130, v.check);
    const outer = "M38 420V236Q38 210 64 210H92V192H168V210H536V120H596V270H168V288H104V420Z";
    const cavity = "M50 420V236Q50 222 66 222H104V204H156V222H548V120H584V258H156V276H104V258H92V420Z";
    const open = some(v.flow);
    return (
      earth(160) +
      shape("hollow", outer) +
      shape("metal", outer) +
      shape("hollow", cavity) +
      shape("liquid", cavity) +
      shape("line", cavity) +
      shape("plain", box(148, 222, 6, 36)) +
      spring([poppet + 10, 240], [148, 240], 24, 4) +
      shape("moves", svg`M${poppet} 216h5l7 8v32l-7 8h-5Z`) +
      shape("plain", box(528, 84, 76, 38)) +
      shape("bore", box(548, 84, 36, 38)) +
      shape("liquid", box(548, 84, 36, 38)) +
      shape("moves", disc(566, 103, 19)) +
      turned(open ? 0 : 90, [566, 103], shape("hollow", box(557, 84, 18, 38))) +
      dial([310, 84], 56, has("pressure") ? Math.max(0, v.pressure) : null) +
      shape("line", "M310 140V206") +
      shape("hollow", box(306, 206, 8, 18)) +
      shape("liquid", box(306, 206, 8, 18)) +
      heat(v.warm) +
      flowing(v.flow, dash, [
        [71, 410],
        [71, 240],
        [100, 240],
        [114, 212],
        [148, 212],
        [166, 240],
        [566, 240],
        [566, 64],
      ]) +
      note("line pressure", 236, 90, "end") +
      label("nozzle", 440, 50, [538, 92], has("flow") && (open ? "open" : "shut")) +
      label("check valve", 150, 340, [poppet + 6, 262], has("check") && (on(v.check) ? "open" : "shut, holds")) +
      label("pump", 130, 392, [100, 396], has("runs") && (on(v.runs) ? "runs" : "stands")) +
      (some(v.warm)
        ? label(
            "heat",
            628,
            340,
            [392, 292],
            has("warm") && (v.warm > 0 ? "to the ground" : "from the ground"),
            "right",
          )
        : "") +
      label("line", 300, 396, [270, 262])
    );
  },
);
