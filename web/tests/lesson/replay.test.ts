import { describe, expect, test } from "vitest";
import { lastWords, sceneValue, sceneValues, stageOf } from "../../src/state/lesson/replay";
import { replayOf, sceneOf } from "./fixture";

const failing = sceneOf("without", false, {
  time_s: [0, 2, 2, 100],
  values: { escape: [0, 0, 1, 0.5], heat: [null, null, 0.2, 0.4] },
  events: [
    { time_s: 0, words: "the hoses run" },
    { time_s: 2, words: "a car strikes" },
    { time_s: 100, words: "the line has drained" },
  ],
});
const working = sceneOf("with", true, {
  time_s: [0, 2, 2, 2.2],
  values: { escape: [0, 0, 1, 0] },
  events: [
    { time_s: 2, words: "a car strikes" },
    { time_s: 2.2, words: "the poppets are shut" },
  ],
});

describe("a replay", () => {
  test("runs to the end of the longer scene, with the events of both once", () => {
    const stage = stageOf(replayOf(failing, working));
    expect(stage.end).toBe(100);
    expect(stage.events).toEqual([0, 2, 2.2, 100]);
  });
  test("is stretched at its beginning where its first event comes early", () => {
    expect(stageOf(replayOf(failing, working)).placeOf(2)).toBeGreaterThan(0.3);
    const late = stageOf(replayOf(sceneOf("a", false, { events: [{ time_s: 5, words: "" }] })));
    expect(late.placeOf(5)).toBeCloseTo(0.5, 9);
  });
  test("of nothing that changes has an end all the same", () => {
    expect(stageOf(replayOf(sceneOf("a", false, { time_s: [0] }))).end).toBe(0);
  });
});

describe("a scene", () => {
  test("has the values of its moment, straight between points and after a step", () => {
    expect(sceneValues(failing, 1)).toEqual({ escape: 0 });
    expect(sceneValues(failing, 2)).toEqual({ escape: 1, heat: 0.2 });
    expect(sceneValues(failing, 51)["escape"]).toBeCloseTo(0.75, 9);
  });
  test("that has ended holds its last values", () => {
    expect(sceneValue(working, working.values["escape"] ?? [], 60)).toBe(0);
  });
  test("tells what happened last", () => {
    expect(lastWords(failing, 1)).toBe("the hoses run");
    expect(lastWords(failing, 2)).toBe("a car strikes");
    expect(lastWords(working, 1)).toBe("");
  });
});
