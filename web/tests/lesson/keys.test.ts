import { describe, expect, test } from "vitest";
import { keyMeaning } from "../../src/state/lesson/keys";
import { start, type Over } from "../../src/state/lesson/steps";
import type { Form } from "../../src/state/lesson/told";
import { failureOf } from "./fixture";

const failures = [failureOf("drive-off"), failureOf("sump-fire", false)];
interface More {
  over?: Over;
  form?: Form | null;
  letters?: boolean;
  blank?: boolean;
}
const key = (name: string, { over = { kind: "none" }, form = null, letters = true, blank = false }: More = {}) =>
  keyMeaning(name, { place: { ...start, over, blank }, failures, form, letters });
const lesson = (action: object) => ({ of: "lesson", action });
const tally = (action: object) => ({ of: "tally", action });
const asked: Over = { kind: "question", at: 0, revealed: false };

describe("on a page", () => {
  test.each(["ArrowRight", " ", "PageDown"])("%s goes on", (name) => {
    expect(key(name)).toEqual(lesson({ do: "on" }));
  });
  test.each(["ArrowLeft", "PageUp"])("%s goes back", (name) => {
    expect(key(name)).toEqual(lesson({ do: "back" }));
  });
  test.each([
    ["Home", "first"],
    ["End", "last"],
    ["a", "ask"],
    ["b", "blank"],
    ["x", "failures"],
    ["A", "ask"],
  ])("%s: %s", (name, what) => {
    expect(key(name)).toEqual(lesson({ do: what }));
  });
  test("digits mean nothing, so that no sheet opens", () => expect(key("1")).toBeNull());
  test("Escape ends, but shuts first what is open", () => {
    expect(key("Escape")).toEqual({ of: "end" });
    expect(key("Escape", { over: asked })).toEqual(lesson({ do: "close" }));
    expect(key("Escape", { blank: true })).toEqual(lesson({ do: "close" }));
  });
});

describe("with keys of one character off", () => {
  const letters = false;
  test.each(["a", "b", "x", ",", ".", "p", "u", "n"])("%s does nothing", (name) => {
    expect(key(name, { letters })).toBeNull();
  });
  test("a digit chooses no failure and counts no hand", () => {
    expect(key("1", { letters, over: { kind: "failures" } })).toBeNull();
    expect(key("1", { letters, over: asked, form: "choice" })).toBeNull();
  });
  test("the clicker still turns pages", () => expect(key("PageDown", { letters })).toEqual(lesson({ do: "on" })));
});

describe("over a page", () => {
  test("a digit chooses a failure that this station can have", () => {
    const over: Over = { kind: "failures" };
    expect(key("1", { over })).toEqual(lesson({ do: "failure", failure: "drive-off" }));
    expect(key("2", { over })).toBeNull();
    expect(key("3", { over })).toBeNull();
  });
  test("Space plays and pauses a replay; the clicker leaves it", () => {
    const over: Over = { kind: "replay", failure: "struck" };
    expect(key(" ", { over })).toEqual({ of: "player", action: "toggle" });
    expect(key(",", { over })).toEqual({ of: "player", action: "previous" });
    expect(key(".", { over })).toEqual({ of: "player", action: "next" });
    expect(key("PageDown", { over })).toEqual(lesson({ do: "on" }));
  });
  test("digits and arrows count hands", () => {
    const choice = { over: asked, form: "choice" } as const;
    expect(key("7", choice)).toEqual(tally({ do: "type", text: "7" }));
    expect(key("ArrowDown", choice)).toEqual(tally({ do: "row", way: 1 }));
    expect(key("Backspace", choice)).toEqual(tally({ do: "erase" }));
    expect(key(".", choice)).toEqual({ of: "player", action: "next" });
    expect(key("a", choice)).toEqual(lesson({ do: "ask" }));
  });
  test("a guess may have a point and a sign", () => {
    const estimate = { over: asked, form: "estimate" } as const;
    expect(key(".", estimate)).toEqual(tally({ do: "type", text: "." }));
    expect(key("-", estimate)).toEqual(tally({ do: "type", text: "-" }));
    expect(key("Enter", estimate)).toEqual(tally({ do: "enter" }));
  });
});
