import type { State } from "../parts/status";
import { digits, figure, timeSpan, unitOf, valueIn, type UnitSystem } from "../../draw/numbers";
import { count } from "../../draw/words";
import type { DrainLine, Holds, Joint, Sump } from "./documents";

/** The shape that stands beside a word of containment. */
export const shapeOf: Record<Holds, State> = {
  assured: "meets",
  "not assured": "falls short",
  "not determined": "not determined",
};
export const wordOf: Record<Holds, string> = {
  assured: "Assured",
  "not assured": "Not assured",
  "not determined": "Not determined",
};
const worstFirst: Holds[] = ["not assured", "not determined", "assured"];

/** Path of what bears a sump. */
export const pathOf = (sump: Sump) => `${sump.of}.${sump.owner}`;

/** The sump that a path of the site file belongs to: "dispenser.D1.sump", "dispenser.D1.hose.D1.a". */
export function sumpAt(sumps: readonly Sump[], path: string | null): Sump | undefined {
  return path === null ? undefined : sumps.find((s) => path === pathOf(s) || path.startsWith(`${pathOf(s)}.`));
}

/** Places that drain alike, told once. */
export interface Drain {
  holds: Holds;
  goes: string;
  from: string[];
  joints: number;
  runs: number;
}

/** Joints and runs by where fuel goes from them: what is not assured first. */
export function drains(joints: readonly Joint[], lines: readonly DrainLine[]): Drain[] {
  const out: Drain[] = [];
  const add = (holds: Holds, goes: string, from: string, kind: "joints" | "runs") => {
    let like = out.find((d) => d.holds === holds && d.goes === goes);
    if (!like) out.push((like = { holds, goes, from: [], joints: 0, runs: 0 }));
    like.from.push(from);
    like[kind] += 1;
  };
  for (const j of joints) add(j.holds, j.goes, j.joint, "joints");
  for (const l of lines) add(l.holds, l.goes, `run of ${l.line}`, "runs");
  return out.sort((a, b) => worstFirst.indexOf(a.holds) - worstFirst.indexOf(b.holds));
}

/** "8 joints and 1 run" */
export const countWords = (of: { joints: number; runs: number }) =>
  [of.joints && count(of.joints, "joint"), of.runs && count(of.runs, "run")]
    .filter(Boolean)
    .join(" and ");

/** "4 of 7 sumps, 6 of 14 joints and 0 of 6 runs are assured." */
export function inShort(sumps: readonly Sump[], joints: readonly Joint[], lines: readonly DrainLine[]): string {
  const of = (all: readonly { holds: Holds }[], what: string) =>
    `${all.filter((a) => a.holds === "assured").length} of ${count(all.length, what)}`;
  return `${of(sumps, "sump")}, ${of(joints, "joint")} and ${of(lines, "run")} assured`;
}

/** An inflow as it is said: a drip by the hour, a flow by the minute. */
export function inflowWords(si: number, units: UnitSystem): string {
  const drip = valueIn("flow", units, si) < 0.5;
  const what = drip ? "leak" : "flow";
  return `${Number(valueIn(what, units, si).toPrecision(3))}\u00A0${unitOf(what, units)}`;
}

/** Inflows to choose from, as the engine reads them. */
export const usualInflows: Record<UnitSystem, string[]> = {
  us: ["0.1 gph", "1 gph", "3 gph", "1 gpm", "10 gpm"],
  si: ["0.4 L/h", "4 L/h", "10 L/h", "4 L/min", "40 L/min"],
};

/** A number without a unit is in the one shown: of the inflow, or of the time. */
export function withUnit(typed: string, unit: string): string {
  const text = typed.trim();
  return /^(\d+([.,]\d*)?|[.,]\d+)$/.test(text) ? `${text.replace(",", ".")} ${unit}` : text;
}

/** A time as it is said; over two days in days; a dash where there is none. */
export function spanWords(seconds: number | null | undefined): string {
  const day = 86400;
  if (seconds === null || seconds === undefined) return "–";
  return seconds < 2 * day ? timeSpan(seconds) : `${digits(seconds / day, 1)}\u00A0d`;
}

interface FillRow {
  sump: Sump;
  path: string;
  cells: string[];
  /** The sensor tells only after the brim is passed. */
  late: boolean;
}

/** The columns of the fill table, and its rows for the first inflow of the document. */
export function fillHeads(units: UnitSystem): string[] {
  const volume = unitOf("volume", units);
  return [
    `To sensor, ${volume}`,
    `To lowest seal, ${volume}`,
    `To brim, ${volume}`,
    "Sensor wet after",
    "Seal wet after",
    "Over the brim after",
    "Sensor tells after",
    `Run in by then, ${volume}`,
  ];
}

export function fillRows(sumps: readonly Sump[], units: UnitSystem): FillRow[] {
  const volume = (si: number | null | undefined) => figure("volume", units, si);
  return sumps.map((sump) => {
    const fill = sump.fills[0];
    return {
      sump,
      path: pathOf(sump),
      late: fill?.runs_over_before ?? false,
      cells: [
        volume(sump.at_sensor_m3),
        volume(sump.at_lowest_seal_m3),
        volume(sump.brim_m3),
        spanWords(fill?.to_sensor_s),
        spanWords(fill?.to_lowest_seal_s),
        spanWords(fill?.to_brim_s),
        spanWords(fill?.sensor_tells_at_s),
        volume(fill?.volume_when_told_m3),
      ],
    };
  });
}

/** Time until a volume has run in at the first inflow, s. */
export function timeTo(sump: Sump, volume_m3: number): number | null {
  const inflow = sump.fills[0]?.inflow_m3_per_s;
  return inflow ? volume_m3 / inflow : null;
}
