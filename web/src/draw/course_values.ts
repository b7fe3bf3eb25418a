import { digits, timeSpan, withUnit, type Quantity, type UnitSystem } from "./numbers";

/** What the engine calls a quantity, and how it is shown. */
const shownAs: Readonly<Record<string, Quantity>> = {
  flow: "flow",
  leak: "leak",
  volume: "volume",
  pressure: "pressure",
  "ullage-pressure": "vapor pressure",
  length: "length",
  bore: "bore",
  velocity: "velocity",
  temperature: "temperature",
  "temperature-difference": "temperature difference",
  force: "force",
  heat: "heat",
  share: "share",
};

/** A value of a course at a moment; null: it has none, or is of a quantity that is not shown while it changes. */
export function courseText(quantity: string, units: UnitSystem, si: number | null): string | null {
  if (si === null) return null;
  if (quantity === "time") return timeSpan(si);
  if (quantity === "count") return digits(si, 0);
  const what = shownAs[quantity];
  return what ? withUnit(what, units, si) : null;
}
