import { expect, test } from "vitest";
import {
  controlWords,
  keepsWords,
  openWords,
  proofWords,
  reasonsOf,
  shownWords,
  spanRows,
} from "../../src/panels/flow/told/words";
import { sentence } from "../../src/draw/words";
import type { ControlTold, SpanTold, WorstTold } from "../../src/panels/flow/told/documents";
import { gpm, hose, psi, system } from "./told";

const control = (more: Partial<ControlTold>): ControlTold => ({
  id: "pumps",
  kind: "lead-lag",
  order: ["P1", "P2"],
  hoses_open: 8,
  starts_below_pressure_gauge_pa: 22 * psi,
  stops_above_pressure_gauge_pa: 27 * psi,
  hoses_calling: null,
  holds_pressure_gauge_pa: null,
  speed_share: null,
  pressure: null,
  state_told: 0,
  short_cycles_with_state: null,
  states: [
    {
      pumps: ["P1", "P2"],
      determined: true,
      line_pressure_gauge_pa: 23 * psi,
      total_flow_m3_per_s: 80 * gpm,
    },
  ],
  ...more,
});

test("lead and lag by line pressure", () => {
  expect(controlWords(control({}), "us")).toEqual([
    "pumps: P1 and P2 start in this order, the next below 22.0\u00A0psi; the last stops above 27.0\u00A0psi.",
    "P1 and P2 run, at a line pressure of 23.0\u00A0psi.",
  ]);
});

test("a speed that holds, and one that cannot", () => {
  const speed = { kind: "variable-speed", order: ["P3"], holds_pressure_gauge_pa: 26 * psi, speed_share: 0.9 };
  expect(controlWords(control({ ...speed, pressure: "held" }), "us")[0]).toBe(
    "pumps: P3 at 90.0\u00A0% of full speed; holds 26.0\u00A0psi.",
  );
  expect(controlWords(control({ ...speed, pressure: "not reached" }), "us")[0]).toContain("is not reached");
});

test("why numbers are missing is said once", () => {
  const missing = system([hose("D1.a", null)], { status: "not determined", reason: "pump P1 has no curve" });
  expect(reasonsOf([missing, missing])).toEqual(["Regular: not determined, pump P1 has no curve."]);
  expect(reasonsOf([system([hose("D1.a", 10)])])).toEqual([]);
});

test("the largest number of hoses that keep the flow", () => {
  expect(keepsWords(0, 8, 10 * gpm, "us")).toBe("Not one hose alone keeps 10\u00A0gpm.");
  expect(keepsWords(6, 8, 8 * gpm, "us")).toBe(
    "Every open hose keeps 8\u00A0gpm with up to 6 of 8 open; with 7 one does not.",
  );
  expect(keepsWords(8, 8, 8 * gpm, "us")).toBe("Every open hose keeps 8\u00A0gpm, also with all 8 open.");
  expect(keepsWords(1, 1, 8 * gpm, "us")).toBe("The one hose keeps 8\u00A0gpm.");
});

test("which hoses are open", () => {
  const ids = Array.from({ length: 12 }, (_, i) => `D${i}`);
  const worst = { hose_count: 12, hoses: ids.map((id) => ({ id })) } as unknown as WorstTold;
  expect(openWords([], worst)).toBe("none open");
  expect(openWords(["D1"], worst)).toBe("D1 alone");
  expect(openWords(ids, worst)).toBe("all 12 open");
  expect(openWords(ids.slice(0, 11), worst)).toBe("all but D11");
  expect(openWords(["D1", "D2"], worst)).toBe("D1, D2");
});

test("what is only found is never called proved", () => {
  expect(proofWords("enumeration")).toBe("proved: every set solved");
  expect(proofWords("argument")).toBe("proved by argument");
  expect(proofWords("best found")).toBe("best found, not proved");
  expect(proofWords(null)).toBe("–");
});

test("the widest span comes first, what is not determined last and once a reason", () => {
  const end = (flow: number) => ({ slowest_flow_m3_per_s: flow * gpm });
  const span = (subject: string, more: Partial<SpanTold>): SpanTold => ({
    kind: "entered value",
    subject,
    system: "regular",
    quantity: "a pressure",
    low_si: psi,
    high_si: 3 * psi,
    at_low: end(9),
    at_likely: end(9.5),
    at_high: end(10),
    note: null,
    reason: null,
    ...more,
  });
  const none = { at_low: null, at_likely: null, at_high: null, reason: "it is not entered" };
  const rows = spanRows([span("a", none), span("b", { at_low: end(9.4) }), span("c", {}), span("d", none)], "us");
  expect(rows.map((r) => r.what)).toEqual(["c", "b", "a; d"]);
  expect(rows[0]?.range).toBe("1.0 to 3.0\u00A0psi");
});

test("sentences end once", () => {
  expect(sentence("enter a curve")).toBe("Enter a curve.");
  expect(sentence("Is it so?")).toBe("Is it so?");
  expect(sentence("")).toBe("");
});

test("which hose is shown, and what share of a blend its product is", () => {
  expect(shownWords(hose("D2.m", 5, { share: 0.6 }), true, "regular")).toBe(
    "Shown: D2.m, as chosen; 60.0\u00A0% of it is regular.",
  );
  expect(shownWords(hose("D2.m", 5, { share: 0.6 }), false, "regular")).toContain("60.0\u00A0%");
  expect(shownWords(hose("D2.a", 5), false, "regular")).toBe("");
  expect(shownWords(null, true, "regular")).toBe("");
});
