import { describe, expect, test } from "vitest";
import { curveOf } from "../../src/panels/containment/curve";
import type { Fill, Holds, Sump } from "../../src/panels/containment/documents";
import { countWords, drains, fillRows, inflowWords, inShort, spanWords, sumpAt, withUnit } from "../../src/panels/containment/rows";

const gallon = 3.785411784e-3;
const fill = (more: Partial<Fill> = {}): Fill => ({
  inflow_m3_per_s: gallon / 60,
  to_sensor_s: 60,
  to_lowest_seal_s: 600,
  to_brim_s: 3600,
  sensor_tells_at_s: 60,
  volume_when_told_m3: gallon,
  runs_over_before: false,
  ...more,
});
const sump = (owner: string, more: Partial<Sump> = {}): Sump => ({
  owner,
  of: "dispenser",
  holds: "assured",
  reasons: [],
  problem: null,
  depth_m: 0.5,
  brim_m3: 60 * gallon,
  sensor_height_m: 0.05,
  at_sensor_m3: gallon,
  lowest_seal_m: 0.2,
  at_lowest_seal_m3: 10 * gallon,
  points: [0, 0.25, 0.5].map((height_m) => ({ height_m, volume_m3: (height_m / 0.5) * 60 * gallon })),
  fills: [fill()],
  ...more,
});
const joint = (name: string, holds: Holds, goes: string) => ({ place: name, joint: name, sump: null, holds, goes });

describe("the sump of a path", () => {
  const sumps = [sump("D1"), sump("D10"), sump("T1", { of: "tank" })];
  test.each([
    ["dispenser.D1.sump", "D1"],
    ["dispenser.D1", "D1"],
    ["dispenser.D10.hose.D10.a", "D10"],
    ["tank.T1.sump", "T1"],
  ])("%s is that of %s", (path, owner) => expect(sumpAt(sumps, path)?.owner).toBe(owner));
  test.each([null, "dispenser.D2", "tank.D1", "line.trunk"])("%s has none", (path) =>
    expect(sumpAt(sumps, path)).toBeUndefined(),
  );
});

describe("what drains where", () => {
  test("like places are one, what is not assured comes first, what is assured last", () => {
    const all = drains(
      [joint("a", "assured", "into the sump of D1"), joint("b", "not assured", "into the ground"), joint("c", "not assured", "into the ground")],
      [
        { line: "trunk", sump: null, holds: "not determined", goes: "not known" },
        { line: "stub", sump: "D1", holds: "assured", goes: "into the sump of D1" },
      ],
    );
    expect(all.map(countWords)).toEqual(["2 joints", "1 run", "1 joint and 1 run"]);
    expect(all.map((d) => [d.holds, d.from])).toEqual([
      ["not assured", ["b", "c"]],
      ["not determined", ["run of trunk"]],
      ["assured", ["a", "run of stub"]],
    ]);
  });

  test("in short it counts what is assured", () => {
    expect(inShort([sump("D1"), sump("D2", { holds: "not assured" })], [joint("a", "assured", "")], [])).toBe(
      "1 of 2 sumps, 1 of 1 joint and 0 of 0 runs assured",
    );
  });
});

describe("how soon it fills", () => {
  test("volumes and times as they are said", () => {
    expect(fillRows([sump("D1")], "us")[0]?.cells).toEqual([
      "1.0", "10.0", "60.0", "60.0\u00a0s", "10.0\u00a0min", "60.0\u00a0min", "60.0\u00a0s", "1.0",
    ]);
  });

  test("what was not entered is a dash, and a late sensor is marked", () => {
    const row = fillRows(
      [sump("D1", { at_sensor_m3: null, fills: [fill({ to_sensor_s: null, runs_over_before: true })] })],
      "us",
    )[0];
    expect(row?.cells[0]).toBe("–");
    expect(row?.cells[3]).toBe("–");
    expect(row?.late).toBe(true);
  });

  test("over two days is said in days", () => {
    expect(spanWords(47 * 3600)).toBe("47.0\u00a0h");
    expect(spanWords(72 * 3600)).toBe("3.0\u00a0d");
    expect(spanWords(null)).toBe("–");
  });

  test("a drip is said by the hour, a flow by the minute", () => {
    expect(inflowWords((3 * gallon) / 3600, "us")).toBe("3\u00a0gph");
    expect(inflowWords((10 * gallon) / 60, "us")).toBe("10\u00a0gpm");
    expect(inflowWords((40 * 1e-3) / 60, "si")).toBe("40\u00a0L/min");
    expect(inflowWords((4 * 1e-3) / 3600, "si")).toBe("4\u00a0L/h");
  });

  test("a number alone takes the unit shown, anything else goes to the engine as typed", () => {
    expect(withUnit(" 3,5 ", "gpm")).toBe("3.5 gpm");
    expect(withUnit("3 gph", "gpm")).toBe("3 gph");
    expect(withUnit("", "gpm")).toBe("");
    expect(withUnit("much", "gpm")).toBe("much");
  });
});

describe("the curve of filling", () => {
  test("marks stand on it, with the time at which each is reached", () => {
    const curve = curveOf(sump("D1"), "us");
    expect(curve?.marks.map((m) => m.text)).toEqual([
      "sensor, 60.0\u00a0s", "lowest seal, 10.0\u00a0min", "brim, 60.0\u00a0min",
    ]);
    const [sensor, seal, brim] = curve?.marks ?? [];
    expect(sensor && seal && brim && sensor.x < seal.x && seal.x < brim.x && sensor.y > seal.y && seal.y > brim.y).toBe(true);
  });

  test("there is none where no volume is known", () => {
    expect(curveOf(sump("D1", { points: [], brim_m3: null }), "us")).toBeNull();
  });
});
