import { outside } from "../../../draw/curve_trace";
import { apportion, valueIn, type UnitSystem } from "../../../draw/numbers";
import type { IncidentRun, LedgerLine } from "./documents";

/** A line of the ledger as it is shown, in whole steps of the last decimal. */
export interface ShownLine {
  from: string;
  to: string;
  product: string;
  cause: string;
  steps: number;
}

/** What a place held and holds. */
interface ShownPlace {
  place: string;
  start: number;
  in: number;
  out: number;
  end: number;
}

interface ShownLedger {
  /** What leaves the equipment: adds up to `lost`. */
  escapes: ShownLine[];
  /** All that has escaped, steps. */
  lost: number;
  /** What moves otherwise. */
  moves: ShownLine[];
  /** Start and in less out is end, as shown. */
  places: ShownPlace[];
}

const isOutside = (place: string) => (outside as readonly string[]).includes(place);
const escapes = (line: LedgerLine) => isOutside(line.to) && !isOutside(line.from);

/** Whole steps for each line: first for each place they go to, then among the lines to it, so that places agree with
 * what is shown of them elsewhere. */
function sharedOut(lines: readonly LedgerLine[], sum: number, steps: (si: number) => number): number[] {
  const places = [...new Set(lines.map((l) => l.to))];
  const to = (place: string) => lines.flatMap((l, i) => (l.to === place ? [i] : []));
  const amount = (i: number) => steps(lines[i]?.amount_m3 ?? 0);
  const whole = apportion(places.map((p) => to(p).reduce((all, i) => all + amount(i), 0)), sum);
  const out: number[] = [];
  places.forEach((place, k) => {
    const at = to(place);
    apportion(at.map(amount), whole[k] ?? 0).forEach((size, j) => (out[at[j] ?? 0] = size));
  });
  return out;
}

/** The ledger in steps of the shown decimals. Every place's end is its shown start and its shown lines, so that all
 * adds up as shown. */
export function shownLedger(run: IncidentRun, units: UnitSystem, decimals: number): ShownLedger {
  const steps = (si: number) => valueIn("volume", units, si) * 10 ** decimals;
  const line = (told: LedgerLine, size: number): ShownLine => ({
    from: told.from,
    to: told.to,
    product: told.product,
    cause: told.cause,
    steps: size,
  });
  const out = run.ledger.filter(escapes);
  const lost = Math.round(steps(run.escaped_m3));
  const sizes = sharedOut(out, lost, steps);
  const escaped = out.map((l, i) => line(l, sizes[i] ?? 0));
  const moves = run.ledger.filter((l) => !escapes(l)).map((l) => line(l, Math.round(steps(l.amount_m3))));
  const all = [...escaped, ...moves];
  const sum = (lines: ShownLine[]) => lines.reduce((total, l) => total + l.steps, 0);
  const places = run.amounts.flatMap(({ holder, start_m3 }) => {
    const start = Math.round(steps(start_m3));
    const into = sum(all.filter((l) => l.to === holder));
    const from = sum(all.filter((l) => l.from === holder));
    return start || into || from ? [{ place: holder, start, in: into, out: from, end: start + into - from }] : [];
  });
  return { escapes: escaped, lost, moves, places };
}
