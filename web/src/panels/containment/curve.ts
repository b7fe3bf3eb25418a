import { figure, siOf, ticks, unitOf, valueIn, type UnitSystem } from "../../draw/numbers";
import type { Sump } from "./documents";
import { spanWords, timeTo } from "./rows";

export interface Mark {
  x: number;
  y: number;
  text: string;
  /** Where the text stands, and to which side of it. */
  textX: number;
  textY: number;
  anchor: "start" | "end";
}
interface Curve {
  width: number;
  height: number;
  path: string;
  marks: Mark[];
  across: { x: number; text: string }[];
  up: { y: number; text: string }[];
  foot: number;
  left: number;
  summary: string;
}

const left = 40;
const right = 14;
const top = 26;
const bottom = 36;

/** Volume against height of a sump, with what is reached and when; null where no volume is known. */
export function curveOf(sump: Sump, units: UnitSystem, width = 284, height = 200): Curve | null {
  const last = sump.points.at(-1);
  if (!last || !(last.height_m > 0) || !(last.volume_m3 > 0)) return null;
  const across = ticks(valueIn("bore", units, last.height_m), 4);
  const up = ticks(valueIn("volume", units, last.volume_m3), 4);
  const mostAcross = siOf("bore", units, across.at(-1) ?? 1);
  const mostUp = siOf("volume", units, up.at(-1) ?? 1);
  const x = (m: number) => left + (m / mostAcross) * (width - left - right);
  const y = (m3: number) => height - bottom - (m3 / mostUp) * (height - top - bottom);
  const at = (m: number | null, m3: number | null, name: string): Mark[] => {
    if (m === null || m3 === null) return [];
    const time = timeTo(sump, m3);
    const before = x(m) > width * 0.55;
    const low = y(m3) > height - bottom - 18;
    return [
      {
        x: x(m),
        y: y(m3),
        text: time === null ? name : `${name}, ${spanWords(time)}`,
        textX: x(m) + (before ? -9 : 9),
        textY: y(m3) + (before || low ? 4 : 13),
        anchor: before ? "end" : "start",
      },
    ];
  };
  const marks = [
    ...at(sump.sensor_height_m, sump.at_sensor_m3, "sensor"),
    ...at(sump.lowest_seal_m, sump.at_lowest_seal_m3, "lowest seal"),
    ...at(last.height_m, last.volume_m3, "brim"),
  ];
  return {
    width,
    height,
    path: sump.points
      .map((p, i) => `${i ? "L" : "M"}${x(p.height_m).toFixed(1)} ${y(p.volume_m3).toFixed(1)}`)
      .join(""),
    marks,
    across: across.map((v) => ({ x: x(siOf("bore", units, v)), text: String(v) })),
    up: up.map((v) => ({ y: y(siOf("volume", units, v)), text: String(v) })),
    foot: height - bottom,
    left,
    summary:
      `Volume against height, to ${figure("volume", units, last.volume_m3)} ${unitOf("volume", units)} at the brim. ` +
      marks.map((m) => m.text).join("; "),
  };
}
