import { expect, test } from "vitest";
import {
  comparedRow,
  differingRows,
  findingChangeWords,
  verdictWords,
  worthHeadline,
  worthWords,
} from "../../src/panels/flow/told/compare";
import type { WorthStep, WorthTold } from "../../src/panels/flow/told/documents";
import { gpm, psi } from "./told";

const step = (open: number, a: number, b: number, more: Partial<WorthStep> = {}): WorthStep => ({
  open,
  slowest_a_m3_per_s: a * gpm,
  slowest_b_m3_per_s: b * gpm,
  gain: b / a - 1,
  verdict: b > a * 1.01 ? "gains" : "same",
  same_flow: a === b,
  proof_a: "enumeration",
  proof_b: "enumeration",
  ...more,
});
const worth = (more: Partial<WorthTold> = {}): WorthTold => ({
  system: "regular",
  least_gain: 0.01,
  worth_it_from: 2,
  worse_from: null,
  keeps_a: null,
  keeps_b: null,
  nothing_below: false,
  limiters_hold_below: false,
  steps: [step(1, 12, 12), step(2, 10, 11), step(3, 8, 10)],
  ...more,
});

test("the answer comes first", () => {
  expect(worthHeadline(worth())).toBe("B is worth it from 2 hoses open");
  expect(worthHeadline(worth({ worth_it_from: 1 }))).toBe("B is worth it from 1 hose open");
  expect(worthHeadline(worth({ worth_it_from: null, worse_from: 3 }))).toBe("B is worse from 3 hoses open");
  expect(worthHeadline(worth({ worth_it_from: null, nothing_below: true }))).toBe(
    "B buys nothing at any number of hoses open",
  );
  expect(worthHeadline(worth({ worth_it_from: null }))).toBe(
    "There is no number of hoses open from which B is worth it",
  );
  const unknown = [step(1, 12, 12, { verdict: "not determined" })];
  expect(worthHeadline(worth({ worth_it_from: null, steps: unknown }))).toBe("Whether B is worth it is not determined");
});

test("then the numbers, in the units chosen", () => {
  expect(worthWords(worth(), "us")[0]).toBe(
    "The slowest hose gives 11.0\u00A0gpm instead of 10.0\u00A0gpm (+10.0\u00A0%), and 10.0\u00A0gpm instead of 8.0\u00A0gpm (+25.0\u00A0%) with all 3 open.",
  );
  expect(worthWords(worth(), "si")[0]).toContain("41.6\u00A0L/min");
});

test("what was not proved is said", () => {
  expect(worthWords(worth(), "us").join(" ")).not.toContain("not proved");
  const found = worth({ steps: [step(1, 12, 12), step(2, 10, 11, { proof_b: "best found" })] });
  expect(worthWords(found, "us").at(-1)).toContain("not proved");
});

test("a figure in A and in B, the change as shown", () => {
  const row = {
    topic: "pump rise",
    open: "all",
    system: "regular",
    of: "P1",
    differs: true,
    a_pa: 25.76 * psi,
    b_pa: 26.24 * psi,
  };
  expect(comparedRow(row, "us")).toEqual({ what: "pump rise, P1", unit: "psi", a: "25.8", b: "26.2", change: "+0.4" });
});

test("gauge pressures say so, counts have no unit, what is missing is a dash", () => {
  const gauge = {
    topic: "inlet pressure",
    open: null,
    system: null,
    of: "D1",
    differs: true,
    a_gauge_pa: 20 * psi,
    b_gauge_pa: null,
  };
  expect(comparedRow(gauge, "us")).toMatchObject({ unit: "psi gauge", a: "20.0", b: "–", change: "–" });
  const joints = {
    topic: "joints in total",
    open: null,
    system: null,
    of: null,
    differs: true,
    a_count: 8,
    b_count: 10,
  };
  expect(comparedRow(joints, "us")).toMatchObject({ what: "joints in total", unit: "", a: "8", b: "10", change: "+2" });
});

test("verdicts in words", () => {
  expect(verdictWords(step(1, 12, 12))).toBe("the same");
  expect(verdictWords(step(1, 12, 12.05))).toBe("no more than the least gain");
  expect(verdictWords(step(1, 12, 13))).toBe("gains");
});

test("findings that change alike are said once", () => {
  const change = (subject: string, b: string | null) => ({ rule: "flow-to-keep", subject, a: "falls short", b });
  expect(findingChangeWords([change("D1.a", "meets"), change("D1.b", "meets"), change("D2.a", null)])).toEqual([
    "D1.a, D1.b: flow to keep falls short in A, meets in B.",
    "D2.a: flow to keep falls short in A, not asked in B.",
  ]);
});

test("only figures that differ as shown are listed, pipes by their bore", () => {
  const flow = (a: number, b: number) => ({
    topic: "hose flow",
    open: "alone",
    system: "regular",
    of: "D1.a",
    differs: true,
    a_m3_per_s: a * gpm,
    b_m3_per_s: b * gpm,
  });
  expect(differingRows([flow(10, 10.01), flow(10, 11)], "us").map((r) => r.b)).toEqual(["11.0"]);
  const pipe = {
    topic: "pipe of one bore",
    open: null,
    system: null,
    of: null,
    differs: true,
    bore_m: 0.0762,
    a_m: 0,
    b_m: 30,
  };
  expect(differingRows([pipe], "us")[0]?.what).toBe("pipe of 3.00\u00A0in bore");
});
