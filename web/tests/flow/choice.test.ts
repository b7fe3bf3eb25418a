import { expect, test } from "vitest";
import { renamed } from "../../src/panels/flow/renamed";

test("the ids of B are its own, words are left alone", () => {
  const svg =
    '<svg aria-labelledby="budget-title budget-desc"><title id="budget-title">a budget-wide view</title><path fill="url(#budget-hatch)"/></svg>';
  expect(renamed(svg, "budget")).toBe(
    '<svg aria-labelledby="b-budget-title b-budget-desc"><title id="b-budget-title">a budget-wide view</title><path fill="url(#b-budget-hatch)"/></svg>',
  );
});
