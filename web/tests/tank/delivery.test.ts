import { describe, expect, test } from "vitest";
import { evenClockOf, ticksOf, tickText } from "../../src/draw/clock";
import type { DeliveryRun } from "../../src/panels/tank/delivery/documents";
import { bandAt } from "../../src/panels/tank/delivery/band";
import { chartWords, drawnOf } from "../../src/panels/tank/delivery/charts";
import { compartmentsOf, layoutOf, surfaceOf } from "../../src/panels/tank/delivery/scene/layout";
import { finalRows, rowsAt } from "../../src/panels/tank/delivery/rows";
import { doingAt, hasVent, hoseAt, returnAt, ventAt } from "../../src/panels/tank/delivery/state_at";
import { at, passedBy, restingAt, traceOf, ventedOf } from "../../src/panels/tank/delivery/trace";
import { noChoice, tellingRun, viewOf } from "../../src/panels/tank/delivery/view";
import { bookOf, hoseWords, undeterminedWords } from "../../src/panels/tank/delivery/words";
import { documentOf, run, ullage, ventAlone } from "./made";

const plain = (text: string) => text.replaceAll("\u00A0", " ");
/** A view of the two runs, A and B. */
const viewed = () => {
  const view = viewOf(documentOf(run(), ventAlone()), "", "");
  if (!view) throw new Error("no view");
  return view;
};

describe("an even time scale", () => {
  test("runs evenly and names whole times", () => {
    const clock = evenClockOf(1136);
    expect(clock.placeOf(284)).toBeCloseTo(0.25, 12);
    expect(clock.timeOf(clock.placeOf(700))).toBeCloseTo(700, 9);
    expect(ticksOf(clock).map((t) => plain(tickText(t)))).toEqual(["0", "5 min", "10 min", "15 min"]);
    expect(ticksOf(evenClockOf(95)).map((t) => plain(tickText(t)))).toEqual(
      ["0", "20 s", "40 s", "60 s", "80 s"].map((t) => t.replace("60 s", "1 min")),
    );
    expect(ticksOf(evenClockOf(0))).toEqual([0]);
  });
});

describe("the trace of a run", () => {
  const trace = traceOf(run());

  test("sums drops and compartments, and takes the later value at a step", () => {
    expect(at(trace, "rate", 50)).toBe(0.01);
    expect(at(trace, "rate", 100)).toBe(0);
    expect(at(trace, "rate", 225)).toBe(0.01);
    expect(at(trace, "left", 50)).toBeCloseTo(1.5, 12);
    expect(at(trace, "full T3", 250)).toBeCloseTo(0.55, 12);
    expect(at(trace, "truck", 300)).toBe(-120);
  });

  test("has no value after its end, but what rests stays", () => {
    expect(at(trace, "left", 301)).toBeNull();
    expect(restingAt(trace, "left", 1000)).toBe(0);
    expect(restingAt(trace, "full T1", 1000)).toBeCloseTo(0.6, 12);
  });

  test("counts vapor from its rates and ends where the study says", () => {
    expect(at(trace, "vented", 250)).toBe(0);
    expect(at(trace, "vented", 300)).toBeCloseTo(0.6, 12);
    expect(at(trace, "returned", 100)).toBeCloseTo(1.25, 12);
    expect(at(trace, "returned", 300)).toBeCloseTo(2.5, 12);
  });

  test("spreads what the points miss over where something flows", () => {
    expect(passedBy([0, 1, 2], [1, 1, 1], 2)).toEqual([0, 1, 2]);
    const counted = passedBy([0, 1, 2, 3], [0, 0, -2, 0], -2.2);
    expect(counted[1]).toBe(0);
    expect(counted[3]).toBeCloseTo(-2.2, 12);
    expect(passedBy([0, 1], [0, 0], 5)).toEqual([0, 0]);
  });

  test("has no vapor counted where a pressure is not determined", () => {
    const open = run({ ullages: [ullage({ problem: "no vent is listed", vented_m3: null, to_truck_m3: null })] });
    expect(ventedOf(open)).toBeNull();
    expect(at(traceOf(open), "vented", 50)).toBeNull();
    expect(undeterminedWords(open.ullages[0] ?? ullage())).toContain(
      "above T1, T3 is not determined: no vent is listed.",
    );
  });

  test("is empty where a run has no chart", () => {
    expect(traceOf(run({ chart: null })).courses.size).toBe(0);
  });
});

describe("the choices", () => {
  test("B is the run that lets most vapor out, none where none is asked for", () => {
    const [first, vent, quiet] = [run(), ventAlone(), run({ name: "two drops at once" })];
    expect(tellingRun([first, quiet, vent], first)?.name).toBe("vent alone");
    expect(tellingRun([first, quiet], first)?.name).toBe("two drops at once");
    expect(viewOf(documentOf(first, vent), "", noChoice)?.b).toBeNull();
    expect(viewOf(documentOf(first, vent), "vent alone", "as entered")?.b?.run.name).toBe("as entered");
    expect(viewOf(documentOf(first), "gone", "gone")?.b).toBeNull();
    expect(viewOf(documentOf(run({ chart: null })), "", "")).toBeNull();
  });

  test("share one clock, as long as the longer run", () => {
    const view = viewed();
    expect(view.clock.end).toBe(300);
    expect(view.marks).toEqual([0, 200, 250, 300]);
  });
});

describe("how things stand", () => {
  const [one, trace] = [run(), traceOf(run())];
  const [front] = one.drops;
  const [vapor] = one.ullages;
  if (!front || !vapor) throw new Error("nothing made");

  test("a hose is on the fill while its drop runs", () => {
    expect(hoseAt(front, trace, 50)).toMatchObject({ joined: true, flows: true });
    expect(hoseAt(front, trace, 50).filled).toBeCloseTo(0.5, 12);
    expect(hoseAt(front, trace, 150)).toMatchObject({ joined: false, flows: false, filled: 0 });
    expect(hoseAt({ ...front, left_in_hose_m3: 0.05 }, trace, 150).joined).toBe(true);
    expect(hoseAt({ ...front, begins_s: null }, trace, 50).joined).toBe(false);
  });

  test("vents say open, shut, blocked, none and not determined", () => {
    expect(ventAt(vapor, true, trace, 100)).toBe("shut");
    expect(ventAt(vapor, true, trace, 280)).toBe("open");
    expect(ventAt({ ...vapor, vent_opens_at_pa: null }, true, trace, 100)).toBe("open");
    expect(ventAt({ ...vapor, vents: [] }, true, trace, 100)).toBe("blocked");
    expect(ventAt({ ...vapor, vents: [] }, false, trace, 100)).toBe("none");
    expect(ventAt({ ...vapor, problem: "no vent is listed" }, true, trace, 100)).toBe("not determined");
    expect(hasVent([run({ ullages: [ullage({ vents: [] })] }), run()], "T1, T3")).toBe(true);
  });

  test("air that is drawn in is told apart", () => {
    const chart = one.chart && { ...one.chart, vented_m3_per_s: { stack: [0, -0.01, -0.01, 0, 0, 0, 0] } };
    expect(ventAt(vapor, true, traceOf(run({ chart })), 100)).toBe("draws air");
  });

  test("the way back is on while vapor goes, at rest between drops, off without a hose", () => {
    expect(returnAt(one, vapor, trace, 50)).toBe("on");
    expect(returnAt(one, vapor, trace, 150)).toBe("at rest");
    expect(returnAt(ventAlone(), vapor, trace, 50)).toBe("off");
  });

  test("what happens is said in words", () => {
    expect(doingAt(one, trace, 50)).toBe("regular into T1");
    expect(doingAt(one, trace, 150)).toBe("hoses are changed over");
    expect(doingAt(one, trace, 300)).toBe("all is in the tanks");
    expect(doingAt(run({ stalled: true, all_dropped: false }), trace, 300)).toBe("stalled");
    const held = run({ all_dropped: false, drops: [{ ...front, end: "held by the overfill valve" }] });
    expect(doingAt(held, trace, 300)).toBe("front held by the overfill valve");
  });
});

describe("the table", () => {
  const shown = (t: number, units: "us" | "si" = "si") =>
    Object.fromEntries(rowsAt(viewed(), t, units).map((r) => [plain(r.label), r.shown.map(plain)]));

  test("tells both at the playhead", () => {
    const now = shown(100);
    expect(now["Vapor out of the vent, L"]).toEqual(["0.00", "1 200"]);
    expect(now["Drop rate, L/min"]).toEqual(["0", "1 200"]);
    expect(now["Vapor space, Pa"]).toEqual(["500", "480"]);
    expect(now["T1 full, %"]).toEqual(["60.0", "54.0"]);
    expect(now["Left in the truck, L"]).toEqual(["1 000", "1 200"]);
    expect(now["Time to finish"]).toEqual(["3 min 20 s", "2 min 30 s"]);
  });

  test("of a run that is over says so, and how it rests", () => {
    const now = shown(280);
    expect(now["Drop rate, L/min"]?.[1]).toBe("ended");
    expect(now["Vapor space, Pa"]?.[1]).toBe("ended");
    expect(now["T1 full, %"]?.[1]).toBe("60.0");
    expect(now["Time to finish"]?.[1]).toBe("ended");
  });

  test("has pressures of vapor in inches of water", () => {
    // SOURCE: [nist_sp811, appendix B.8] conventional inch of water, 249.0889 Pa
    expect(shown(300, "us")["Vapor space, inH2O"]?.[0]).toBe((800 / 249.0889).toFixed(1));
  });

  test("ends with what the study says", () => {
    const end = finalRows(viewed(), "si").map((r) => r.shown.map(plain));
    expect(end).toEqual([
      ["5 min", "4 min 10 s"],
      ["600", "3 000"],
      ["2 500", "0.00"],
    ]);
  });
});

describe("the vapor band", () => {
  const space = "T1, T3";
  const shown = (t: number) =>
    Object.fromEntries(bandAt(viewed(), space, t, "si").map((c) => [c.name, c.shown.map(plain)]));

  test("has seven cells from vehicle to tanker, with words where there is no number", () => {
    expect(Object.entries(shown(225))).toEqual([
      ["Vehicle", ["off", "off"]],
      ["Nozzle", ["0", "0"]],
      ["Tank vapor space", ["625", "1 080"]],
      ["Vent", ["shut", "open, 720 L/min"]],
      ["Return riser", ["525", "1 080"]],
      ["Vapor hose", ["213", "off"]],
      ["Tanker", ["−100", "open to the air"]],
    ]);
  });

  test("says where a run has ended, and that the hose is off between two drops", () => {
    expect(shown(280)["Vent"]?.[1]).toBe("ended");
    expect(shown(280)["Tanker"]?.[1]).toBe("ended");
    expect(shown(150)["Vapor hose"]?.[0]).toBe("off");
    expect(shown(150)["Return riser"]?.[0]).toBe("500");
  });

  test("says what is not determined, and what is not there", () => {
    const open = run({ ullages: [ullage({ problem: "no vent is listed" })], truck: { closed_to_ullage: false } });
    const none = { ullage_pressure_gauge_pa: {}, return_riser_pressure_gauge_pa: {}, vapor_hose_pressure_gauge_pa: {} };
    const cells = (one: DeliveryRun) => {
      const view = viewOf(documentOf({ ...one, chart: one.chart && { ...one.chart, ...none } }), "", "");
      return view ? bandAt(view, space, 50, "si").map((c) => c.shown[0]) : [];
    };
    const unknown = "not determined";
    expect(cells(open)).toEqual(["off", "0", unknown, unknown, unknown, "off", "open to the air"]);
    expect(cells(run({ truck: { closed_to_ullage: false } })).slice(4)).toEqual(["none", "off", "open to the air"]);
  });
});

describe("charts", () => {
  test("name the vent's setting and 90 and 95 %", () => {
    const drawn = drawnOf(viewed(), "si");
    expect(drawn.map((d) => d.name)).toEqual(["rate", "pressure T1, T3", "full T1", "full T3"]);
    expect(drawn[1]?.limits?.map((l) => plain(l.words))).toEqual(["Vent opens at 750 Pa"]);
    expect(drawn[2]?.limits?.map((l) => [l.at, plain(l.words)])).toEqual([
      [0.9, "90 %"],
      [0.95, "95 %"],
    ]);
    expect(drawn[1] && plain(chartWords(drawn[1], "si"))).toBe(
      "Vapor space pressure over time: A runs from 0 Pa to 800 Pa and ends at 800 Pa; " +
        "B runs from 0 Pa to 1 200 Pa and ends at 1 200 Pa.",
    );
  });
});

describe("what is left", () => {
  test("stays in the hose, and where it goes", () => {
    const one = run();
    const [front] = one.drops;
    if (!front) throw new Error("nothing made");
    expect(hoseWords(one, "si").map(plain)[0]).toBe("Front: the hose, which holds 100 L, drains into T1.");
    const stays = run({ drops: [{ ...front, left_in_hose_m3: 0.05 }] });
    expect(plain(hoseWords(stays, "si")[0] ?? "")).toBe(
      "Front: 50.0 L of 100 L stay in the hose. T1 has room for it below 95 %, 3 500 L, where the valve lets it in. " +
        "Taken off full, it spills into the spill container, which holds 20.0 L: 30.0 L run over.",
    );
  });

  test("the book adds up as it is shown", () => {
    const book = bookOf(run({ dropped_m3: 2.2001 }), "si");
    const value = (text: string) => Number(text.replaceAll("\u00A0", ""));
    expect(book.liquid.reduce((sum, m) => sum + value(m.amount), 0)).toBeCloseTo(value(book.dropped), 9);
    expect(book.vapor).toHaveLength(1);
  });
});

describe("the scene", () => {
  test("puts tanks, risers and vents side by side within its width", () => {
    for (const width of [340, 470, 700]) {
      const layout = layoutOf(width, ["T1", "T3"], [["T1", "T2", "T3"]]);
      const [first, second] = layout.tanks;
      if (!first || !second) throw new Error("no tanks");
      expect(first.x + first.width).toBeLessThan(second.x);
      expect(first.fill).toBeLessThan(first.riser);
      expect(layout.spaces[0]?.vent).toBeGreaterThan(second.x + second.width);
      expect(layout.spaces[0]?.vent).toBeLessThan(width);
    }
  });

  test("draws liquid to the scale of its tank", () => {
    const layout = layoutOf(470, ["T1"], [["T1"]]);
    expect(surfaceOf(layout, 0)).toBe(layout.foot);
    expect(surfaceOf(layout, 1)).toBe(layout.top);
    expect(surfaceOf(layout, 0.5)).toBe((layout.foot + layout.top) / 2);
    const places = compartmentsOf(layout, [3, 1]);
    expect((places[0]?.width ?? 0) / (places[1]?.width ?? 1)).toBeCloseTo(3, 9);
  });
});
