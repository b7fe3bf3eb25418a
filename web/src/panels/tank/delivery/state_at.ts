/** How hoses, vents and vapor paths of a run stand at a time, in words and shares. Nothing here knows of the page. */
import type { DeliveryRun, Drop, Ullage } from "./documents";
import { at, restingAt, spaceOf, type DropTrace } from "./trace";

/** A flow below this is none, m3/s. */
const nothing = 1e-7;
/** Liquid below this is none, m3. */
const crumb = 1e-5;

export type VentState = "open" | "shut" | "draws air" | "blocked" | "none" | "not determined";

/** How the vents of an ullage stand. `known`: the vents that it has where none is blocked. */
export function ventAt(ullage: Ullage, known: boolean, trace: DropTrace, t: number): VentState {
  if (ullage.problem !== null) return "not determined";
  if (!ullage.vents.length) return known ? "blocked" : "none";
  const out = ventFlowAt(ullage, trace, t);
  if (out !== null && out < -nothing) return "draws air";
  if (ullage.vent_opens_at_pa === null) return "open";
  return out !== null && out > nothing ? "open" : "shut";
}

/** What leaves at the vents of an ullage, m3/s; null: not known then. */
export function ventFlowAt(ullage: Ullage, trace: DropTrace, t: number): number | null {
  const flows = ullage.vents.map((v) => at(trace, `vent ${v}`, t));
  return ullage.problem !== null || flows.includes(null) ? null : flows.reduce<number>((sum, f) => sum + (f ?? 0), 0);
}

/** Whether an ullage has a vent in any of the runs. */
export const hasVent = (runs: readonly DeliveryRun[], space: string) =>
  runs.some((r) => r.ullages.some((u) => spaceOf(u) === space && u.vents.length > 0));

export type ReturnState = "on" | "at rest" | "off" | "not determined";

/** How the way back to the truck stands: on while vapor goes either way. */
export function returnAt(run: DeliveryRun, ullage: Ullage, trace: DropTrace, t: number): ReturnState {
  if (ullage.problem !== null) return "not determined";
  if (!run.truck.closed_to_ullage) return "off";
  const flow = at(trace, `return ${spaceOf(ullage)}`, t);
  return flow !== null && Math.abs(flow) > nothing ? "on" : "at rest";
}

/** Whether the vapor hose is on: while a drop into one of the tanks of the ullage runs or its hose drains. */
export const isHoseOn = (run: DeliveryRun, ullage: Ullage, t: number) =>
  run.truck.closed_to_ullage &&
  run.drops.some(
    (d) => ullage.tanks.includes(d.tank) && d.begins_s !== null && t >= d.begins_s && (d.ends_s === null || t < d.ends_s),
  );

export interface HoseState {
  drop: Drop;
  /** It is on the fill. */
  joined: boolean;
  /** Share of it that holds liquid. */
  filled: number;
  flows: boolean;
}

/** The delivery hose of a drop: on the fill from its begin until it is over, and for good where liquid stays in it. */
export function hoseAt(drop: Drop, trace: DropTrace, t: number): HoseState {
  const begun = drop.begins_s !== null && t >= drop.begins_s;
  const stays = drop.left_in_hose_m3 > crumb;
  const joined = begun && (stays || drop.ends_s === null || t < drop.ends_s);
  const held = restingAt(trace, `hose ${drop.compartment}`, t) ?? 0;
  const rate = at(trace, `rate ${drop.compartment}`, t) ?? 0;
  return { drop, joined, filled: joined ? Math.min(1, held / drop.hose_holds_m3) : 0, flows: joined && rate > nothing };
}

function endedAs(run: DeliveryRun): string {
  if (run.all_dropped) return "all is in the tanks";
  if (run.stalled) return "stalled";
  const ends = run.drops.flatMap(({ compartment, end }) => (end === "emptied" ? [] : [`${compartment} ${end}`]));
  return ends.length ? ends.join(", ") : "ended";
}

/** What the driver does at a time, in a word or two: what flows where. */
export function doingAt(run: DeliveryRun, trace: DropTrace, t: number): string {
  if (t >= trace.end) return endedAs(run);
  const now = run.drops.map((d) => hoseAt(d, trace, t)).filter((h) => h.flows);
  if (now.length) return now.map(({ drop }) => `${drop.product} into ${drop.tank}`).join(" and ");
  const held = run.drops.find((d) => hoseAt(d, trace, t).joined);
  return held ? `nothing flows into ${held.tank}` : "hoses are changed over";
}
