import { figure, unitOf, type Quantity, type UnitSystem } from "../../draw/numbers";
import type { State } from "./status";

type Known = number | null;

/** A requirement held against what was computed; limit, value and margin in SI. */
export interface Finding {
  rule: string;
  requirement: string;
  subject: string;
  state: State;
  /** Null: it is the user's own target. */
  clause: string | null;
  edition: string | null;
  clause_verified: boolean;
  limit: Known;
  value: Known;
  /** Positive: the limit is met by this much. */
  margin: Known;
  unit: string;
  reason: string | null;
  change: string | null;
  line: number | null;
  path: string | null;
}

const quantities: Record<string, Quantity> = {
  "m3/s": "flow",
  Pa: "pressure",
  m: "length",
  "m/s": "velocity",
  K: "temperature",
  m3: "volume",
  s: "time",
};
/** What a value in this SI unit is; a unit that is not known is shown as it is. */
export const quantityOf = (unit: string): Quantity => quantities[unit] ?? "one";

/** A value of a finding with the unit shown. */
export function withShownUnit(text: string, unit: string, units: UnitSystem): string {
  const shown = quantities[unit] ? unitOf(quantityOf(unit), units) : unit;
  return shown ? `${text}\u00A0${shown}` : text;
}

/** A value of a finding in the unit shown. */
export const findingValue = (si: number, { unit }: Finding, units: UnitSystem, decimals: number) =>
  withShownUnit(figure(quantityOf(unit), units, si, decimals), unit, units);
