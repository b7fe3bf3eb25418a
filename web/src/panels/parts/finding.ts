import { figure, timeBy, unitOf, type Quantity, type UnitSystem } from "../../draw/numbers";
import type { State } from "./status";

type Known = number | null;

/** A requirement held against what was computed; limit, value and margin in SI. */
export interface Finding {
  /** That it comes from; the answer of one study does not name it. */
  study?: "flow" | "tank" | "delivery" | "vapor" | "flotation" | "line-test" | "ledger" | "meter" | null;
  /** Title of the rule set that it is of, where it is of one. */
  set?: string | null;
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
  /** What the values are of: pressures of vapor are shown in inches of water, leaks by the hour, ages in days. */
  of: "fuel" | "vapor" | "leak" | "draw" | "age";
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
  N: "force",
  s: "time",
  share: "share",
};
const quantitiesOf: Record<Finding["of"], Record<string, Quantity>> = {
  fuel: {},
  vapor: { "m3/s": "vapor leak", Pa: "vapor pressure", m: "bore" },
  leak: { "m3/s": "leak" },
  draw: { m3: "draw" },
  age: { s: "age" },
};

type Measured = Pick<Finding, "unit" | "of"> & { limit?: Known; value?: Known };

/** Lengths below this are shown in inches or millimeters [m]; the same as short_length of report/findings.cpp. */
const short = 0.5;

const lengthBy = (limit: number): Quantity => (Math.abs(limit) < short ? "bore" : "length");

/** What the values of a finding are, lengths and times by the size of its limit, times without one by that of its value;
 * a unit that is not known is shown as it is. */
export function quantityOf({ unit, of, limit, value }: Measured): Quantity {
  const known = quantitiesOf[of][unit] ?? quantities[unit] ?? "one";
  if (known === "time") return timeBy(Math.abs(limit ?? value ?? 0));
  return known === "length" && typeof limit === "number" ? lengthBy(limit) : known;
}

/** A value of a finding with the unit shown. */
export function withShownUnit(text: string, finding: Measured, units: UnitSystem): string {
  const quantity = quantityOf(finding);
  const shown = quantity === "one" ? finding.unit : unitOf(quantity, units);
  return shown ? `${text}\u00A0${shown}` : text;
}

/** A value of a finding in the unit shown. */
export const findingValue = (si: number, finding: Finding, units: UnitSystem, decimals: number) =>
  withShownUnit(figure(quantityOf(finding), units, si, decimals), finding, units);
