import { expect, test } from "vitest";
import { barEnd, flowDecimals, hoseNotes, hoseRows } from "../../src/panels/flow/told/rows";
import { gpm, hose, part, state, system } from "./told";

test("a hose stands under its dispenser, the first of it marked", () => {
  const parts = [part("D1.a"), part("D1.b"), part("D2.a", { of: "dispenser.D2" })];
  const rows = hoseRows(parts, state(system([hose("D1.a", 10), hose("D1.b", 10), hose("D2.a", 9)])));
  expect(rows.map((r) => r.first)).toEqual([true, false, true]);
  expect(rows.map((r) => r.dispenser)).toEqual(["D1", "D1", "D2"]);
});

test("a blended hose is one row with both products", () => {
  const told = state(system([hose("D1.m", 8)]), system([hose("D1.m", 8)], { id: "premium", product: "premium" }));
  const [row] = hoseRows([part("D1.m", { product: null })], told);
  expect(row?.products).toEqual(["regular", "premium"]);
  expect(row?.told?.hose_flow_m3_per_s).toBeCloseTo(8 * gpm, 12);
});

test("without an answer the rows are there, without flows", () => {
  const [row] = hoseRows([part("D1.a")], null);
  expect(row).toMatchObject({ id: "D1.a", dispenser: "D1", products: ["regular"], told: null });
});

test("why a flow is missing comes from its piping", () => {
  const told = state(system([hose("D1.a", null)], { status: "not determined", reason: "pump P1 has no curve" }));
  expect(hoseRows([part("D1.a")], told)[0]?.reason).toBe("pump P1 has no curve");
});

test("a flow just under the one to keep shows that it is; the column has one number of decimals", () => {
  const parts = [part("D1.a"), part("D1.b")];
  const rows = (near: boolean) =>
    hoseRows(
      parts,
      state(system([hose("D1.a", 7.98, { below_keep_flow: near }), hose("D1.b", 7, { below_keep_flow: true })])),
    );
  expect(flowDecimals(rows(true), 8 * gpm, "us")).toBe(2);
  expect(flowDecimals(rows(false), 8 * gpm, "us")).toBe(1);
});

test("notes say limiter, cap with its clause, and what is missed", () => {
  const told = hose("D1.a", 12, {
    above_rule_cap: true,
    rule_cap_m3_per_s: 10 * gpm,
    rule_clause: "40 CFR 1090.1550(b)",
    below_keep_flow: true,
    ratio_met: false,
  });
  expect(hoseNotes(told, 13 * gpm, "us")).toEqual([
    "over the cap of 10.0\u00A0gpm, 40 CFR 1090.1550(b)",
    "below 13.0\u00A0gpm",
    "its blend is not met",
  ]);
  expect(hoseNotes(hose("D1.a", 10, { at_limit: true, limit_m3_per_s: 10 * gpm }), null, "us")).toEqual([
    "held by its limiter, 10.0\u00A0gpm",
  ]);
});

test("the bars end at the most", () => {
  const rows = hoseRows([part("D1.a"), part("D1.b")], state(system([hose("D1.a", 10), hose("D1.b", 9)])));
  expect(barEnd(rows, null, "us")).toBeCloseTo(10, 9);
  expect(barEnd(rows, 12 * gpm, "us")).toBeCloseTo(12, 9);
  expect(barEnd([], null, "us")).toBe(1);
});
