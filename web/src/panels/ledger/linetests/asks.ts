/** What the view is asked with. Nothing here knows of the page. */
import type { Units } from "../../../api/types";
import { digits, figure, siOf, unitOf, withUnit, withUnitOr } from "../../../draw/numbers";
import type { KnownLine } from "./documents";

export type AskKey =
  | "warmer"
  | "time_constant"
  | "expansion"
  | "line_expansion"
  | "ground_conductivity"
  | "ground_heat"
  | "compliance"
  | "per_degree"
  | "vapor"
  | "pressure"
  | "wait"
  | "duration"
  | "drop"
  | "measured"
  | "find"
  | "leak"
  | "exponent"
  | "quiet"
  | "stopped";

interface AskOf {
  key: AskKey;
  label: string;
  /** Of a number typed without one. */
  unit: Record<Units, string>;
}

const each = (unit: string): Record<Units, string> => ({ us: unit, si: unit });
const perDegree = { us: "1/degF", si: "1/degC" };
const [pressure, rate, hours] = [{ us: "psi", si: "kPa" }, { us: "gph", si: "L/h" }, each("h")];

export const askGroups: readonly { name: string; asks: readonly AskOf[] }[] = [
  {
    name: "Fuel, ground and line",
    asks: [
      { key: "warmer", label: "Fuel warmer than the ground", unit: { us: "degF", si: "degC" } },
      { key: "time_constant", label: "Time constant of the line", unit: hours },
      { key: "expansion", label: "Expansion of the fuel", unit: perDegree },
      { key: "line_expansion", label: "Expansion of the line", unit: perDegree },
      { key: "ground_conductivity", label: "Conductivity of the ground", unit: each("W/m.K") },
      { key: "ground_heat", label: "Heat of the ground, by volume", unit: each("kJ/m3.K") },
      { key: "compliance", label: "Volume the line yields by pressure", unit: { us: "gal/psi", si: "L/kPa" } },
      { key: "per_degree", label: "Pressure per degree, shut", unit: { us: "psi/degF", si: "kPa/degC" } },
      { key: "vapor", label: "Trapped vapor", unit: { us: "gal", si: "L" } },
    ],
  },
  {
    name: "The test",
    asks: [
      { key: "pressure", label: "Test pressure", unit: pressure },
      { key: "wait", label: "Wait before it", unit: hours },
      { key: "duration", label: "Duration", unit: hours },
      { key: "drop", label: "Passes with a drop up to", unit: pressure },
      { key: "measured", label: "Drop that was read", unit: pressure },
      { key: "find", label: "Leak it is to find", unit: rate },
    ],
  },
  {
    name: "A leak beside it",
    asks: [
      { key: "leak", label: "Leak", unit: rate },
      { key: "exponent", label: "Its exponent", unit: each("") },
    ],
  },
  {
    name: "The pump at rest",
    asks: [
      { key: "quiet", label: "Quiet times in a day", unit: hours },
      { key: "stopped", label: "Stands before it starts", unit: hours },
    ],
  },
];
export const askKeys = askGroups.flatMap((g) => g.asks.map((a) => a.key));

const spoken = (text: string) => text.trim().replace(/\u2212/g, "-");
/** The unit of a typed value, with what stands before it. */
const unitIn = (text: string) => /[a-z%"'°].*$/i.exec(text)?.[0] ?? "";

/** What parts the values where several may be typed: "5 to 18 degF"; "5 h, 2 h". */
const parting: Partial<Record<AskKey, { at: RegExp; with: string }>> = {
  warmer: { at: /\s+to\s+/, with: " to " },
  quiet: { at: /[;,]\s*|\s+and\s+/, with: ", " },
};

/** Every value as typed; one without a unit has that of the last. */
export function valuesOf(key: AskKey, typed: string): string[] {
  const parted = parting[key];
  const values = (parted ? typed.split(parted.at) : [typed]).map(spoken).filter((t) => t !== "");
  const last = unitIn(values.at(-1) ?? "");
  return values.map((v) => withUnitOr(v, last));
}

/** As it is kept, each with a unit. */
export const keptAs = (key: AskKey, typed: string, unit: string): string =>
  valuesOf(key, typed)
    .map((v) => withUnitOr(v, unit))
    .join(parting[key]?.with ?? "");

/** The members of a want; what is left empty is left out. */
export function wantOf(typed: Partial<Record<AskKey, string>>): Record<string, string | string[]> {
  const out: Record<string, string | string[]> = {};
  for (const key of askKeys) {
    const values = valuesOf(key, typed[key] ?? "");
    if (values.length) out[key] = parting[key] ? values : (values[0] ?? "");
  }
  return out;
}

/** The value that the engine could not read, if its words begin with the name of one. */
export const refusedKey = (error: string): AskKey | null => askKeys.find((key) => error.startsWith(`${key} `)) ?? null;

/** "2.5 h", "45.0 min": times of a test are told in hours from two hours on. */
export const hoursOrMinutes = (s: number) =>
  s < 7200 ? `${digits(s / 60, 1)}\u00A0min` : `${digits(s / 3600, 1)}\u00A0h`;

/** A leak rate as everywhere in this view. */
export const rateWords = (units: Units, si: number | null) =>
  si === null ? "not determined" : `${figure("leak", units, si, 3)}\u00A0${unitOf("leak", units)}`;

const differences = (units: Units, low: number, high: number) => {
  const shown = (si: number) => figure("temperature difference", units, si, 1);
  const unit = unitOf("temperature difference", units);
  return low === high ? `${shown(low)}\u00A0${unit}` : `${shown(low)} to ${shown(high)}\u00A0${unit}`;
};

const expansionWords = (units: Units, per_k: number) =>
  `${digits(per_k * siOf("temperature difference", units, 1), 6)}\u00A01/${unitOf("temperature difference", units)}`;

/** What holds where nothing is asked for: a value in use, or what is missing. */
export function heldFor(key: AskKey, line: KnownLine | null, units: Units): string {
  const thermal = line && line.thermal.problem === null ? line.thermal : null;
  const test = line?.pressure_test;
  switch (key) {
    case "warmer":
      return thermal ? differences(units, thermal.warmer_k.low, thermal.warmer_k.high) : "not determined";
    case "time_constant":
      return !thermal || thermal.time_constant_s === null
        ? "not determined"
        : hoursOrMinutes(thermal.time_constant_s);
    case "expansion":
      return thermal ? expansionWords(units, thermal.fuel_expansion_per_k) : "not determined";
    case "line_expansion":
      if (!thermal) return "not determined";
      return thermal.line_expansion_per_k === 0 ? "left out" : expansionWords(units, thermal.line_expansion_per_k);
    case "per_degree":
      return test?.per_degree_pa_per_k ? withUnit("per degree", units, test.per_degree_pa_per_k) : "not determined";
    case "pressure":
      return test?.start_pressure_gauge_pa
        ? withUnit("pressure", units, test.start_pressure_gauge_pa)
        : line?.held_pressure_gauge_pa
          ? "1.5 × held"
          : "not determined";
    case "duration":
      return test ? hoursOrMinutes(test.duration_s) : "not determined";
    case "find":
      return rateWords(units, line?.volume_test.find_m3_per_s ?? null);
    case "quiet":
      return "the night";
    case "ground_conductivity":
    case "ground_heat":
      return "damp sand";
    case "compliance":
      return test?.per_degree_pa_per_k ? "by its pipe" : "not determined";
    case "exponent":
      return "0.5 to 1";
    case "drop":
    case "measured":
    case "stopped":
      return "not asked";
    default:
      return "none";
  }
}
