import { describe, expect, test } from "vitest";
import { bandOf, canClose, opening, pageOfStop, step, type Action, type Place } from "../../src/state/lesson/steps";
import { lesson, questions } from "./fixture";

const from = (place: Place, ...actions: Action[]) =>
  actions.reduce((now, action) => step(now, action, lesson, questions), place);
const after = (...actions: Action[]) => from(opening(lesson), ...actions);
const [on, back, ask] = [{ do: "on" }, { do: "back" }, { do: "ask" }] as const;

describe("stepping", () => {
  test("goes page by page and stays at the ends", () => {
    expect(after(on).page).toBe(1);
    expect(after(on, back).page).toBe(0);
    expect(after(back).page).toBe(0);
    expect(after(on, on, on, on, on).page).toBe(3);
    expect(after({ do: "last" }).page).toBe(3);
    expect(after({ do: "last" }, { do: "first" }).page).toBe(0);
    expect(after({ do: "page", page: 2 }).page).toBe(2);
  });

  test("a page opens in the first state in which something flows, else in its first", () => {
    expect(after().state).toBe(1);
    expect(after(on, on).state).toBe(0);
  });

  test("states go round", () => {
    expect(after({ do: "state", way: 1 }).state).toBe(0);
    expect(after({ do: "state", way: -1 }).state).toBe(0);
    expect(after({ do: "state", way: 1 }, { do: "state", way: 1 }).state).toBe(1);
  });

  test("turning a page shuts what lies over it and ends a blank screen", () => {
    expect(canClose(after({ do: "failures" }, on))).toBe(false);
    expect(canClose(after({ do: "blank" }, on))).toBe(false);
    expect(after({ do: "last" }, { do: "failures" }, on).over.kind).toBe("none");
  });

  test("the blank screen is closed before what lies under it", () => {
    const open = after({ do: "failures" }, { do: "blank" });
    expect(from(open, { do: "close" }).over.kind).toBe("failures");
    expect(canClose(from(open, { do: "close" }, { do: "close" }))).toBe(false);
  });
});

describe("questions", () => {
  test("show, then reveal, then the page again", () => {
    expect(after(ask).over).toEqual({ kind: "question", at: 0, revealed: false });
    expect(after(ask, ask).over).toEqual({ kind: "question", at: 0, revealed: true });
    expect(after(ask, ask, ask).over.kind).toBe("none");
  });

  test("the next time the next one is shown, around", () => {
    const again = after(ask, ask, ask, ask);
    expect(again.over).toEqual({ kind: "question", at: 1, revealed: false });
    expect(from(again, { do: "question" }).over).toEqual({ kind: "question", at: 0, revealed: false });
  });

  test("of a level that is asked for only", () => {
    const second = after({ do: "level", level: 2 }, ask, { do: "question" });
    expect(second.over).toEqual({ kind: "question", at: 0, revealed: false });
  });

  test("a page without one says so, and `ask` goes back to it", () => {
    expect(after(on, ask).over.kind).toBe("question");
    expect(after(on, ask, ask).over.kind).toBe("none");
  });
});

describe("the band", () => {
  test("has the eleven stops with the pages of each", () => {
    const band = bandOf(lesson);
    expect(band.map((s) => s.number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(band[8]).toEqual({ number: 9, name: "Hose", pages: [1, 2] });
    expect(band[1]?.pages).toEqual([]);
  });

  test("says which page of its stop a page is, where there are more", () => {
    expect(pageOfStop(lesson, 2)).toBe("2 of 2");
    expect(pageOfStop(lesson, 0)).toBe("");
  });
});
