import type { Clock } from "../../draw/clock";
import type { Played } from "../../draw/curve_trace";

/** One of the two choices that a player shows. */
export interface PlaySide {
  letter: "A" | "B";
  words: string;
  trace: Played;
}

/** What a player shows. */
export interface PlayView<S extends PlaySide = PlaySide> {
  a: S;
  b: S | null;
  clock: Clock;
  /** Times of all events, s. */
  marks: readonly number[];
}

export const sidesOf = <S extends PlaySide>(view: PlayView<S>): S[] => (view.b ? [view.a, view.b] : [view.a]);
