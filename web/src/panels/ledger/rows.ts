import { dateOf, daysIn } from "../../draw/days";
import { apportion, digits, valueIn, type UnitSystem } from "../../draw/numbers";
import type { Explained, LedgerBook, LedgerRow } from "./documents";

/** The rows that are explained. */
export const periodOf = (book: LedgerBook): LedgerRow[] => book.rows.slice(book.period.from_row, book.period.to_row);

/** The day to fill next belongs below the rows that are shown: nothing was read behind them. */
export const endsTheBook = (book: LedgerBook) => book.period.to_row === book.rows.length;

/** The limit of the running sum from the last row to the end of its month, if sales go on as they did; null: the month
 * is over. */
export function limitAhead(rows: readonly LedgerRow[]): { date: number; limit_m3: number } | null {
  const last = rows.at(-1);
  if (!last) return null;
  const days = daysIn(last.day.slice(0, 7));
  const left = days - dateOf(last.day);
  if (left <= 0) return null;
  const mean = rows.reduce((sum, row) => sum + row.sold_m3, 0) / rows.length;
  return { date: days, limit_m3: last.limit_m3 + 0.01 * mean * left };
}

/** Round steps that hold zero, from below `low` to above `high`. */
export function axisOf(low: number, high: number, about = 5): number[] {
  const reach = Math.max(high - low, 1e-9);
  const power = 10 ** Math.floor(Math.log10(reach / about));
  const step = [1, 2, 2.5, 5, 10].map((s) => s * power).find((s) => reach / s <= about) ?? 10 * power;
  const from = Math.floor(Math.min(low, 0) / step + 1e-9);
  const to = Math.ceil(Math.max(high, 0) / step - 1e-9);
  return Array.from({ length: to - from + 1 }, (_, i) => (from + i) * step);
}

/** A bar of the waterfall, in the unit shown. */
export interface Fall {
  name: string;
  kind: "term" | "rest" | "sum";
  from: number;
  to: number;
  /** Standard error; null: none was given. */
  error: number | null;
  /** "−228 ± 38" */
  words: string;
}

/** The terms one after the other, what they leave, and the sum that they make. The shown figures add up. */
export function fallsOf(told: Explained, deviation_m3: number | null, units: UnitSystem): Fall[] {
  const shown = (si: number) => valueIn("volume", units, si);
  const known = told.terms.filter((t) => t.volume_m3 !== null);
  const parts = [...known.map((t) => shown(t.volume_m3 ?? 0)), shown(told.unexplained_m3)];
  const figures = apportion(parts, Math.round(shown(told.over_short_m3)));
  const errorOf = (si: number | null) => (si === null ? null : shown(si));
  const words = (i: number, error: number | null) => digits(figures[i] ?? 0, 0) + (error === null ? "" : ` ± ${digits(error, 0)}`);
  let at = 0;
  const falls: Fall[] = known.map((term, i) => {
    const error = errorOf(term.standard_error_m3);
    const from = at;
    at += parts[i] ?? 0;
    return { name: term.cause, kind: "term", from, to: at, error, words: words(i, error) };
  });
  const rest = errorOf(told.standard_error_m3);
  const sum = shown(told.over_short_m3);
  falls.push({ name: "not explained", kind: "rest", from: at, to: sum, error: rest, words: words(known.length, rest) });
  const error = errorOf(deviation_m3);
  falls.push({
    name: "over or short", kind: "sum", from: 0, to: sum, error,
    words: digits(Math.round(sum), 0) + (error === null ? "" : ` ± ${digits(error, 0)}`),
  });
  return falls;
}

/** Causes that nothing is known of, with what to enter. */
export const notKnown = (told: Explained) => told.terms.filter((t) => t.volume_m3 === null);

/** A depth as it is read: inches to the eighth that a stick shows, others to two decimals; whole millimeters. */
export function dipWords(depth_m: number | null, units: UnitSystem): string {
  if (depth_m === null) return "";
  const shown = valueIn("bore", units, depth_m);
  if (units === "si") return digits(shown, 0);
  const eighths = Math.round(shown * 8) / 8;
  return Math.abs(shown - eighths) > 0.003 ? digits(shown, 2) : digits(eighths, 3).replace(/\.?0+$/, "");
}

/** What is typed below the last day. */
export type Column = "dip" | "delivered" | "sold";
export const columns: readonly Column[] = ["dip", "delivered", "sold"];

/** The row of the store that a typed value makes; what stands in the station's names and days comes from the book. */
export function rowOf(column: Column, book: LedgerBook, text: string): { kind: string; values: Record<string, string | null> } | null {
  const { next, tanks } = book;
  const tank = tanks[0];
  if (!next || tanks.length !== 1 || !tank) return null;
  if (column === "dip") return { kind: "dips", values: { day: next.day, time: next.time, tank, depth: text } };
  const business = { day: next.business_day, tank };
  if (column === "sold") return { kind: "sales", values: { ...business, volume: text } };
  // Each delivery of a day is a row of its own; its number tells it from the others.
  const ticket = `entered ${next.deliveries + 1}`;
  return { kind: "deliveries", values: { ...business, gross: text, ticket } };
}
