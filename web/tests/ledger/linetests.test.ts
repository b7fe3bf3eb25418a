import { describe, expect, test } from "vitest";
import { askKeys, heldFor, keptAs, refusedKey, valuesOf, wantOf } from "../../src/panels/ledger/linetests/asks";
import { quietState } from "../../src/panels/ledger/linetests/quiet";
import type { Detection, KnownLine } from "../../src/panels/ledger/linetests/documents";
import { lineTestParts, fieldsOf } from "../../src/panels/tank/values/shown";
import type { Field, Part } from "../../src/api/types";

describe("what is typed", () => {
  test("has the unit in use where none is typed", () => {
    expect(keptAs("warmer", "18", "degF")).toBe("18 degF");
    expect(keptAs("warmer", "10 degC", "degF")).toBe("10 degC");
    expect(keptAs("exponent", "0.5", "")).toBe("0.5");
    expect(keptAs("leak", "  ", "gph")).toBe("");
  });
  test("may be a range of temperatures, with one unit for both", () => {
    expect(valuesOf("warmer", "−5 to 18 degF")).toEqual(["-5 degF", "18 degF"]);
    expect(keptAs("warmer", "-5 to 18", "degC")).toBe("-5 degC to 18 degC");
  });
  test("may be several quiet times", () => {
    expect(valuesOf("quiet", "6, 2 h")).toEqual(["6 h", "2 h"]);
    expect(keptAs("quiet", "5 h; 90 min", "h")).toBe("5 h, 90 min");
  });
  test("is asked for member by member; what is empty is left out", () => {
    expect(wantOf({ warmer: "18 degF", leak: "", wait: "6 h" })).toEqual({ warmer: ["18 degF"], wait: "6 h" });
    expect(wantOf({})).toEqual({});
  });
  test("that is refused is found by its name", () => {
    expect(refusedKey("time_constant is above zero, but '0 h' is written")).toBe("time_constant");
    expect(refusedKey("no line carries 'x'")).toBeNull();
    expect(new Set(askKeys).size).toBe(askKeys.length);
  });
});

const line = {
  held_pressure_gauge_pa: null,
  thermal: { problem: "how much warmer is not known" },
  pressure_test: { problem: "not known", start_pressure_gauge_pa: null, duration_s: 3600, per_degree_pa_per_k: null },
  volume_test: { find_m3_per_s: 1.0515e-7 },
} as KnownLine;

test("what holds where nothing is typed: a value in use, or not determined", () => {
  expect(heldFor("warmer", line, "us")).toBe("not determined");
  expect(heldFor("pressure", line, "us")).toBe("not determined");
  expect(heldFor("find", line, "us")).toBe("0.100\u00A0gph");
  expect([heldFor("duration", line, "us"), heldFor("duration", null, "us")]).toEqual(["60.0\u00A0min", "not determined"]);
  const warm = {
    ...line,
    thermal: { problem: null, warmer_k: { low: 10, high: 10 }, fuel_expansion_per_k: 0.0009, line_expansion_per_k: 0, time_constant_s: 5400 },
  } as KnownLine;
  expect(heldFor("warmer", warm, "us")).toBe("18.0\u00A0°F");
  expect(heldFor("warmer", warm, "si")).toBe("10.0\u00A0°C");
  expect(heldFor("expansion", warm, "us")).toBe("0.000500\u00A01/°F");
  expect(heldFor("line_expansion", warm, "us")).toBe("left out");
  expect(heldFor("time_constant", warm, "us")).toBe("90.0\u00A0min");
});

test("quiet times are long enough, too short, or not determined", () => {
  const told = (quiet_enough: number | null) => ({ quiet_enough, quiet_needed_s: 3600 }) as Detection;
  expect(quietState(told(1), [7200, 60])).toEqual({ state: "meets", words: "Meets: 1 of 2 long enough" });
  expect(quietState(told(0), [60])).toEqual({ state: "falls short", words: "Falls short: too short" });
  expect(quietState(told(0), [60, 70]).words).toBe("Falls short: none of 2 long enough");
  expect(quietState(told(null), [])).toEqual({ state: "not determined", words: "Not determined" });
});

test("the view's values are those of its line, with what the stiffness of the pipe asks", () => {
  const part = (kind: string, id: string, product: string | null, path = `${kind}.${id}`) =>
    ({ kind, id, product, path, fields: [] }) as unknown as Part;
  const parts = [
    part("pump", "P1", "regular"),
    part("pump", "P2", "diesel"),
    part("leak_detector", "leak_detector", "diesel", "pump.P2.leak_detector"),
    part("line", "a", null),
    part("line", "b", null),
  ];
  const shown = lineTestParts(parts, "regular", ["a"]);
  expect(shown.map((s) => s.part.id)).toEqual(["P1", "a"]);
  const fields = ["bore", "wall"].map((key) => ({ key }) as Field);
  expect(fieldsOf(fields, shown[1]?.keys ?? []).map((f) => f.key)).toEqual(["bore", "wall"]);
  expect(fieldsOf([{ key: "pipe.wall" } as Field], ["pipe"])).toEqual([]);
});
