import { describe, expect, test } from "vitest";
import { at } from "../../src/draw/curve_trace";
import {
  flowAt,
  jetAt,
  jointly,
  momentOf,
  poolAt,
  renamed,
  scalesIn,
  sumpAt,
  type Extents,
} from "../../src/draw/scene";
import { rowsAt, toldOf } from "../../src/panels/incident/answer/rows";
import { sidesOf } from "../../src/panels/replay/view";
import { viewOf } from "../../src/panels/incident/answer/view";
import type { IncidentDocument } from "../../src/panels/incident/answer/documents";
import struck from "./struck.json";

const document = struck as unknown as IncidentDocument;
const view = viewOf(document, null, null, { is: "run", name: "without shear valve" }, true)!;
const svg =
  '<svg id="scene" aria-labelledby="scene-title scene-desc" data-full-sump-m3="0.3" data-full-pool-m3="0.08" ' +
  'data-full-flow-m3-per-s="0.006" data-full-jet-m="2">';
const full = scalesIn(svg);
const extents: Record<string, number> = { "data-full": 78, "data-foot": 200, "data-middle": 150 };
const of: Extents = (name) => extents[name]!;

test("a drawing says its scales; what it has not is null", () => {
  expect(full).toEqual({ sump: 0.3, slab: 0.08, escaping: 0.006, jet: 2 });
  expect(scalesIn("<svg>")).toEqual({ sump: null, slab: null, escaping: null, jet: null });
});

describe.each([...view.marks, 0.05, 3.3, 12, 44.9, 300])("at %d s", (t) => {
  const rows = rowsAt(view, toldOf(view), t, "si");
  const sides = sidesOf(view).map((s, i) => [s.letter, s, i] as const);
  test.each(sides)("scene %s shows what the table tells", (_, side, i) => {
    const now = momentOf(side.trace, t, 0);
    const value = (name: string) => rows.find((r) => r.name === name)!.values[i]!;
    const height = Number(sumpAt(now, full, of)["height"]);
    expect((height / 78) * 0.3).toBeCloseTo(value("sump"), 4);
    expect(Number(sumpAt(now, full, of)["y"])).toBeCloseTo(200 - height, 1);
    const width = Number(poolAt(now, full, of)["width"]);
    expect((width / 2 / 78) ** 2 * 0.08).toBeCloseTo(value("slab"), 4);
    const thick = Number(flowAt(now, full, of)["stroke-width"]);
    expect((thick / 78) * 0.006).toBeCloseTo(Math.min(value("escaping"), 0.006), 5);
    expect(flowAt(now, full, of)["display"]).toBe(value("escaping") > 0 ? "inline" : "none");
  });
});

test("a jet is drawn only where one is told, from its least to its greatest height", () => {
  const now = { sump: null, slab: null, escaping: null, jetLow: 0.5, jetHigh: 1, stands: true };
  expect(jetAt(now, full, of)?.[1]).toEqual({ y1: "180.50", y2: "161.00" });
  expect(jetAt({ ...now, jetHigh: null }, full, of)).toBeNull();
  expect(jetAt(now, { ...full, jet: null }, of)).toBeNull();
});

test("points that have no value have none between them either", () => {
  const side = view.a;
  const chart = { time_s: [0, 1, 2], jet_high_m: [null, 1, 1], jet_low_m: [null, 0.5, 0.5] };
  const told = { ...document, result: { ...document.result, runs: [{ ...side.run, chart }] } };
  const { trace } = viewOf(told, null, null, null, false)!.a;
  expect([0, 0.5, 1, 1.5].map((t) => at(trace, "jet high", t))).toEqual([null, null, 1, 1]);
});

test("the dispenser stands until it lies", () => {
  expect(momentOf(view.a.trace, 0, 0).stands).toBe(true);
  expect(momentOf(view.a.trace, 0.001, 0).stands).toBe(false);
  expect(momentOf(view.a.trace, 500, null).stands).toBe(true);
});

test("two drawings share their scales but for the sump, and have ids of their own", () => {
  const other = { sump: 9, slab: 1, escaping: null, jet: 1 };
  expect(jointly(full, other)).toEqual({ sump: 0.3, slab: 1, escaping: 0.006, jet: 2 });
  expect(renamed(svg, "scene-B")).toContain('aria-labelledby="scene-B-title scene-B-desc"');
});
