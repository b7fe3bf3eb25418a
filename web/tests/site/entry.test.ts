import { describe, expect, test } from "vitest";
import type { Field } from "../../src/api/types";
import {
  formOf, groupOf, inOtherUnits, inTheWay, labelOf, listText,
  quoted, refusal, textsOf, tomlOf, unitOfField, unitWordsOf, unquoted, valueTyped,
} from "../../src/state/entry";

const field = (over: Partial<Field>): Field => ({
  path: "line.trunk.bore", key: "bore", kind: "length", table: null, required: false, text: '"2.00 in"', us: "2.00 in",
  si: "50.8 mm", choices: null, help: "", line: 3, problem: null, ...over,
});

describe("texts of the file", () => {
  test("are shown without quotes", () => {
    expect(unquoted('"2.00 in"')).toBe("2.00 in");
    expect(unquoted("'a\\b'")).toBe("a\\b");
    expect(unquoted('"12\' 6\\""')).toBe("12' 6\"");
    expect(unquoted("{ k = 2 }")).toBe("{ k = 2 }");
    expect(unquoted("true")).toBe("true");
  });
  test("come back the same", () => {
    const texts = ["", "plain", 'a "b"', "back\\slash", "tab\there", "é ″"];
    for (const text of texts) expect(unquoted(quoted(text))).toBe(text);
  });
  test("in lists", () => {
    expect(textsOf('["P1", "P2"]')).toEqual(["P1", "P2"]);
    expect(textsOf('[ "100 ft" , \'0 ft\', ]')).toEqual(["100 ft", "0 ft"]);
    expect(textsOf("[]")).toEqual([]);
    expect(textsOf('[["0 gpm", "29 psi"]]')).toBeNull();
    expect(textsOf("[1, 2]")).toBeNull();
    expect(listText(["a", 'b"c'])).toBe('["a", "b\\"c"]');
  });
});

describe("what is sent for a typed value", () => {
  test("goes as typed where it has a unit", () => {
    expect(valueTyped(field({}), " 3 in ", "us")).toBe("3 in");
    expect(valueTyped(field({}), "76 mm", "us")).toBe("76 mm");
    expect(valueTyped(field({}), "12 ft 6 in", "us")).toBe("12 ft 6 in");
  });
  test("gets the unit in sight where it has none", () => {
    expect(valueTyped(field({}), "3", "us")).toBe("3 in");
    expect(valueTyped(field({}), "76", "si")).toBe("76 mm");
    const loss = field({ kind: "loss", us: "0.05 psi/gpm^2", si: "0.02 kPa.min2/L2", text: '"0.05 psi/gpm^2"' });
    expect(valueTyped(loss, "0.06", "us")).toBe("0.06 psi/gpm^2");
  });
  test("stays a bare number where the value is one", () => {
    expect(valueTyped(field({ kind: "loss", text: "3.6", us: null, si: null }), "4", "us")).toBe("4");
    expect(valueTyped(field({ kind: "number", text: "3", us: null, si: null }), "4", "us")).toBe("4");
  });
  test("keeps texts texts, and takes the printed minus", () => {
    expect(valueTyped(field({ kind: "text", text: '"x"', us: null, si: null }), "true", "us")).toBe('"true"');
    expect(valueTyped(field({ us: "-2 ft", si: "-0.61 m", text: '"-2 ft"' }), "−3", "us")).toBe("-3 ft");
  });
  test("guesses no unit for what was not entered", () => {
    expect(valueTyped(field({ text: null, us: null, si: null }), "3", "us")).toBe("3");
  });
});

test("the unit of a field is that of the system in sight", () => {
  expect(unitOfField(field({}), "us")).toBe("in");
  expect(unitOfField(field({ us: "12 ft 6 in" }), "us")).toBe("ft");
  expect(unitOfField(field({ us: "50 s (40 s to 60 s)" }), "us")).toBe("s");
  expect(unitOfField(field({ us: null }), "us")).toBe("");
});

describe("a value in a new block", () => {
  const kind = (name: string, table: string | null = null) => ({ kind: name, table, choices: null });
  test("is quoted unless it is no text in TOML", () => {
    expect(tomlOf(kind("length"), "140 ft")).toBe('"140 ft"');
    expect(tomlOf(kind("flag"), "true")).toBe("true");
    expect(tomlOf(kind("date"), "2026-03-12")).toBe("2026-03-12");
    expect(tomlOf(kind("number"), "4")).toBe("4");
    expect(tomlOf(kind("position"), '["1 ft", "2 ft"]')).toBe('["1 ft", "2 ft"]');
    expect(tomlOf(kind("reference"), "T1")).toBe('"T1"');
    expect(tomlOf(kind("loss", "loss"), "3.6")).toBe("3.6");
    expect(tomlOf(kind("loss", "loss"), "0.17 psi/gpm^2")).toBe('"0.17 psi/gpm^2"');
    expect(tomlOf(kind("loss", "loss"), '{ k = 2, bore = "2 in" }')).toBe('{ k = 2, bore = "2 in" }');
    expect(tomlOf(kind("length"), "  ")).toBe("");
  });
});

test("the form follows the kind", () => {
  const of = (kind: string, table: string | null = null, choices: string[] | null = null) =>
    formOf({ kind, table, choices });
  expect(of("choice", null, ["a"])).toBe("choice");
  expect(of("list", null, ["P1"])).toBe("references");
  expect(of("list", "fill")).toBe("list");
  expect(of("table", "sump")).toBe("table");
  expect(of("length")).toBe("text");
  expect(of("loss", "loss")).toBe("text");
});

test("the other system", () => {
  expect(inOtherUnits(field({}))).toBe("50.8 mm");
  expect(inOtherUnits(field({ text: '"50.8 mm"' }))).toBe("2.00 in");
  expect(inOtherUnits(field({ text: '"5 s"', us: "5 s", si: "5 s" }))).toBeNull();
  expect(inOtherUnits(field({ text: null }))).toBeNull();
});

test("labels", () => {
  expect(labelOf("shape.inside_diameter")).toBe("Inside diameter");
  expect(groupOf("shape.inside_diameter")).toBe("shape");
  expect(groupOf("bore")).toBe("");
});

test("a refusal says what stays", () => {
  expect(refusal("bore is a length, but 'psi' is a pressure; write \"2.00 in\"", '"2.00 in"')).toBe(
    "Bore is a length, but 'psi' is a pressure; write \"2.00 in\". Kept 2.00 in.",
  );
  expect(refusal("no such tank", null)).toBe("No such tank. Nothing was entered.");
});

test("of two values that exclude each other the one in the way is told", () => {
  const problem = "the shear valve has both 'groove_elevation' and 'groove_lift'; keep one of them";
  expect(inTheWay(problem, "groove_lift")).toBe("groove_elevation");
  expect(inTheWay(problem, "shear_valve.groove_elevation")).toBe("groove_lift");
  expect(inTheWay(problem, "poppet")).toBeNull();
  expect(inTheWay("groove_lift is not a length", "groove_lift")).toBeNull();
});

test("an empty field tells its units", () => {
  expect(unitWordsOf("flow", "us")).toBe("gpm");
  expect(unitWordsOf("flow", "si")).toBe("L/min");
  expect(unitWordsOf("choice", "us")).toBe("");
});
