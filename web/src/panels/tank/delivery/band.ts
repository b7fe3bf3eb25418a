/** The vapor band: from the tanks' vapor spaces to the tanker. Nothing here knows of the page. */
import { figure, unitOf, withUnit, type UnitSystem } from "../../../draw/numbers";
import { sidesOf } from "../../replay/view";
import type { Ullage } from "./documents";
import { hasVent, returnAt, ventAt, ventFlowAt } from "./state_at";
import { at, spaceOf } from "./trace";
import type { DropSide, DropView } from "./view";

export interface Cell {
  key: string;
  name: string;
  note: string;
  /** A number or a word to each choice. */
  shown: string[];
}

/** Why a course has no value at a time. */
const missing = (side: DropSide, t: number) => (t > side.trace.end ? "ended" : "not determined");

function pressure(side: DropSide, name: string, t: number, units: UnitSystem): string {
  const si = at(side.trace, name, t);
  return si === null ? missing(side, t) : figure("vapor pressure", units, si);
}

const ullageOf = (side: DropSide, space: string): Ullage | undefined =>
  side.run.ullages.find((u) => spaceOf(u) === space);

/** A state, with what flows. */
const stated = (word: string, flow: number | null, units: UnitSystem) =>
  flow === null || figure("flow", units, flow, 0) === "0"
    ? word
    : `${word}, ${withUnit("flow", units, Math.abs(flow), 0)}`;

export function ventWords(view: DropView, side: DropSide, space: string, t: number, units: UnitSystem): string {
  const ullage = ullageOf(side, space);
  if (!ullage) return "not determined";
  if (t > side.trace.end) return "ended";
  const state = ventAt(ullage, hasVent(view.document.result.runs, space), side.trace, t);
  return stated(state, state === "open" || state === "draws air" ? ventFlowAt(ullage, side.trace, t) : null, units);
}

export function returnWords(side: DropSide, space: string, t: number, units: UnitSystem): string {
  const ullage = ullageOf(side, space);
  if (!ullage) return "not determined";
  if (t > side.trace.end) return "ended";
  const state = returnAt(side.run, ullage, side.trace, t);
  const flow = at(side.trace, `return ${space}`, t);
  if (state !== "on" || flow === null) return state;
  return stated(flow < 0 ? "back to the tank" : "to the truck", flow, units);
}

function tankerWords(side: DropSide, t: number, units: UnitSystem): string {
  return side.run.truck.closed_to_ullage ? pressure(side, "truck", t, units) : "open to the air";
}

/** The setting of an ullage's vent, in words. */
function settingWords(view: DropView, space: string, units: UnitSystem): string {
  const known = sidesOf(view).flatMap((s) => ullageOf(s, space)?.vent_opens_at_pa ?? []);
  return known[0] === undefined ? "vapor outward" : `opens at ${withUnit("vapor pressure", units, known[0])}`;
}

/** The cells in the order of the path, A before B in each. */
export function bandAt(view: DropView, t: number, units: UnitSystem): Cell[] {
  const sides = sidesOf(view);
  const spaces = view.a.run.ullages.map(spaceOf);
  const each = (shown: (side: DropSide) => string) => sides.map(shown);
  const unit = unitOf("vapor pressure", units);
  return [
    ...spaces.flatMap((s): Cell[] => [
      {
        key: `space ${s}`,
        name: `Vapor space ${s}`,
        note: unit,
        shown: each((x) => pressure(x, `pressure ${s}`, t, units)),
      },
      {
        key: `vent ${s}`,
        name: "Vent",
        note: settingWords(view, s, units),
        shown: each((x) => ventWords(view, x, s, t, units)),
      },
      {
        key: `return ${s}`,
        name: "Return riser and hose",
        note: "vapor",
        shown: each((x) => returnWords(x, s, t, units)),
      },
    ]),
    { key: "tanker", name: "Tanker", note: `above the load, ${unit}`, shown: each((x) => tankerWords(x, t, units)) },
  ];
}
