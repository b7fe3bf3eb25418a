/** The vapor band: from the vehicle over a vapor space to the tanker. Nothing here knows of the page. */
import { figure, withUnit, type UnitSystem } from "../../../draw/numbers";
import { sidesOf } from "../../replay/view";
import type { Ullage } from "./documents";
import { hasVent, isHoseOn, returnAt, ventAt, ventFlowAt } from "./state_at";
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

/** At grade in the riser of the vapor return; with its dry break shut it stands at the pressure of the vapor space. */
function riserWords(side: DropSide, space: string, t: number, units: UnitSystem): string {
  const ullage = ullageOf(side, space);
  if (!ullage || ullage.problem !== null) return "not determined";
  return side.trace.courses.has(`riser ${space}`) ? pressure(side, `riser ${space}`, t, units) : "none";
}

/** Midway in the vapor hose, while a drop into one of its tanks has it on. */
function hoseWords(side: DropSide, space: string, t: number, units: UnitSystem): string {
  const ullage = ullageOf(side, space);
  if (t > side.trace.end) return "ended";
  if (!side.trace.courses.has(`vapor hose ${space}`)) return "off";
  return ullage && isHoseOn(side.run, ullage, t) ? pressure(side, `vapor hose ${space}`, t, units) : "off";
}

function tankerWords(side: DropSide, t: number, units: UnitSystem): string {
  if (t > side.trace.end) return "ended";
  return side.run.truck.closed_to_ullage ? pressure(side, "truck", t, units) : "open to the air";
}

/** The setting of an ullage's vent, in words. */
function settingWords(view: DropView, space: string, units: UnitSystem): string {
  const known = sidesOf(view).flatMap((s) => ullageOf(s, space)?.vent_opens_at_pa ?? []);
  return known[0] === undefined ? "without a valve" : `opens at ${withUnit("vapor pressure", units, known[0])}`;
}

/** The vapor spaces that the path of one of them can be shown of. */
export const spacesOf = (view: DropView) => view.a.run.ullages.map(spaceOf);

/** The seven cells of the path of a vapor space, from vehicle to tanker, A before B in each. */
export function bandAt(view: DropView, space: string, t: number, units: UnitSystem): Cell[] {
  const each = (shown: (side: DropSide) => string) => sidesOf(view).map(shown);
  return [
    { key: "vehicle", name: "Vehicle", note: "own canister", shown: each(() => "off") },
    { key: "nozzle", name: "Nozzle", note: "open air", shown: each(() => figure("vapor pressure", units, 0)) },
    { key: "space", name: "Tank vapor space", note: space, shown: each((s) => pressure(s, `pressure ${space}`, t, units)) },
    {
      key: "vent",
      name: "Vent",
      note: settingWords(view, space, units),
      shown: each((s) => ventWords(view, s, space, t, units)),
    },
    { key: "riser", name: "Return riser", note: "at grade", shown: each((s) => riserWords(s, space, t, units)) },
    { key: "hose", name: "Vapor hose", note: "middle", shown: each((s) => hoseWords(s, space, t, units)) },
    { key: "tanker", name: "Tanker", note: "above the load", shown: each((s) => tankerWords(s, t, units)) },
  ];
}
