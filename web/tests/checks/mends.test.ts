import { expect, test } from "vitest";
import { editsOfMends, likewise, mendsOf, otherWays, stepsOf, type Mend } from "../../src/panels/checks/mends";
import type { Group } from "../../src/panels/checks/findings";
import type { Finding } from "../../src/panels/parts/finding";

const mend = (subject: string, more: Partial<Mend> = {}): Mend => ({
  study: null,
  set: "Fire code",
  rule: "shear-groove-offset",
  subject,
  way: "change",
  words: `set the valve at ${subject}`,
  reason: null,
  edits: [{ path: `${subject}.groove_elevation`, before: '"0 in"', value: '"5 5/8 in"' }],
  after: "meets",
  effects: [],
  least_flow_before_m3_per_s: null,
  least_flow_after_m3_per_s: null,
  tried: [],
  ...more,
});

const group = (...subjects: string[]): Group => {
  const findings = subjects.map((subject) => ({ rule: "shear-groove-offset", subject, set: "Fire code", study: null }) as Finding);
  return { key: "k", state: "falls short", findings: findings as Group["findings"] };
};

test("a row takes the mends of its own findings and set", () => {
  const mends = [mend("D1"), mend("D2"), mend("D1", { set: "Another set" }), mend("D1", { set: null, study: "flow" })];
  expect(mendsOf(group("D1", "D3"), mends)).toEqual([mends[0]]);
  expect(mendsOf(group("D2", "D1"), mends)).toEqual([mends[0], mends[1]]);
});

test("all parts of a row are set in one step, a value that several need once", () => {
  const shared = [{ path: "emergency_stop.E1.stops", before: "[]", value: '["P1"]' }];
  expect(editsOfMends([mend("D1"), mend("D2", { edits: shared }), mend("D3", { edits: shared }), mend("D4", { edits: [] })])).toEqual([
    { path: "D1.groove_elevation", value: '"5 5/8 in"' },
    { path: "emergency_stop.E1.stops", value: '["P1"]' },
  ]);
});

test("work is entered apart from what is tried, even where the value is the same", () => {
  const fact = (path: string) => ({ edits: [{ path, before: "false", value: "true" }] });
  const tried = mend("D2", fact("D2.x"));
  const [first, second] = [mend("D1", { way: "work", ...fact("D1.x") }), mend("D3", { way: "work", ...fact("D3.x") })];
  const steps = stepsOf([mend("D0", { edits: [] }), first, tried, second]);
  expect([...steps]).toEqual([
    [tried, [{ path: "D2.x", value: "true" }]],
    [
      first,
      [
        { path: "D1.x", value: "true" },
        { path: "D3.x", value: "true" },
      ],
    ],
  ]);
  expect(likewise([first, tried, second]).map(({ subjects }) => subjects)).toEqual([["D1", "D3"], ["D2"]]);
});

test("mends to the same value stand as one, others apart", () => {
  const none = { edits: [], words: "test it", reason: "it is due" };
  const told = likewise([mend("D1"), mend("D2"), mend("D3", { edits: [{ path: "p", before: null, value: "1" }] }), mend("D4", none), mend("D5", none)]);
  expect(told.map(({ mend: one, subjects }) => [one.subject, subjects])).toEqual([
    ["D1", ["D1", "D2"]],
    ["D3", ["D3"]],
    ["D4", ["D4", "D5"]],
  ]);
});

test("other ways are those that mend it too, without the one chosen", () => {
  const way = (path: string, mends: boolean) => ({ words: path, edit: { path, before: null, value: "1" }, mends, work: false, reason: null });
  const tried = [way("D1.groove_elevation", true), way("b", true), way("c", false)];
  expect(otherWays(mend("D1", { tried })).map((one) => one.words)).toEqual(["b"]);
  expect(otherWays(mend("D1"))).toEqual([]);
});
