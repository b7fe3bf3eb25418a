import type { Form, QuestionTold } from "./told";

/** What the room said: hands for each answer, or numbers. */
export interface Tally {
  /** Hands for each row. */
  counts: readonly number[];
  /** The row that digits go to. */
  row: number;
  /** Typed since the row was chosen, or since the last number was entered. */
  typed: string;
  /** In the unit shown. */
  estimates: readonly number[];
}

export type TallyAction =
  | { do: "row"; way: 1 | -1 }
  | { do: "type"; text: string }
  | { do: "erase" }
  | { do: "enter" }
  /** One hand more or less for a row. */
  | { do: "hand"; row: number; by: 1 | -1 };

export const mostHands = 999;
export const letterOf = (row: number) => String.fromCharCode(65 + row);
const takesNumbers = (form: Form) => form === "estimate";

/** Rows of hands of an order: those who had it, those who did not. */
export const orderRows = ["in this order", "otherwise"] as const;
export const rowCount = (q: QuestionTold) => (q.form === "order" ? orderRows.length : q.options.length);

export const noTally = (rows: number): Tally => ({
  counts: Array.from({ length: rows }, () => 0),
  row: 0,
  typed: "",
  estimates: [],
});

const withCount = (tally: Tally, row: number, count: number): Tally => ({
  ...tally,
  counts: tally.counts.map((was, i) => (i === row ? Math.min(Math.max(count, 0), mostHands) : was)),
});

/** A number as typed in the unit shown; null: it is none. */
function readNumber(text: string): number | null {
  if (!/^[-−]?(\d+([.,]\d*)?|[.,]\d+)$/.test(text)) return null;
  return Number(text.replace("−", "-").replace(",", "."));
}

function typeHands(tally: Tally, text: string): Tally {
  if (!/^\d$/.test(text)) return tally;
  const typed = `${tally.typed}${text}`.slice(-3);
  return { ...withCount(tally, tally.row, Number(typed)), typed };
}

function eraseNumber(tally: Tally): Tally {
  if (tally.typed) return { ...tally, typed: tally.typed.slice(0, -1) };
  return { ...tally, estimates: tally.estimates.slice(0, -1) };
}

function eraseHands(tally: Tally): Tally {
  const typed = String(tally.counts[tally.row] ?? 0).slice(0, -1);
  return { ...withCount(tally, tally.row, Number(typed)), typed };
}

function enterNumber(tally: Tally): Tally {
  const number = readNumber(tally.typed);
  return number === null ? tally : { ...tally, typed: "", estimates: [...tally.estimates, number] };
}

const toRow = (tally: Tally, way: number): Tally => {
  const rows = Math.max(tally.counts.length, 1);
  return { ...tally, row: (tally.row + way + rows) % rows, typed: "" };
};

/** A tally after what was keyed in. */
export function keyIn(tally: Tally, action: TallyAction, form: Form): Tally {
  const numbers = takesNumbers(form);
  switch (action.do) {
    case "row":
      return toRow(tally, action.way);
    case "type":
      return numbers ? { ...tally, typed: `${tally.typed}${action.text}`.slice(0, 12) } : typeHands(tally, action.text);
    case "erase":
      return numbers ? eraseNumber(tally) : eraseHands(tally);
    case "enter":
      return numbers ? enterNumber(tally) : toRow(tally, 1);
    case "hand":
      return {
        ...withCount(tally, action.row, (tally.counts[action.row] ?? 0) + action.by),
        row: action.row,
        typed: "",
      };
  }
}

export const handsOf = (tally: Tally) => tally.counts.reduce((sum, n) => sum + n, 0);

/** Share of the most hands that each row has, for the lengths of its bars. */
export function barsOf(tally: Tally): number[] {
  const most = Math.max(1, ...tally.counts);
  return tally.counts.map((n) => n / most);
}

/** A shown value as a number and its unit; null: it begins with no number. */
export function partsOfShown(shown: string | null | undefined): { number: number; unit: string } | null {
  const match = /^([-−]?\d[\d\u00A0\u202F,]*(?:\.\d+)?)[\s\u00A0]*(.*)$/.exec(shown ?? "");
  if (!match?.[1]) return null;
  const number = Number(match[1].replace(/[\u00A0\u202F,]/g, "").replace("−", "-"));
  return Number.isFinite(number) ? { number, unit: match[2] ?? "" } : null;
}

/** A shown value, or a range of two, and its unit: "0.46 to 591.99 gal". */
export function figureAndUnit(shown: string): { figure: string; unit: string } {
  const match = /^(.*\d)[\s\u00A0]+(\D.*)$/.exec(shown);
  return { figure: match?.[1] ?? shown, unit: match?.[2] ?? "" };
}

/** One guess of the room on the axis. */
interface Dot {
  value: number;
  /** Place along the axis, 0 to 1. */
  place: number;
  /** How many lie under it. */
  over: number;
  right: boolean;
}

export interface Guesses {
  low: number;
  high: number;
  dots: Dot[];
  /** Where the right answer lies, and what counts as right. */
  answer: { place: number; from: number; to: number } | null;
}

/** Guesses that lie nearer than this on the axis stand one over the other. */
const near = 0.03;

/** The ends of an axis on which all of these have room. */
function endsOf(values: readonly number[]): [low: number, high: number] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = Math.max((most - least) * 0.12, Math.max(Math.abs(least), Math.abs(most)) * 0.05, 1e-9);
  return [least >= 0 ? Math.max(0, least - room) : least - room, most + room];
}

/** Guesses of a number as dots on an axis; with the right answer, once that may be seen. */
export function guessesOf(estimates: readonly number[], answer: number | null, tolerance: number): Guesses {
  const within = Math.abs(answer ?? 0) * tolerance;
  const [low, high] = endsOf([...estimates, ...(answer === null ? [] : [answer - within, answer + within])]);
  const placeOf = (value: number) => (value - low) / (high - low);
  const isRight = (value: number) => answer !== null && Math.abs(value - answer) <= within * (1 + 1e-9);
  const stacks: { place: number; count: number }[] = [];
  const dots = [...estimates]
    .sort((a, b) => a - b)
    .map((value): Dot => {
      const place = placeOf(value);
      const stack = stacks.find((s) => Math.abs(s.place - place) < near);
      const over = stack ? stack.count++ : 0;
      if (!stack) stacks.push({ place, count: 1 });
      return { value, place: stack?.place ?? place, over, right: isRight(value) };
    });
  const shown = answer !== null && { place: placeOf(answer), from: placeOf(answer - within), to: placeOf(answer + within) };
  return { low, high, dots, answer: shown || null };
}

/** Guesses that count as right. */
export const rightGuesses = (guesses: Guesses) => guesses.dots.filter((d) => d.right).length;
