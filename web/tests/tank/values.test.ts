import { describe, expect, test } from "vitest";
import type { Field, Part } from "../../src/api/types";
import { withUnitOr } from "../../src/draw/numbers";
import { asCalledHere } from "../../src/panels/tank/answer";
import { deliveryParts, depthParts, fieldsOf, flotationParts, vaporParts } from "../../src/panels/tank/values/shown";

const field = (key: string, text: string | null = null): Field => ({
  path: key, key, kind: "length", table: null, required: false, text, us: null, si: null, choices: null, help: "",
  line: null, problem: null,
});
const part = (path: string, kind: string, id: string, fields: Field[] = []): Part => ({
  path, kind, id, stop: null, product: null, of: null, position: null, fields,
});

const parts = [
  part("site", "site", "site"),
  part("product.regular", "product", "regular"),
  part("tank.T1", "tank", "T1"),
  part("tank.T1.fill.F1", "fill", "F1"),
  part("tank.T1.fill.F1.overfill_valve", "overfill_valve", "F1"),
  part("tank.T1.vent.1", "vent", "T1"),
  part("tank.T1.compartment.T1a", "compartment", "T1a"),
  part("tank.T10", "tank", "T10"),
  part("tank.T10.fill.F10", "fill", "F10"),
  part("pump.P1", "pump", "P1", [field("tank", '"T1"')]),
  part("pump.P2", "pump", "P2", [field("tank", '"T10"')]),
  part("delivery.one", "delivery", "one", [field("compartment.front.tank", '"T10"')]),
  part("delivery.two", "delivery", "two", [
    field("compartment.front.tank", '"T1"'),
    field("compartment.rear.tank", '"T1"'),
  ]),
];
const paths = (shown: { part: Part }[]) => shown.map((s) => s.part.path);

describe("the parts that a view depends on", () => {
  test("depth: the tank, what is in it, and what draws from it", () => {
    expect(paths(depthParts(parts, "T1", "T1"))).toEqual([
      "tank.T1", "tank.T1.fill.F1", "tank.T1.fill.F1.overfill_valve", "pump.P1",
    ]);
    expect(paths(depthParts(parts, "T1", "T1a"))[0]).toBe("tank.T1.compartment.T1a");
    expect(depthParts(parts, "T9", "T9")).toEqual([]);
  });

  test("delivery: the one asked for, else the first, and each tank that it fills once", () => {
    expect(paths(deliveryParts(parts, ""))).toEqual(["delivery.one", "tank.T10.fill.F10", "tank.T10"]);
    expect(paths(deliveryParts(parts, "two"))).toEqual([
      "delivery.two", "tank.T1.fill.F1", "tank.T1.fill.F1.overfill_valve", "tank.T1.vent.1", "tank.T1",
    ]);
    expect(deliveryParts([], "")).toEqual([]);
  });

  test("vapor: products, vents and tanks; flotation: one tank, or all", () => {
    expect(paths(vaporParts(parts))).toEqual(["product.regular", "tank.T1.vent.1", "tank.T1", "tank.T10", "site"]);
    expect(paths(flotationParts(parts, "T1"))).toEqual(["tank.T1"]);
    expect(paths(flotationParts(parts, ""))).toEqual(["tank.T1", "tank.T10"]);
  });
});

test("of its fields a view has those of its keys, in their order, each once", () => {
  const all = ["id", "pipe.length", "pipe.wall", "pipe.loss", "valve", "valves", "blocked"].map((key) => field(key));
  const keys = fieldsOf(all, ["blocked", "pipe.loss", "pipe", "valve"]).map((f) => f.key);
  expect(keys).toEqual(["blocked", "pipe.loss", "pipe.length", "valve"]);
});

test("what the engine says names the entries of the page", () => {
  expect(asCalledHere("the delivery rate: rate = ... in a [[delivery]], or --rate")).toBe(
    'the delivery rate: "Rate" of a delivery, or "Delivery rate"',
  );
  expect(asCalledHere("at = ... in its [[tank.fill]]")).toBe('"At" of its fill');
  expect(asCalledHere("overfill_valve = { restricted = ... }")).toBe('"Restricted" of the overfill valve');
  expect(asCalledHere("Enter operations.throughput: 2.5 in, or vapor_return.")).toBe(
    "Enter operations, throughput: 2.5 in, or vapor return.",
  );
});

test("a bare number gets the unit that is shown", () => {
  expect(asCalledHere("not known: give --expansion or --line-expansion, or --time-constant")).toBe(
    'not known: give "Expansion of the fuel" or "Expansion of the line", or "Time constant of the line"',
  );
  expect([withUnitOr("12", ""), withUnitOr("12 °F", "degC")]).toEqual(["12", "12 °F"]);
  expect([withUnitOr("12", "gpm"), withUnitOr("12 L/min", "gpm"), withUnitOr(" ", "gpm")]).toEqual(["12 gpm", "12 L/min", ""]);
});
