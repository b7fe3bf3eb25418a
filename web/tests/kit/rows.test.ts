import { describe, expect, test } from "vitest";
import { daysBetween, monthLetter } from "../../src/draw/days";
import type { Duty, KitRow } from "../../src/panels/kit/documents";
import {
  basesOf, clauseWords, countWords, detailsOf, dueSentence, firstRecord, grouped, headline, listedWords, marksOf, nextOf, recordRows, runsWords, shareOf, stopsOf,
  stripSummary, stripWords, subjectsOf,
} from "../../src/panels/kit/rows";

const kit = (number: number, kind: string, parts: string[], more: Partial<KitRow> = {}): KitRow => ({
  stop: { number, name: number === 12 ? "whole station" : "tank" },
  kind,
  what: kind,
  sizes: [],
  function: `what a ${kind} does`,
  needed: { bears: "nothing", shown: null, basis: null, missing: null },
  rating_pressure_gauge_pa: null,
  rating_below_need: false,
  standards: [],
  listed_to: [],
  compatibility: { fit: "does not apply", product_kinds: [], missing: null },
  count: parts.length,
  unit: "each",
  length_m: null,
  runs_without_length: 0,
  not_ordered_because: null,
  subjects: parts,
  parts,
  ...more,
});

const duty = (rule: string, subject: string, path: string | null, more: Partial<Duty> = {}): Duty => ({
  id: `us-federal/${rule}/${subject}`,
  set: "us-federal",
  set_title: "Federal",
  rule,
  subject,
  path,
  what: `${rule} is done each year`,
  instead: [],
  clause: "40 CFR 280.40(a)(3)",
  edition: null,
  clause_verified: true,
  every: { words: "every year" },
  last_done: null,
  done_by: null,
  failed: null,
  due: null,
  days_left: null,
  state: "no record",
  reason: "when it was last done is not known",
  enter: "enter tested",
  by_whom: "a qualified tester",
  sheet: "annual",
  proof: null,
  strip: [],
  ...more,
});

const months = ["2026-11", "2026-12", "2027-01", "2027-02", "2027-03", "2027-04", "2027-05", "2027-06", "2027-07", "2027-08", "2027-09", "2027-10"];
const today = "2026-11-30";
const strip = (...days: string[]) => months.map((month) => ({ month, days: days.filter((d) => d.startsWith(month)) }));

describe("joining duties and parts", () => {
  const tank = kit(3, "tank", ["tank.T1", "tank.T2"]);
  const gauge = kit(3, "gauge", ["tank.T1.gauge"]);
  const sump = kit(6, "dispenser-sump", ["dispenser.D1.sump"]);
  const sensor = kit(6, "sump-sensor", ["dispenser.D1.sump.sensor_height"]);
  const rows = [tank, gauge, sump, sensor];
  const rowsOf = (...duties: Duty[]) => stopsOf(rows, duties).flatMap((s) => s.rows);

  test("a duty stands at the nearest part around its place", () => {
    const [ofTank, ofGauge] = rowsOf(duty("tight", "T2", "tank.T2"), duty("gauge", "T1", "tank.T1.gauge.tested"));
    expect(ofTank?.duties.map((d) => d.rule)).toEqual(["tight"]);
    expect(ofGauge?.duties.map((d) => d.rule)).toEqual(["gauge"]);
  });

  test("a part whose path only begins alike is another one", () => {
    const ids = stopsOf([kit(3, "tank", ["tank.T1"])], [duty("tight", "T10", "tank.T10")]);
    expect(ids.map((s) => s.number)).toEqual([3, 12]);
  });

  test("the test of a sensor stands at the sensor, that of its sump at the sump", () => {
    const proof = (kind: string) => ({ records: "tests" as const, kind, part: "D1" });
    const all = rowsOf(
      duty("sensor", "D1", "dispenser.D1.sump", { proof: proof("sensor") }),
      duty("sump", "D1", "dispenser.D1.sump", { proof: proof("sump") }),
    );
    expect(all.find((r) => r.parts === sensor)?.duties.map((d) => d.rule)).toEqual(["sensor"]);
    expect(all.find((r) => r.parts === sump)?.duties.map((d) => d.rule)).toEqual(["sump"]);
  });

  test("what is of no part stands with the whole station, one row to a rule", () => {
    const stops = stopsOf(rows, [duty("walk", "station", null), duty("walk", "office", null), duty("gear", "station", "operations.tested")]);
    expect(stops.at(-1)).toMatchObject({ number: 12, name: "whole station" });
    expect(stops.at(-1)?.rows.map((r) => r.duties.length)).toEqual([2, 1]);
  });

  test("no duty is lost and none stands twice", () => {
    const duties = [duty("a", "T1", "tank.T1"), duty("b", "T2", "tank.T2"), duty("c", "x", "line.x"), duty("d", "station", null)];
    const placed = rowsOf(...duties).flatMap((r) => r.duties.map((d) => d.id));
    expect(placed.sort()).toEqual(duties.map((d) => d.id).sort());
  });
});

describe("what is next", () => {
  const due = (state: Duty["state"], day: string) => duty("r", "T1", null, { state, due: day, days_left: daysBetween(today, day) });
  test("a test that failed stands first, with its day", () => {
    const failed = duty("a", "P1", null, { state: "failed", failed: "2026-10-14" });
    const all = [duty("b", "P2", null, { state: "overdue", due: "2026-11-09", days_left: -21 }), failed];
    expect(nextOf(all)).toEqual({ state: "failed", words: "14 Oct 2026", more: "1 overdue" });
    expect(headline(all, 90)).toBe("1 failed, 1 overdue, 0 in 90 days");
    expect(dueSentence(failed)).toBe("Its last test failed on 14 Oct 2026.");
    expect(marksOf([failed], today, 90, months).map(({ day, state }) => [day, state])).toEqual([["2026-10-14", "failed"]]);
  });

  test("overdue stands before what is due soon, that before no record", () => {
    const all = [due("later", "2027-05-01"), duty("n", "T2", null), due("overdue", "2026-11-09"), due("due soon", "2026-12-05")];
    expect(nextOf(all)).toEqual({ state: "overdue", words: "9 Nov 2026", more: "1 due soon, 1 no record, 1 later" });
    expect(nextOf(all.slice(0, 2))).toEqual({ state: "no record", words: "not determined", more: "1 later" });
    expect(nextOf([])).toEqual({ state: null, words: "no test asked", more: "" });
  });
  test("sentences count days, and say nothing where nothing is known", () => {
    expect(dueSentence(due("overdue", "2026-11-29"))).toBe("Was due 29 Nov 2026, 1 day ago.");
    expect(dueSentence(due("due soon", today))).toBe("Due today.");
    expect(dueSentence(due("due soon", "2026-12-05"))).toBe("Due 5 Dec 2026, in 5 days.");
    expect(dueSentence(duty("n", "T1", null))).toBe("No record of the last one, so nothing can be said.");
    expect(headline([due("due soon", "2026-12-05")], 90)).toBe("None overdue, 1 in 90 days");
  });
});

describe("the twelve months", () => {
  test("a day lies at its share of the year; before and beyond it at the ends", () => {
    expect(shareOf("2026-11-01", months)).toBe(0);
    expect(shareOf("2027-05-01", months)).toBeCloseTo(0.5);
    expect(shareOf("2026-11-16", months)).toBeCloseTo(0.5 / 12);
    expect(shareOf("2024-01-01", months)).toBe(0);
    expect(shareOf("2028-01-01", months)).toBe(1);
  });
  test("marks of a row are those of its duties, of one day the one that asks for most", () => {
    const monthly = duty("m", "T1", null, { state: "due soon", due: "2026-12-05", days_left: 5, strip: strip("2026-12-05", "2027-01-04", "2027-03-05") });
    const yearly = duty("y", "T1", null, { state: "overdue", due: "2026-11-09", days_left: -21, strip: strip("2026-11-30") });
    expect(marksOf([monthly, yearly], today, 90, months).map(({ day, state }) => [day, state])).toEqual([
      ["2026-11-09", "overdue"],
      ["2026-12-05", "due soon"],
      ["2027-01-04", "due soon"],
      ["2027-03-05", "later"],
    ]);
  });
  test("the last day of 90 is in them, the next one is not", () => {
    const days = strip("2027-02-28", "2027-03-01");
    const one = duty("m", "T1", null, { state: "due soon", due: "2027-02-28", days_left: 90, strip: days });
    expect(marksOf([one], today, 90, months).map((m) => m.state)).toEqual(["due soon", "later"]);
  });
  test("where there is no record one ring stands at today, and words say so", () => {
    const none = [duty("n", "T1", null, { strip: strip("2026-11-30", "2026-12-30") })];
    const marks = marksOf(none, today, 90, months);
    expect(marks.map(({ day, state }) => [day, state])).toEqual([[today, "no record"]]);
    expect(stripWords(none, marks)).toBe("no record");
    expect(stripSummary(marks, 90)).toBe("No record.");
  });
  test("what falls due beyond the months stands as its year", () => {
    const far = [duty("f", "F1", null, { state: "later", due: "2029-02-03", days_left: 796 })];
    expect(stripWords(far, marksOf(far, today, 90, months))).toBe("2029");
  });
  test("months are told by their letters", () => {
    expect(months.map(monthLetter).join("")).toBe("NDJFMAMJJASO");
  });
});

describe("words", () => {
  test("duties of one rule, state and day are one sentence", () => {
    const all = grouped([duty("a", "T1", null), duty("a", "T2", null), duty("a", "T3", null, { state: "later", due: "2027-05-01" })]);
    expect(all.map((g) => subjectsOf(g))).toEqual(["T1, T2", "T3"]);
  });
  test("a clause says whether its text was seen; a wish is none", () => {
    expect(clauseWords({ clause: "IFC 2306.7.4", clause_verified: false })).toBe("IFC 2306.7.4, text to be verified");
    expect(clauseWords({ clause: null, clause_verified: false })).toBe("Your own wish, no rule");
  });
  test("a length of pipe is told with its runs, and a missing one as missing", () => {
    const line = kit(5, "line", ["line.a", "line.b"], { unit: "length", count: 2, length_m: 30.48 });
    expect(countWords(line, "us")).toBe("100\u00A0ft");
    expect(runsWords(line)).toBe("in 2 runs");
    expect(countWords({ ...line, length_m: null }, "us")).toBe("not entered");
    expect(countWords({ ...line, runs_without_length: 1 }, "us")).toBe("at least 100\u00A0ft");
    expect(countWords(kit(5, "tee", ["x"], { count: null }), "us")).toBe("some");
  });
  test("a rating is told with its basis, and what it is listed to as entered before what it should be", () => {
    const needed = { bears: "fuel" as const, shown: "27.6 psi", basis: "static and dead-head; surge not computed", missing: null };
    const valve = kit(7, "shear-valve", ["v"], { needed, standards: [{ standard: "UL 842", clause: "UL 842", edition: "", seen: "text seen" }] });
    expect(detailsOf(valve, "us").join(" ")).toContain("Rating needed: 27.6 psi, static and dead-head; surge not computed.");
    expect(basesOf([valve, valve])).toEqual(["of fuel: static and dead-head; surge not computed"]);
    expect(listedWords(valve)).toBe("UL 842");
    expect(listedWords({ ...valve, listed_to: ["EN 13617-2"] })).toBe("EN 13617-2");
    expect(listedWords(kit(1, "hose", ["h"]))).toBe("–");
  });
});

describe("a recorded test", () => {
  const proof = (part: string | null, records: "tests" | "inspections" = "tests") => ({ records, kind: "shear-valve-trip", part });
  test("makes a row for each part", () => {
    const duties = ["D1.a", "D2.a"].map((id) => duty("trip", id, null, { proof: proof(id) }));
    expect(recordRows(duties, { day: today, passed: true, by: "A. Tester" })).toEqual({
      kind: "tests",
      rows: ["D1.a", "D2.a"].map((part) => ({ day: today, kind: "shear-valve-trip", part, passed: "yes", by: "A. Tester" })),
    });
  });
  test("of a look tells whether it was in order, and names no part where none is asked for", () => {
    const [row] = recordRows([duty("walk", "station", null, { proof: proof(null, "inspections") })], { day: today, passed: false, by: "" })?.rows ?? [];
    expect(row).toEqual({ day: today, kind: "shear-valve-trip", in_order: "no" });
  });
  test("is none where no record would show it", () => {
    expect(recordRows([duty("x", "T1", null)], { day: today, passed: true, by: "" })).toBeNull();
  });
});

test("the command that begins a store leaves what was found to fill in, and quotes names with blanks", () => {
  const of = (part: string) =>
    firstRecord("my station.toml", [
      duty("walk", "S1", null),
      duty("static-pressure-test", part, "tank.T1", { proof: { records: "tests", kind: "vent-valve", part } }),
    ]);
  expect(of("V1")).toBe('forecourse records add "my station.db" tests day=YYYY-MM-DD kind=vent-valve part=V1 passed=yes-or-no');
  expect(of('T1 vent "1"')).toContain('part="T1 vent \\"1\\""');
});
