import { expect, test } from "vitest";
import { budgetOf, takenBy } from "../../src/panels/flow/told/budget";
import { psi } from "./told";

const row = (part: string, owner: string, loss: number | null) => ({
  part,
  owner,
  flow_m3_per_s: null,
  velocity_m_per_s: null,
  pressure_loss_pa: loss === null ? null : loss * psi,
});
const course = [
  row("pump", "P1", -25.76),
  row("leg", "P1", 0.33),
  row("line", "trunk", 3.44),
  row("riser", "D1.regular", 0.24),
  row("meter", "D1.a", 9.08),
  row("nozzle", "D1.a", 8.78),
  row("lift", "D1.a", 3.89),
];

test("what is shown adds up as shown", () => {
  const budget = budgetOf(course, "us")!;
  const shown = budget.rows.map((r) => Number(budget.text(Math.abs(r.change))) * Math.sign(r.change));
  expect(shown.reduce((a, b) => a + b, 0)).toBeCloseTo(0, 9);
  expect(budget.text(budget.added)).toBe("25.8");
  expect(budget.rows.at(-1)?.left).toBe(0);
});

test("before the connection it is the line's, a leg too", () => {
  const budget = budgetOf(course, "us")!;
  expect(budget.rows.map((r) => r.where)).toEqual([
    "pump",
    "line",
    "line",
    "dispenser",
    "dispenser",
    "dispenser",
    "lift",
  ]);
  const parts = (["line", "dispenser", "lift"] as const).map((w) => takenBy(budget, w));
  expect(parts.reduce((a, b) => a + b)).toBe(budget.added);
});

test("a loss that is not known leaves no budget", () => {
  expect(budgetOf([...course, row("swivel", "D1.a", null)], "us")).toBeNull();
  expect(budgetOf([], "us")).toBeNull();
});

test("rows of one part are one", () => {
  expect(budgetOf([row("pump", "P1", -2), row("line", "trunk", 1), row("line", "trunk", 1)], "us")?.rows).toHaveLength(
    2,
  );
});

test("every part has its stop of the course", () => {
  expect(budgetOf(course, "us")?.rows.map((r) => r.stop)).toEqual([4, 5, 5, 6, 8, 10, 10]);
});
