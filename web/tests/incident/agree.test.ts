import { describe, expect, test } from "vitest";
import { dotOf, lineOf, planOf } from "../../src/draw/curve_chart";
import { valueAt } from "../../src/draw/curve";
import { at, lastEvent } from "../../src/draw/curve_trace";
import { valueIn, digits } from "../../src/draw/numbers";
import { decimalsFor, rowsAt, toldOf } from "../../src/panels/incident/answer/rows";
import { sidesOf } from "../../src/panels/replay/view";
import { viewOf } from "../../src/panels/incident/answer/view";
import type { IncidentDocument } from "../../src/panels/incident/answer/documents";
import struck from "./struck.json";

const document = struck as unknown as IncidentDocument;
const view = viewOf(document, null, null, { is: "run", name: "without shear valve" }, true)!;
const told = toldOf(view);
const times = [...view.marks, 0.0333, 0.1, 1, 7.77, 59.99, 60.01, 333, view.clock.end];

test("the choices are the runs that were asked for", () => {
  expect(view.a.run.missing).toEqual([]);
  expect(view.b?.run.missing).toEqual(["shear-valve"]);
});

/** How far a dot may lie off its line, px: less than half the width of the line, which is rounded to a tenth and runs
 * straight between its points. */
const offLine = 0.6;

describe.each(times)("at %d s", (t) => {
  test("table and chart show the same value", () => {
    const rows = rowsAt(view, told, t, "us");
    for (const one of told) {
      const row = rows.find((r) => r.name === one.name)!;
      const shown = (si: number) => valueIn(one.what, "us", si);
      const plan = planOf(one.courses.map((c) => c.course), view.clock, { width: 640, height: 140 }, shown);
      one.courses.forEach(({ course }, i) => {
        const dot = dotOf(course, plan, shown, t);
        const value = row.values[i];
        if (value === null || value === undefined) return expect(dot).toBeNull();
        expect(dot?.y).toBeCloseTo(plan.y(shown(value)), 9);
        expect(dot?.x).toBeCloseTo(plan.x(t), 9);
        expect(row.shown[i]).toBe(digits(shown(value), decimalsFor(one, "us", value)));
      });
    }
  });

  test("the drawn line runs through the dot", () => {
    for (const one of told) {
      const shown = (si: number) => valueIn(one.what, "us", si);
      const plan = planOf(one.courses.map((c) => c.course), view.clock, { width: 640, height: 140 }, shown);
      for (const { course } of one.courses) {
        const dot = dotOf(course, plan, shown, t);
        if (!dot) continue;
        const points = lineOf(course, plan, view.clock, shown)
          .slice(1)
          .split("L")
          .map((p) => p.split(" ").map(Number) as [number, number]);
        expect(Math.min(...segments(points).map((s) => distance(dot, s)))).toBeLessThan(offLine);
      }
    }
  });
});

type P = [number, number];
const segments = (points: P[]) => points.slice(1).map((p, i) => [points[i]!, p] as const);
function distance(dot: { x: number; y: number }, [a, b]: readonly [P, P]) {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const along = ((dot.x - a[0]) * dx + (dot.y - a[1]) * dy) / (dx * dx + dy * dy || 1);
  const k = Math.min(1, Math.max(0, along));
  return Math.hypot(dot.x - a[0] - k * dx, dot.y - a[1] - k * dy);
}

test("what has escaped at each event is what the document tells there", () => {
  for (const side of sidesOf(view)) {
    for (const e of side.trace.events) expect(at(side.trace, "escaped", e.time_s)).toBeCloseTo(e.escaped_m3, 12);
    expect(at(side.trace, "escaped", side.trace.end)).toBeCloseTo(side.run.escaped_m3, 12);
  }
});

test("the event that the clock tells is the last of the list that is past", () => {
  for (const side of sidesOf(view)) {
    for (const e of side.trace.events) expect(lastEvent(side.trace, e.time_s)?.time_s).toBe(e.time_s);
  }
});

test("a course has no value where it has not begun or has ended", () => {
  const course = { time: [1, 2, 2, 3], value: [0, 1, 5, 6] };
  expect(valueAt(course, 0.99)).toBeNull();
  expect(valueAt(course, 1)).toBe(0);
  expect(valueAt(course, 1.5)).toBe(0.5);
  expect(valueAt(course, 2)).toBe(5);
  expect(valueAt(course, 2.5)).toBe(5.5);
  expect(valueAt(course, 3)).toBe(6);
  expect(valueAt(course, 3.01)).toBeNull();
});
