/** Numbers as they are shown: chosen units, settled decimals, a true minus, a no-break space between groups of three.
 * Values come in SI. Nothing here knows of the page. */
export type UnitSystem = "us" | "si";
export type Quantity =
  | "flow"
  | "pressure"
  | "length"
  | "bore"
  | "velocity"
  | "volume"
  | "temperature"
  | "time"
  | "share"
  | "square loss"
  | "one";

interface Shown {
  unit: string;
  /** SI in one of this unit. */
  size: number;
  decimals: number;
  /** Added after the division, for scales with a zero of their own. */
  shift?: number;
}

const litre = 1e-3;
const gallon = 3.785411784e-3;
const psi = 6894.757293168361;
const minute = 60;
const foot = 0.3048;

const shownAs: Record<Quantity, Record<UnitSystem, Shown>> = {
  flow: {
    us: { unit: "gpm", size: gallon / minute, decimals: 1 },
    si: { unit: "L/min", size: litre / minute, decimals: 1 },
  },
  pressure: { us: { unit: "psi", size: psi, decimals: 1 }, si: { unit: "kPa", size: 1e3, decimals: 0 } },
  length: { us: { unit: "ft", size: foot, decimals: 1 }, si: { unit: "m", size: 1, decimals: 2 } },
  bore: { us: { unit: "in", size: foot / 12, decimals: 2 }, si: { unit: "mm", size: 1e-3, decimals: 1 } },
  velocity: { us: { unit: "ft/s", size: foot, decimals: 1 }, si: { unit: "m/s", size: 1, decimals: 2 } },
  volume: { us: { unit: "gal", size: gallon, decimals: 1 }, si: { unit: "L", size: litre, decimals: 1 } },
  temperature: {
    us: { unit: "°F", size: 5 / 9, shift: -459.67, decimals: 1 },
    si: { unit: "°C", size: 1, shift: -273.15, decimals: 1 },
  },
  time: { us: { unit: "s", size: 1, decimals: 1 }, si: { unit: "s", size: 1, decimals: 1 } },
  share: { us: { unit: "%", size: 0.01, decimals: 1 }, si: { unit: "%", size: 0.01, decimals: 1 } },
  "square loss": {
    us: { unit: "psi/gpm²", size: psi / (gallon / minute) ** 2, decimals: 4 },
    si: { unit: "kPa·min²/L²", size: 1e3 / (litre / minute) ** 2, decimals: 5 },
  },
  one: { us: { unit: "", size: 1, decimals: 2 }, si: { unit: "", size: 1, decimals: 2 } },
};

export const unitOf = (what: Quantity, units: UnitSystem) => shownAs[what][units].unit;
export const decimalsOf = (what: Quantity, units: UnitSystem) => shownAs[what][units].decimals;

/** In the unit shown, not rounded. */
export function valueIn(what: Quantity, units: UnitSystem, si: number): number {
  const { size, shift } = shownAs[what][units];
  return si / size + (shift ?? 0);
}

/** Back to SI from a number in the unit shown. */
export function siOf(what: Quantity, units: UnitSystem, value: number): number {
  const { size, shift } = shownAs[what][units];
  return (value - (shift ?? 0)) * size;
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

/** Seconds as said: "0.08 s", "12.4 s", "3.5 min", "2.1 h". */
export function timeSpan(seconds: number): string {
  if (!Number.isFinite(seconds)) return "–";
  if (seconds < 120) return `${digits(seconds, seconds > 0 && seconds < 0.095 ? 2 : 1)}\u00A0s`;
  if (seconds < 7200) return `${digits(seconds / 60, 1)}\u00A0min`;
  return `${digits(seconds / 3600, 1)}\u00A0h`;
}

/** Ticks of an axis from nothing to at least `most`, in steps of 1, 2, 2.5 or 5. */
export function ticks(most: number, about = 4): number[] {
  if (!(most > 0)) return [0, 1];
  const power = 10 ** Math.floor(Math.log10(most / about));
  const step = [1, 2, 2.5, 5, 10].map((s) => s * power).find((s) => most / s <= about) ?? 10 * power;
  const count = Math.ceil(most / step - 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => i * step);
}

const flowUnits: Record<string, number> = {
  gpm: gallon / minute,
  "gal/min": gallon / minute,
  "l/min": litre / minute,
  lpm: litre / minute,
  gph: gallon / 3600,
  "gal/h": gallon / 3600,
  "l/h": litre / 3600,
  "l/s": litre,
  "m3/h": 1 / 3600,
  "m3/s": 1,
};

/** A flow as typed; without a unit it is in the one shown. Says in words what cannot be read. */
export function readFlow(typed: string, units: UnitSystem): { si: number } | { problem: string } {
  const match = /^\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*(.*?)\s*$/.exec(typed);
  if (!match) return { problem: `"${typed.trim()}" is not a flow. Type a number with gpm, gph, L/min or m3/h.` };
  const unit = (match[2] ?? "").toLowerCase();
  const size = unit === "" ? shownAs.flow[units].size : flowUnits[unit];
  if (size === undefined) return { problem: `"${match[2]}" is not a unit of flow. Use gpm, gph, L/min or m3/h.` };
  const si = Number((match[1] ?? "").replace(",", ".")) * size;
  return si > 0 ? { si } : { problem: "A flow to keep is more than nothing." };
}
