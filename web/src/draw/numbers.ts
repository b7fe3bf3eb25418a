import { flowUnits, shownUnits } from "../api/units";

/** Numbers as they are shown: chosen units, settled decimals, a true minus, a no-break space between groups of three.
 * Values come in SI. Nothing here knows of the page. */
export type UnitSystem = "us" | "si";
export type Quantity =
  | keyof typeof shownUnits
  | "time"
  | "minutes"
  | "hours"
  | "age"
  | "share"
  | "one";

interface Shown {
  unit: string;
  /** SI in one of this unit. */
  size: number;
  /** SI value at its zero. */
  zero: number;
}

const bare = (unit: string, size: number): Record<UnitSystem, Shown> => ({
  us: { unit, size, zero: 0 },
  si: { unit, size, zero: 0 },
});
const shownAs: Record<Quantity, Record<UnitSystem, Shown>> = {
  ...shownUnits,
  time: bare("s", 1),
  minutes: bare("min", 60),
  hours: bare("h", 3600),
  age: bare("d", 86400),
  share: bare("%", 0.01),
  one: bare("", 1),
};

/** Decimals that a quantity is shown with where nothing else decides: US, SI. */
const decimalsAs: Record<Quantity, Record<UnitSystem, number>> = {
  flow: { us: 1, si: 1 },
  leak: { us: 2, si: 2 },
  pressure: { us: 1, si: 0 },
  "vapor pressure": { us: 1, si: 0 },
  "vapor leak": { us: 2, si: 2 },
  length: { us: 1, si: 2 },
  bore: { us: 2, si: 1 },
  velocity: { us: 1, si: 2 },
  volume: { us: 1, si: 1 },
  temperature: { us: 1, si: 1 },
  "temperature difference": { us: 1, si: 1 },
  "per degree": { us: 1, si: 0 },
  caught: { us: 0, si: 0 },
  draw: { us: 1, si: 0 },
  force: { us: 0, si: 0 },
  heat: { us: 0, si: 0 },
  "heat flux": { us: 2, si: 2 },
  time: { us: 1, si: 1 },
  minutes: { us: 1, si: 1 },
  hours: { us: 1, si: 1 },
  age: { us: 0, si: 0 },
  share: { us: 1, si: 1 },
  "square loss": { us: 4, si: 5 },
  one: { us: 2, si: 2 },
};

export const unitOf = (what: Quantity, units: UnitSystem) => shownAs[what][units].unit;
export const decimalsOf = (what: Quantity, units: UnitSystem) => decimalsAs[what][units];

/** In the unit shown, not rounded. */
export function valueIn(what: Quantity, units: UnitSystem, si: number): number {
  const { size, zero } = shownAs[what][units];
  return (si - zero) / size;
}

/** Back to SI from a number in the unit shown. */
export function siOf(what: Quantity, units: UnitSystem, value: number): number {
  const { size, zero } = shownAs[what][units];
  return zero + value * size;
}

/** A number that is already in the unit shown. */
export function digits(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return "–";
  const text = Math.abs(value).toFixed(decimals);
  const [whole = "", part] = text.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, "\u00A0");
  const minus = value < 0 && Number(text) !== 0 ? "−" : "";
  return minus + grouped + (part ? `.${part}` : "");
}

/** Without its unit; a dash where there is no value. */
export const figure = (
  what: Quantity,
  units: UnitSystem,
  si: number | null | undefined,
  decimals = decimalsOf(what, units),
) => (si === null || si === undefined ? "–" : digits(valueIn(what, units, si), decimals));

/** Decimals of an amount that a model gives, in the unit shown: no more than three digits that count, two decimals under
 * ten. */
export function amountDecimals(value: number): number {
  const size = Math.abs(value);
  return size < 9.995 ? 2 : size < 99.95 ? 1 : 0;
}

/** A volume that a model gives, without its unit. */
export const amount = (units: UnitSystem, si: number | null | undefined) =>
  figure("volume", units, si, amountDecimals(valueIn("volume", units, si ?? 0)));

/** "0.46 to 592", or one number where both show the same. */
export function amountSpan(units: UnitSystem, low: number, high: number): string {
  const [from, to] = [amount(units, low), amount(units, high)];
  return from === to ? from : `${from} to ${to}`;
}

export function withUnit(
  what: Quantity,
  units: UnitSystem,
  si: number | null | undefined,
  decimals = decimalsOf(what, units),
) {
  const unit = unitOf(what, units);
  return figure(what, units, si, decimals) + (unit ? `\u00A0${unit}` : "");
}

/** Decimals with which a value and its limit are told apart where they differ; no more than three more than usual. */
export function decimalsApart(what: Quantity, units: UnitSystem, si: number, limit: number): number {
  const usual = decimalsOf(what, units);
  const equal = Math.abs(si - limit) <= 1e-9 * Math.max(Math.abs(si), Math.abs(limit));
  for (let d = usual; !equal && d <= usual + 3; ++d) {
    if (figure(what, units, si, d) !== figure(what, units, limit, d)) return d;
  }
  return usual;
}

/** "9.2 to 10.0", or one number where both show the same. */
export function span(
  what: Quantity,
  units: UnitSystem,
  low: number,
  high: number,
  decimals = decimalsOf(what, units),
): string {
  const [from, to] = [figure(what, units, low, decimals), figure(what, units, high, decimals)];
  return from === to ? from : `${from} to ${to}`;
}

/** With a plus sign where it is more than nothing. */
export function signed(value: number, decimals: number): string {
  const text = digits(value, decimals);
  return value > 0 && Number(Math.abs(value).toFixed(decimals)) !== 0 ? `+${text}` : text;
}

/** Difference of two values as they are shown, so that it agrees with them; in the unit shown. */
export function shownChange(
  what: Quantity,
  units: UnitSystem,
  from: number,
  to: number,
  decimals = decimalsOf(what, units),
) {
  const steps = 10 ** decimals;
  const rounded = (si: number) => Math.round(valueIn(what, units, si) * steps);
  return (rounded(to) - rounded(from)) / steps;
}

/** Whole steps for each part, so that the steps of all are exactly `sum`; the largest rests are rounded up first. */
export function apportion(parts: readonly number[], sum: number): number[] {
  const out = parts.map(Math.floor);
  const rest = (i: number) => (parts[i] ?? 0) - Math.floor(parts[i] ?? 0);
  const order = parts.map((_, i) => i).sort((a, b) => rest(b) - rest(a) || a - b);
  let missing = sum - out.reduce((all, one) => all + one, 0);
  const give = (k: number, step: number) => {
    const at = order[k];
    if (at !== undefined) out[at] = (out[at] ?? 0) + step;
  };
  for (let k = 0; missing > 0 && order.length; ++k, --missing) give(k % order.length, 1);
  for (let k = 0; missing < 0 && order.length; ++k, ++missing) give(order.length - 1 - (k % order.length), -1);
  return out;
}

/** Seconds under two minutes, minutes under two hours, hours. */
export const timeBy = (seconds: number): Quantity => (seconds < 120 ? "time" : seconds < 7200 ? "minutes" : "hours");

/** Seconds as said: "0.08 s", "12.4 s", "3.5 min", "2.1 h". */
export function timeSpan(seconds: number): string {
  if (!Number.isFinite(seconds)) return "–";
  return withUnit(timeBy(seconds), "si", seconds, seconds > 0 && seconds < 0.095 ? 2 : 1);
}

/** Ticks of an axis from nothing to at least `most`, in steps of 1, 2, 2.5 or 5. */
export function ticks(most: number, about = 4): number[] {
  if (!(most > 0)) return [0, 1];
  const power = 10 ** Math.floor(Math.log10(most / about));
  const step = [1, 2, 2.5, 5, 10].map((s) => s * power).find((s) => most / s <= about) ?? 10 * power;
  const count = Math.ceil(most / step - 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => i * step);
}

const flowSizes = new Map(Object.entries(flowUnits).map(([unit, size]) => [unit.toLowerCase(), size]));

/** A flow as typed; without a unit it is in the one shown. Says in words what cannot be read. */
export function readFlow(typed: string, units: UnitSystem): { si: number } | { problem: string } {
  const match = /^\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*(.*?)\s*$/.exec(typed);
  if (!match) return { problem: `"${typed.trim()}" is not a flow. Type a number with gpm, gph, L/min or m3/h.` };
  const unit = (match[2] ?? "").toLowerCase();
  const size = unit === "" ? shownAs.flow[units].size : flowSizes.get(unit);
  if (size === undefined) return { problem: `"${match[2]}" is not a unit of flow. Use gpm, gph, L/min or m3/h.` };
  const si = Number((match[1] ?? "").replace(",", ".")) * size;
  return si > 0 ? { si } : { problem: "A flow to keep is more than nothing." };
}

/** A typed value with a unit, where none was typed. */
export const withUnitOr = (typed: string, unit: string) =>
  unit === "" || typed.trim() === "" || /[a-z%"'°]/i.test(typed) ? typed.trim() : `${typed.trim()} ${unit}`;
