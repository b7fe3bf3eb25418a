import { describe, expect, test } from "vitest";
import {
  barsOf, guessesOf, handsOf, keyIn, noTally, figureAndUnit, partsOfShown, rightGuesses, rowCount, type Tally, type TallyAction,
} from "../../src/state/lesson/tally";
import type { Form } from "../../src/state/lesson/told";
import { questionOf } from "./fixture";

const keyed = (form: Form, tally: Tally, ...actions: TallyAction[]) =>
  actions.reduce((now, action) => keyIn(now, action, form), tally);
const typed = (text: string): TallyAction[] => [...text].map((one) => ({ do: "type", text: one }));
const enter: TallyAction = { do: "enter" };

describe("hands", () => {
  const hands = (...actions: TallyAction[]) => keyed("choice", noTally(3), ...actions);

  test("digits count those of the chosen answer, arrows choose the next", () => {
    const tally = hands(...typed("12"), { do: "row", way: 1 }, ...typed("7"), enter, ...typed("3"));
    expect(tally.counts).toEqual([12, 7, 3]);
    expect(handsOf(tally)).toBe(22);
    expect(barsOf(tally)).toEqual([1, 7 / 12, 3 / 12]);
  });
  test("an answer that is chosen again is counted anew", () => {
    const tally = hands(...typed("12"), { do: "row", way: 1 }, { do: "row", way: -1 }, ...typed("4"));
    expect(tally.counts).toEqual([4, 0, 0]);
  });
  test("the last digit can be taken away", () => {
    expect(hands(...typed("12"), { do: "erase" }).counts[0]).toBe(1);
    expect(hands(...typed("12"), { do: "erase" }, { do: "erase" }).counts[0]).toBe(0);
  });
  test("one hand more or less, never below none", () => {
    expect(hands({ do: "hand", row: 2, by: 1 }, { do: "hand", row: 2, by: 1 }).counts).toEqual([0, 0, 2]);
    expect(hands({ do: "hand", row: 2, by: -1 }).counts).toEqual([0, 0, 0]);
  });
  test("without any hand there is no bar", () => expect(barsOf(noTally(2))).toEqual([0, 0]));
  test("of an order: those who had it, and the others", () => {
    expect(rowCount(questionOf("q", "drop", { form: "order" }))).toBe(2);
    expect(rowCount(questionOf("q", "drop"))).toBe(3);
  });
});

describe("guesses", () => {
  const guesses = (...texts: string[]) =>
    keyed("estimate", noTally(0), ...texts.flatMap((text) => [...typed(text), enter])).estimates;

  test("are numbers, with a point or a comma and a sign", () => {
    expect(guesses("12.5", "0,4", "-3", ".5")).toEqual([12.5, 0.4, -3, 0.5]);
  });
  test("what is no number stays to be mended", () => {
    const tally = keyed("estimate", noTally(0), ...typed("1.2.3"), enter);
    expect(tally.estimates).toEqual([]);
    expect(tally.typed).toBe("1.2.3");
  });
  test("the last can be taken away", () => {
    const tally = keyed("estimate", noTally(0), ...typed("5"), enter, ...typed("7"), { do: "erase" }, { do: "erase" });
    expect(tally.estimates).toEqual([]);
  });
  test("count as right within the tolerance, at its edge too", () => {
    const spread = guessesOf([90, 110, 89.9, 110.1, 100], 100, 0.1);
    expect(rightGuesses(spread)).toBe(3);
    expect(spread.answer?.from).toBeLessThan(spread.answer?.place ?? 0);
  });
  test("lie on the axis in order, and one over the other where they are near", () => {
    const spread = guessesOf([50, 10, 10], 30, 0.1);
    expect(spread.dots.map((d) => [d.value, d.over])).toEqual([
      [10, 0],
      [10, 1],
      [50, 0],
    ]);
    for (const dot of spread.dots) {
      expect(dot.place).toBeGreaterThanOrEqual(0);
      expect(dot.place).toBeLessThanOrEqual(1);
    }
    expect(spread.low).toBeGreaterThanOrEqual(0);
  });
  test("show nothing of the answer before it is revealed", () => {
    const spread = guessesOf([10, 20], null, 0.1);
    expect(spread.answer).toBeNull();
    expect(rightGuesses(spread)).toBe(0);
    expect(spread.high).toBeLessThan(25);
  });
});

describe("a shown value", () => {
  test.each([
    ["27.4\u00A0gal", 27.4, "gal"],
    ["9\u00A0512\u00A0gal", 9512, "gal"],
    ["−0.4\u00A0psi", -0.4, "psi"],
    ["12.5\u00A0%", 12.5, "%"],
    ["6", 6, ""],
    ["3\u00A0inH2O", 3, "inH2O"],
  ])("%s", (shown, number, unit) => expect(partsOfShown(shown)).toEqual({ number, unit }));
  test("of words has no number", () => expect(partsOfShown("not determined")).toBeNull());
});

describe("a shown value", () => {
  test.each([
    ["12.25\u00A0gpm", "12.25", "gpm"],
    ["0.46 to 591.99\u00A0gal", "0.46 to 591.99", "gal"],
    ["8\u00A0147\u00A0gal", "8\u00A0147", "gal"],
    ["\u22126.00\u00A0in", "\u22126.00", "in"],
    ["43\u00A0g/m3", "43", "g/m3"],
    ["95.0\u00A0%", "95.0", "%"],
    ["8\u00A0147", "8\u00A0147", ""],
  ])("%s is a figure with its unit", (text, figure, unit) => {
    expect(figureAndUnit(text)).toEqual({ figure, unit });
  });
});
