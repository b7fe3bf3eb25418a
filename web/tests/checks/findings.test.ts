import { expect, test } from "vitest";
import { partAt } from "../../src/api/station";
import {
  barOf,
  editsOf,
  grouped,
  originsOf,
  ruleOf,
  shownOf,
  sideOf,
  sourceOf,
  subjectsOf,
} from "../../src/panels/checks/findings";
import type { Finding } from "../../src/panels/parts/finding";
import { field, gpm, part } from "../flow/told";

function finding(more: Partial<Finding>): Finding {
  return {
    rule: "nozzle-flow-cap",
    requirement: "a nozzle delivers no more than the cap",
    subject: "D1.a",
    state: "falls short",
    clause: "40 CFR 1090.1550(b)",
    edition: null,
    clause_verified: true,
    limit: 10 * gpm,
    value: 12 * gpm,
    margin: -2 * gpm,
    unit: "m3/s",
    of: "fuel",
    reason: null,
    change: null,
    line: 12,
    path: "dispenser.D1.hose.D1.a",
    ...more,
  };
}
const keep = (value: number, more: Partial<Finding> = {}) =>
  finding({
    rule: "flow-to-keep",
    clause: null,
    limit: 8 * gpm,
    value: value * gpm,
    margin: (value - 8) * gpm,
    ...more,
  });

const hose = (id: string, fields: string[] = ["limiter"]) =>
  part(id, { fields: fields.map((key) => field(key, { path: `dispenser.D1.hose.${id}.${key}`, kind: "flow" })) });

test("what falls short comes first, then close, not determined, meets", () => {
  const all = [
    keep(9, { state: "meets" }),
    keep(8, { state: "not determined" }),
    keep(8.1, { state: "close" }),
    keep(7),
  ];
  expect(grouped(all).map((g) => g.state)).toEqual(["falls short", "close", "not determined", "meets"]);
});

test("findings that say the same are one row, others are not", () => {
  const alike = [finding({}), finding({ subject: "D1.b", value: 12.5 * gpm, margin: -2.5 * gpm })];
  expect(grouped(alike)).toHaveLength(1);
  expect(grouped([...alike, finding({ subject: "D2.a", reason: "it rests on a default" })])).toHaveLength(2);
});

test("the margin tells on which side of the limit is good", () => {
  expect(sideOf([finding({})])).toBe("at most");
  expect(sideOf([finding({ value: 9 * gpm, margin: gpm, state: "meets" })])).toBe("at most");
  expect(sideOf([keep(7)])).toBe("at least");
  expect(sideOf([keep(9, { state: "meets" })])).toBe("at least");
});

test("a margin that does not go with its value tells nothing", () => {
  expect(sideOf([keep(9, { margin: -0.3 * gpm })])).toBeNull();
  expect(sideOf([finding({ limit: null, value: null, margin: null })])).toBeNull();
  expect(sideOf([keep(8)])).toBeNull();
});

test("values and limits in the units chosen, told apart where they differ", () => {
  const [group] = grouped([keep(7.98), keep(7.5, { subject: "D1.b" })]);
  expect(shownOf(group!, "at least", "us")).toEqual({
    value: "7.50 to 7.98\u00A0gpm",
    limit: "at least 8.00\u00A0gpm",
    margin: "−0.50\u00A0gpm",
    decimals: 2,
  });
  const [near] = grouped([keep(7.98)]);
  expect(shownOf(near!, "at least", "us").value).toBe("7.98\u00A0gpm");
  expect(shownOf(near!, "at least", "si").limit).toBe("at least 30.3\u00A0L/min");
});

test("without a value there is no bar and no margin", () => {
  const [group] = grouped([finding({ value: null, margin: null, state: "not determined" })]);
  expect(barOf(group!, "at most", "us")).toBeNull();
  expect(shownOf(group!, "at most", "us").value).toBe("no value");
});

test("the bar holds value and limit", () => {
  const [group] = grouped([finding({}), finding({ subject: "D1.b", value: 11 * gpm, margin: -gpm })]);
  const bar = barOf(group!, "at most", "us")!;
  expect(bar.from).toBeLessThan(bar.value);
  expect(bar.value).toBeLessThan(1);
  expect(bar.limit).toBeLessThan(bar.from);
});

test("each source says how far it is known", () => {
  expect(sourceOf(finding({})).short).toBe("text seen");
  expect(sourceOf(finding({ clause_verified: false })).sure).toContain("was not verified");
  expect(sourceOf(finding({ clause: "common practice", clause_verified: false })).sure).toContain("no clause");
  expect(sourceOf(keep(7)).clause).toBe("Your own target");
});

test("many subjects are counted", () => {
  const [group] = grouped(Array.from({ length: 8 }, (_, i) => finding({ subject: `D${i}` })));
  expect(subjectsOf(group!)).toBe("D0, D1, D2, D3 and 4 more");
});

test("the innermost part at a path", () => {
  const dispenser = { ...hose("x"), path: "dispenser.D1", id: "D1" };
  const parts = [dispenser, hose("D1.a")];
  expect(partAt(parts, "dispenser.D1.hose.D1.a")?.id).toBe("D1.a");
  expect(partAt(parts, "dispenser.D1.hose.D1.a.limiter")?.id).toBe("D1.a");
  expect(partAt(parts, "dispenser.D10")).toBeNull();
  expect(partAt(parts, null)).toBeNull();
});

test("only a remedy that names a key of its part and a value can be tried", () => {
  const parts = [hose("D1.a"), hose("D1.b"), hose("D2.a", [])];
  const change = 'fit a limiter: limiter = "10 gpm"';
  const both = grouped([finding({ change }), finding({ subject: "D1.b", path: "dispenser.D1.hose.D1.b", change })]);
  expect(editsOf(both[0]!, parts)).toEqual([
    { path: "dispenser.D1.hose.D1.a.limiter", value: '"10 gpm"' },
    { path: "dispenser.D1.hose.D1.b.limiter", value: '"10 gpm"' },
  ]);
  const one = (more: Partial<Finding>) => editsOf(grouped([finding(more)])[0]!, parts);
  expect(one({ change: "lower the largest loss" })).toEqual([]);
  expect(one({ change: "enter bypass = true or false" })).toEqual([]);
  expect(one({ change, path: "dispenser.D1.hose.D2.a" })).toEqual([]);
  expect(one({ change, path: null })).toEqual([]);
});

test("pressures and leaks of vapor are told in their own units", () => {
  const row = (more: Partial<Finding>) => grouped([finding({ of: "vapor", ...more })])[0]!;
  const truck = row({ unit: "Pa", limit: 4483.6, value: 1245.4, margin: 3238.2 });
  expect(shownOf(truck, "at most", "us").value).toBe("5.0\u00A0inH2O");
  expect(shownOf(truck, "at most", "us").limit).toBe("at most 18.0\u00A0inH2O");
  expect(shownOf(row({ unit: "m3/s", value: 7.8658e-6, limit: null, margin: null }), null, "us").value).toBe(
    "1.00\u00A0ft³/h",
  );
});
test("what is wanted in the site file is no rule, and is not said to be asked for on Flow", () => {
  const [row] = grouped([finding({ rule: "flotation-factor-empty", clause: null })]);
  expect(sourceOf(row!.findings[0]).short).toBe("wanted in the site file");
});

test("a finding is of a rule set, or of the sheet that it is computed on", () => {
  const all = [
    finding({ study: "flow" }),
    finding({ study: null, set: "Fire code for the forecourt" }),
    finding({ study: null, set: "Fire code for the forecourt" }),
    finding({}),
  ];
  expect(originsOf(all)).toEqual(["Flow, computed", "Fire code for the forecourt"]);
});

test("the age of a test is shown in days", () => {
  const day = 86400;
  const late = grouped([
    finding({ unit: "s", of: "age", limit: 365 * day, value: 400 * day, margin: -35 * day, state: "falls short" }),
  ])[0];
  expect(late && shownOf(late, "at most", "us")).toMatchObject({ value: "400\u00A0d", limit: "at most 365\u00A0d" });
});

test("a margin of temperature has no zero of its own", () => {
  const [warm] = grouped([finding({ unit: "K", limit: 300, value: 292, margin: 8, state: "meets" })]);
  expect(shownOf(warm!, "at most", "us").margin).toBe("14.4\u00A0°F");
  expect(shownOf(warm!, "at most", "si").margin).toBe("8.0\u00A0°C");
});

test("rules of one id in two sets are two requirements", () => {
  const alike = [
    finding({ study: null, set: "Fire code" }),
    finding({ study: null, set: "Wishes" }),
    finding({ study: "flow" }),
    finding({ study: "flow", subject: "D1.b" }),
  ];
  expect(new Set(alike.map(ruleOf)).size).toBe(3);
  expect(grouped(alike)).toHaveLength(3);
});

test("what a rule set asks without a clause is a wish of it", () => {
  const wish = sourceOf(finding({ study: null, set: "Wishes of an invented owner", clause: null, clause_verified: false }));
  expect(wish).toEqual({
    clause: "Wishes of an invented owner",
    sure: "It is no code: a wish of this rule set.",
    short: "a wish",
  });
});

test("a time is shown in seconds, minutes or hours by the size of its limit", () => {
  const told = (limit: number, value: number) => {
    const [row] = grouped([finding({ unit: "s", limit, value, margin: limit - value })]);
    const { value: shown, limit: most } = shownOf(row!, "at most", "us");
    return [shown, most];
  };
  expect(told(60, 30)).toEqual(["30.0\u00A0s", "at most 60.0\u00A0s"]);
  expect(told(1800, 60)).toEqual(["1.0\u00A0min", "at most 30.0\u00A0min"]);
  const [unlimited] = grouped([finding({ unit: "s", limit: null, value: 5400, margin: null })]);
  expect(shownOf(unlimited!, null, "us").value).toBe("90.0\u00A0min");
  expect(told(24 * 3600, 6 * 3600)).toEqual(["6.0\u00A0h", "at most 24.0\u00A0h"]);
});
