import { describe, expect, test } from "vitest";
import { exceedancePlan } from "../../src/draw/curve_exceedance";
import { outside, traceOf, type RunTold } from "../../src/draw/curve_trace";
import { listed } from "../../src/draw/tracks";
import { shownLedger } from "../../src/panels/incident/answer/ledger";
import { alikeWords, rowsAt, toldOf } from "../../src/panels/incident/answer/rows";
import { tellingRun, viewOf } from "../../src/panels/incident/answer/view";
import type { IncidentDocument } from "../../src/panels/incident/answer/documents";
import struck from "./struck.json";

const document = struck as unknown as IncidentDocument;
const run = (name: string) => ({ is: "run", name }) as const;
const view = (b: string | null) => viewOf(document, null, null, b === null ? null : run(b), b !== null)!;

describe("series that both choices share", () => {
  const same = view("without sump");
  test("get a sentence and no chart", () => {
    const flow = toldOf(same).find((o) => o.name === "escaping")!;
    expect(flow.alike).toBe(true);
    expect(alikeWords(flow, same, "us")).toMatch(/^Leak flow: the same in both all the time, .* has no chart\.$/);
  });
  test("those that differ get a chart", () => {
    expect(toldOf(same).find((o) => o.name === "sump")?.alike).toBe(false);
    expect(toldOf(view("without shear valve")).find((o) => o.name === "escaped")?.alike).toBe(false);
  });
  test("those that stay at nothing are not told", () => {
    expect(toldOf(same).some((o) => o.name === "interceptor")).toBe(false);
  });
});

test("B less A is the difference of what is shown, as fine as the coarser of them", () => {
  const v = view("without shear valve");
  for (const row of rowsAt(v, toldOf(v), 30, "us")) {
    const number = (text: string) => Number(text.replace("−", "-").replace(/[\u00A0+]/g, ""));
    const [a, b, change] = [...row.shown, row.change].map(number);
    const finest = [...row.shown].map((text) => text.split(".")[1]?.length ?? 0);
    expect(Number((b! - a!).toFixed(Math.min(...finest)))).toBeCloseTo(change!, 9);
  }
});

test("the second choice that shows most lacks one barrier and loses clearly more", () => {
  expect(tellingRun(document.result.runs)?.name).toBe("without shear valve");
});

describe.each(["us", "si"] as const)("the ledger in %s units", (units) => {
  test.each(document.result.runs.map((r) => [r.name, r] as const))("%s adds up as shown", (_, told) => {
    for (const decimals of [0, 1, 2]) {
      const ledger = shownLedger(told, units, decimals);
      expect(ledger.escapes.reduce((sum, l) => sum + l.steps, 0)).toBe(ledger.lost);
      for (const p of ledger.places) expect(p.start + p.in - p.out).toBe(p.end);
      const held = ledger.places.filter((p) => (outside as readonly string[]).includes(p.place));
      expect(held.reduce((sum, p) => sum + p.end - p.start, 0)).toBe(ledger.lost);
    }
  });
});

test("where all runs end the same there is no second choice", () => {
  const [first] = document.result.runs;
  expect(tellingRun([first!, { ...first!, name: "without check valve", missing: ["check-valve"] }])).toBeUndefined();
});

test("an event that both have at the same time stands in the list once", () => {
  const v = view("without sump");
  const all = listed(v.a.trace, v.b!.trace);
  expect(all.filter((e) => e.who === "both").length).toBeGreaterThan(3);
  all.slice(1).forEach((e, i) => expect(e.event.time_s).toBeGreaterThanOrEqual(all[i]!.event.time_s));
});

const event = (time_s: number, what: string, held: Record<string, number> = {}) => ({
  time_s,
  what,
  of: "",
  escaped_m3: 0,
  flow_m3_per_s: 0,
  pressure_gauge_pa: null,
  held,
});

test("a link's course ends when it parts", () => {
  const told: RunTold = {
    name: "",
    counted_s: 10,
    events: [event(0, "it happens"), event(4, "the fusible link parts")],
    chart: { time_s: [0, 2, 4, 10], link_temperature_k: [290, 320, 350, 350], escaping_m3_per_s: [0, 0, 0, 0] },
    chart_between: null,
  };
  expect(traceOf(told, 4).courses.get("link")?.time.at(-1)).toBe(4);
  expect(traceOf(told, 6).courses.get("link")?.time.at(-1)).toBe(10);
});

test("what swings between the points is told as its mean with a band", () => {
  const told: RunTold = {
    name: "",
    counted_s: 200,
    events: [],
    chart: {
      time_s: [0, 100, 200],
      escaping_m3_per_s: [2, 2, 2],
      slab_m3: [0, 100, 200],
      pressure_gauge_pa: [5, 5, 5],
    },
    chart_between: {
      escaping_m3_per_s: { mean: [2, 1, 1], low: [2, 0, 0], high: [2, 2, 2] },
      pressure_gauge_pa: null,
    },
  };
  const trace = traceOf(told);
  expect(trace.courses.get("escaping")).toEqual({ time: [0, 100, 100, 200], value: [1, 1, 1, 1] });
  expect(trace.bands.get("escaping")?.high.value).toEqual([2, 2, 2, 2]);
  expect(trace.bands.has("pressure")).toBe(false);
  expect(trace.courses.get("pressure")?.value).toEqual([5, 5, 5]);
  expect(traceOf({ ...told, chart_between: null }).bands.size).toBe(0);
});

test("what comes out at once is a step", () => {
  const told: RunTold = {
    name: "",
    counted_s: 20,
    events: [],
    chart: { time_s: [0, 10, 10, 20], escaping_m3_per_s: [0, 0, 0, 0], slab_m3: [0, 0, 5, 5] },
    chart_between: null,
  };
  expect(traceOf(told).courses.get("escaped")?.value).toEqual([0, 0, 5, 5]);
});

test("a pressure that is not determined has no course", () => {
  const told: RunTold = {
    name: "",
    counted_s: 20,
    events: [],
    chart: { time_s: [0, 20], escaping_m3_per_s: [0, 0], slab_m3: [0, 0], pressure_gauge_pa: null },
    chart_between: null,
  };
  expect(traceOf(told).courses.has("pressure")).toBe(false);
});

test("before its first point a course holds what the events say", () => {
  const told: RunTold = {
    name: "",
    counted_s: 5,
    events: [event(0, "sets off", { slab_m3: 0 }), event(1, "parts", { slab_m3: 0 })],
    chart: { time_s: [1, 5], slab_m3: [0, 4], escaping_m3_per_s: [1, 1] },
    chart_between: null,
  };
  const slab = traceOf(told).courses.get("slab")!;
  expect(slab.time).toEqual([0, 1, 1, 5]);
  expect(slab.value).toEqual([0, 0, 0, 4]);
});

test("the exceedance curve falls from all runs to none", () => {
  const plan = exceedancePlan([1, 2, 4], [1, 0.5, 0], 300, 150);
  const points = plan.path.slice(1).split("L").map((p) => p.split(" ").map(Number));
  const heights = [1, 1, 0.5, 0].map((share) => plan.yTicks.find((t) => t.share === share)!.y);
  const places = [0, 1, 2, 4].map((value) => plan.xTicks.find((t) => t.value === value)!.x);
  expect(points).toEqual(places.map((x, i) => [x, heights[i]]));
});
