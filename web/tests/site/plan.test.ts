import { describe, expect, test } from "vitest";
import {
  dimensions, drawn, foot, gridLines, gridOf, lengthText, nextInRow, onSite, ownFrame, positionText, snap,
} from "../../src/draw/plan";

const ft = (x: number, y: number) => ({ x: x * foot, y: y * foot });

describe("the frame of the plan", () => {
  test("leads back to the site", () => {
    const frame = ownFrame([ft(0, 0), ft(120, 40)], 900, 300);
    const back = onSite(frame, drawn(frame, ft(33, 7)));
    expect(back.x).toBeCloseTo(33 * foot, 9);
    expect(back.y).toBeCloseTo(7 * foot, 9);
  });
  test("of its own holds every place", () => {
    for (const places of [[], [ft(5, 5)], [ft(0, 0), ft(0, 300)], [ft(-200, 3), ft(400, 3)]]) {
      const frame = ownFrame(places, 900, 300);
      for (const p of places) {
        const at = drawn(frame, p);
        expect(at.x).toBeGreaterThan(0);
        expect(at.x).toBeLessThan(900);
        expect(at.y).toBeGreaterThan(0);
        expect(at.y).toBeLessThan(300);
      }
    }
  });
});

describe("snapping", () => {
  test("goes to the grid of a foot, or of 0.3 m", () => {
    expect(lengthText(snap(ft(10.4, 3.6), [], "us", false).at.x, "us")).toBe("10 ft");
    expect(lengthText(snap({ x: 3.2, y: 0 }, [], "si", false).at.x, "si")).toBe("3.3 m");
  });
  test("is finer with Alt, and then knows no center lines", () => {
    const to = snap(ft(10.44, 3), [ft(10, 50)], "us", true);
    expect(lengthText(to.at.x, "us")).toBe("10.4 ft");
    expect(to.x).toBeNull();
  });
  test("takes the center line of another part within 1.2 ft", () => {
    const on = snap(ft(11.3, 3), [ft(12.5, 50), ft(40, 90)], "us", false);
    expect(on.at.x).toBe(12.5 * foot);
    expect(on.x).toBe(12.5 * foot);
    expect(on.y).toBeNull();
    const off = snap(ft(11.2, 3), [ft(12.5, 50)], "us", false);
    expect(off.x).toBeNull();
    expect(lengthText(off.at.x, "us")).toBe("11 ft");
  });
  test("takes the nearer of two center lines", () => {
    expect(snap(ft(5, 0), [ft(4.2, 9), ft(5.5, 9)], "us", false).at.x).toBe(5.5 * foot);
  });
  test("has steps a tenth as large with Alt", () => {
    expect(gridOf("us") / gridOf("us", true)).toBeCloseTo(10, 12);
    expect(gridOf("si") / gridOf("si", true)).toBeCloseTo(10, 12);
  });
});

describe("dimensions", () => {
  test("go to the neighbor in the row and to the nearest upright", () => {
    const [level, upright] = dimensions(ft(100, 0), [ft(126, 0), ft(0, 14), ft(110, 40)]);
    expect(lengthText(level?.length ?? 0, "us")).toBe("26 ft");
    expect(lengthText(upright?.length ?? 0, "us")).toBe("40 ft");
  });
  test("are fewer where nothing stands that way", () => {
    expect(dimensions(ft(0, 0), [])).toEqual([]);
    expect(dimensions(ft(0, 0), [ft(10, 0)])).toHaveLength(1);
  });
});

describe("positions as text", () => {
  test("need no more decimals than they have", () => {
    expect(positionText(ft(100, -2.5), "us")).toBe('["100 ft", "-2.5 ft"]');
    expect(positionText({ x: 30.48, y: -0.0001 }, "si")).toBe('["30.48 m", "0 m"]');
  });
});

test("a copy goes on with its row", () => {
  expect(positionText(nextInRow(ft(178, 0), [ft(152, 0), ft(0, 0)], "us"), "us")).toBe('["204 ft", "0 ft"]');
  expect(positionText(nextInRow(ft(126, 0), [ft(100, 0), ft(152, 0)], "us"), "us")).toBe('["178 ft", "0 ft"]');
  expect(positionText(nextInRow(ft(5, 5), [ft(0, 14)], "us"), "us")).toBe('["15 ft", "5 ft"]');
});

test("a copy keeps to the pitch of its own row and off everything else", () => {
  const [row, all] = [[ft(100, 0)], [ft(100, 0), ft(152, 0)]];
  expect(positionText(nextInRow(ft(126, 0), row, "us", all), "us")).toBe('["178 ft", "0 ft"]');
  expect(positionText(nextInRow(ft(126, 0), [], "us", [ft(0, 0)]), "us")).toBe('["136 ft", "0 ft"]');
});

test("grid lines are multiples of the step", () => {
  expect(gridLines(-3, 7, 2.5)).toEqual([-2.5, 0, 2.5, 5]);
  expect(gridLines(1, 2, 5)).toEqual([]);
});
