import { expect, test } from "vitest";
import { changeable, groupsByKind, otherFlow, readKeep, withShownUnit } from "../../src/panels/flow/told/entry";
import { field, part } from "./told";

const bore = field("bore", { text: '"2.00 in"', us: "2.00 in", si: "50.8 mm" });

test("a number without a unit is in the one shown", () => {
  expect(withShownUnit("3", bore, "us")).toBe("3 in");
  expect(withShownUnit("75", bore, "si")).toBe("75 mm");
  expect(withShownUnit("3 in", bore, "si")).toBe("3 in");
  expect(withShownUnit(" 12 ft 6 in ", bore, "us")).toBe("12 ft 6 in");
});

test("a number of no unit stays one", () => {
  expect(withShownUnit("2", field("loss", { text: "1.5" }), "us")).toBe("2");
  expect(withShownUnit("3", field("bore"), "us")).toBe("3");
});

test("units with a power and of temperature", () => {
  expect(withShownUnit("0.002", field("k", { text: '"0.0022 psi/gpm^2"', us: "0.0022 psi/gpm^2" }), "us")).toBe(
    "0.002 psi/gpm^2",
  );
  expect(withShownUnit("60", field("t", { text: '"58 degF"', us: "58 degF" }), "us")).toBe("60 degF");
});

test("the flow to keep has its unit, or says what is wrong", () => {
  expect(readKeep("8", "us")).toEqual({ text: "8 gpm" });
  expect(readKeep("30,5", "si")).toEqual({ text: "30.5 L/min" });
  expect(readKeep("8 gpm", "si")).toEqual({ text: "8 gpm" });
  expect(readKeep("  ", "us")).toEqual({ text: "" });
  expect(readKeep("8 fet", "us")).toHaveProperty("problem");
});

test("the flow to keep in the other system", () => {
  expect(otherFlow("8 gpm", "us")).toBe("30.3\u00A0L/min");
  expect(otherFlow("8 gpm", "si")).toBe("8.0\u00A0gpm");
  expect(otherFlow("", "us")).toBe("");
});

test("an id cannot be changed; parts without a value are left out", () => {
  const trunk = part("trunk", { kind: "line", path: "line.trunk", fields: [field("id"), bore] });
  expect(changeable(trunk).map((f) => f.key)).toEqual(["bore"]);
  const groups = groupsByKind([
    part("D1.a", { fields: [field("limiter")] }),
    part("x", { fields: [field("id")] }),
    trunk,
  ]);
  expect(groups.map((g) => g.kind)).toEqual(["line", "hose"]);
  expect(groups[1]?.parts.map((p) => p.id)).toEqual(["D1.a"]);
});
