import { expect, test } from "vitest";
import { ladderLayout } from "../../src/draw/ladder";

const options = { width: 600, keep: 8, from: 3 };

test("more flow stands higher, more hoses further right", () => {
  const { a, b, plot } = ladderLayout([12, 10, 9], [12, 11, 11], options);
  expect(a.marks.map((m) => m.x)).toEqual([plot.left, (plot.left + plot.right) / 2, plot.right]);
  expect(a.marks[2]!.y).toBeGreaterThan(b.marks[2]!.y);
  expect(a.marks[0]!.y).toBe(b.marks[0]!.y);
});

test("where a flow is not known the line is parted", () => {
  const { a } = ladderLayout([12, null, 9, 8], [12, 11, 11, 11], options);
  expect(a.marks).toHaveLength(3);
  expect(a.path.match(/M/g)).toHaveLength(2);
  expect(a.path.match(/L/g)).toHaveLength(1);
});

test("the limit lies in the plot, also where it is above every flow", () => {
  const { keep, plot } = ladderLayout([5, 4], [5, 5], { ...options, keep: 20 });
  expect(keep).toBeGreaterThanOrEqual(plot.top);
  expect(keep).toBeLessThan(plot.foot);
});

test("the name of the limit keeps out of the way of the lines at their left end", () => {
  expect(ladderLayout([12, 10], [12, 11], options).keepUnder).toBe(true);
  expect(ladderLayout([7, 6], [12, 11], options).keepUnder).toBe(false);
});

test("worth it from stands at its number", () => {
  const { from, b } = ladderLayout([12, 10, 9], [12, 11, 11], options);
  expect(from).toBe(b.marks[2]!.x);
  expect(ladderLayout([12], [12], { ...options, from: null }).from).toBeNull();
});

test("names of equal ends do not touch", () => {
  const { names } = ladderLayout([12, 10], [12, 10.01], options);
  expect(Math.abs(names!.a.y - names!.b.y)).toBeGreaterThanOrEqual(14 - 1e-9);
  expect(names!.b.y).toBeLessThan(names!.a.y);
});

test("one hose stands in the middle; none at all makes no name", () => {
  const one = ladderLayout([12], [11], options);
  expect(one.a.marks[0]!.x).toBe((one.plot.left + one.plot.right) / 2);
  expect(ladderLayout([], [], { ...options, keep: null }).names).toBeNull();
});

test("many hoses have a number at every fifth", () => {
  const many = ladderLayout(
    Array.from({ length: 36 }, () => 8),
    [],
    options,
  );
  expect(many.columns.map((c) => c.open)).toEqual([1, 5, 10, 15, 20, 25, 30, 35]);
});
