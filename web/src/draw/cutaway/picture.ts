/** Values of a picture by name; shares are 0 to 1. What is missing is drawn as at rest. */
export type Values = Readonly<Record<string, number | undefined>>;

/** A cutaway of one page: what it shows in words, and its drawing, 640 by 420. */
export interface Picture {
  /** Every value that it draws, as it is at rest. */
  rest: Readonly<Record<string, number>>;
  words(values: Values): string;
  /** `dash`: how far the dashes of a flow have gone, in units of the drawing. */
  draw(values: Values, dash: number): string;
}

/** These have a sign; `count` is turns and has no bound. All else is a share. */
const signed = new Set(["pressure", "warm"]);

function within(name: string, value: number): number {
  if (name === "count") return value;
  return Math.min(1, Math.max(signed.has(name) ? -1 : 0, value));
}

/** Whether all of these values are told; of what is not told nothing is said. */
export type Has<Name> = (...names: Name[]) => boolean;

/** A picture of values that are at hand; `rest` stands in the drawing for those that are not. */
export function picture<Name extends string>(
  rest: Record<Name, number>,
  words: (values: Record<Name, number>, has: Has<Name>) => string,
  draw: (values: Record<Name, number>, dash: number, has: Has<Name>) => string,
): Picture {
  const names = Object.keys(rest) as Name[];
  const hasIn =
    (values: Values) =>
    (...asked: Name[]) =>
      asked.every((name) => Number.isFinite(values[name]));
  const known = (values: Values) =>
    Object.fromEntries(
      names.map((name) => [name, within(name, hasIn(values)(name) ? values[name]! : rest[name])]),
    ) as Record<Name, number>;
  return {
    rest,
    words: (values) => words(known(values), hasIn(values)),
    draw: (values, dash) => draw(known(values), dash, hasIn(values)),
  };
}

/** Whether there is so much of it that it is worth a word. */
export const some = (share: number) => Math.abs(share) > 0.005;
/** Whether it is, of what is or is not. */
export const on = (share: number) => share >= 0.5;
/** How a valve stands, by the share of its travel to its seat. */
export const shutWord = (share: number) => (share > 0.95 ? "shut" : share < 0.05 ? "open" : "shutting");
export const percent = (share: number) => `${Math.round(share * 100)} %`;
/** The clauses that hold, as one sentence. */
export function told(...clauses: (string | false)[]): string {
  const text = clauses.filter((clause) => clause !== false && clause !== "").join(", ");
  return text === "" ? "State not determined." : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
/** Between two numbers. */
export const between = (from: number, to: number, share: number) => from + (to - from) * share;
