import { expect, test } from "vitest";
import { clockOf, clockText, stretchedText, ticksOf } from "../../src/draw/clock";

test("places and times are each other's inverse", () => {
  const clock = clockOf(600);
  for (const t of [0, 0.001, 0.04, 1, 17.3, 599, 600]) expect(clock.timeOf(clock.placeOf(t))).toBeCloseTo(t, 9);
  expect(clock.placeOf(0)).toBe(0);
  expect(clock.placeOf(600)).toBe(1);
  expect(clock.timeOf(2)).toBe(600);
});

test("the first second is stretched, and the words say how far", () => {
  const clock = clockOf(600);
  expect(clock.placeOf(1)).toBeGreaterThan(0.3);
  expect(stretchedText(clock)).toContain(`${Math.round(100 * clock.placeOf(1))} %`);
});

test("ticks stand apart and inside the scale", () => {
  const clock = clockOf(30 * 86400);
  const ticks = ticksOf(clock, 0.08);
  expect(ticks[0]).toBe(0);
  expect(ticks.at(-1)).toBeLessThanOrEqual(clock.end);
  ticks.slice(1).forEach((t, i) => expect(clock.placeOf(t) - clock.placeOf(ticks[i]!)).toBeGreaterThanOrEqual(0.08));
});

test.each([
  [0.04, "40 ms"],
  [0.9999, "1.0 s"],
  [8, "8.0 s"],
  [45.2, "45 s"],
  [125, "2 min 05 s"],
  [600, "10 min"],
  [7200, "2.0 h"],
  [2592000, "30.0 d"],
])("%d s is told as %s", (t, text) => expect(clockText(t).replaceAll("\u00A0", " ")).toBe(text));
