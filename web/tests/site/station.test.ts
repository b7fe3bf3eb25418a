import { expect, test } from "vitest";
import { newest, stationOf } from "../../src/api/station";
import type { StationTold, Tables } from "../../src/api/types";

const tables: Tables = {
  line: [
    { key: "from", kind: "reference", table: null, required: true, choices: null, help: "Place.", names: "place" },
    { key: "pipe", kind: "pipe", table: "pipe", required: false, choices: null, help: "Pipe." },
  ],
  pipe: [{ key: "bore", kind: "length", table: null, required: false, choices: null, help: "Inner diameter." }],
};
const told: StationTold = {
  revision: 1,
  file: "a.toml",
  name: "A",
  display: "us",
  text: "",
  editable: true,
  undo: null,
  redo: null,
  diagnostics: [],
  products: [],
  ids: { place: ["P1", "B1"] },
  parts: [
    {
      path: "line.trunk",
      kind: "line",
      id: "trunk",
      stop: 4,
      product: null,
      of: null,
      position: null,
      fields: [
        { key: "from", in: "line", text: '"P1"', line: 3 },
        { key: "pipe.bore", in: "pipe" },
        { key: "size", in: null, text: "3", path: "line.trunk.size", problem: "not a key" },
      ],
    },
  ],
};

test("a field is what the tables say of its key", () => {
  const [from, bore, unknown] = stationOf(told, tables).parts[0]!.fields;
  expect(from).toMatchObject({ path: "line.trunk.from", kind: "reference", required: true, choices: ["P1", "B1"] });
  expect(bore).toMatchObject({ path: "line.trunk.pipe.bore", kind: "length", text: null, help: "Inner diameter." });
  expect(unknown).toMatchObject({ path: "line.trunk.size", kind: "unknown", choices: null, problem: "not a key" });
});

test("of answers that cross, the newest stays", () => {
  const [first, second, third] = [1, 2, 3].map((revision) => ({ revision }));
  if (!first || !second || !third) throw new Error("three are made");
  expect(newest(null, null, first)).toBe(first);
  expect(newest(first, first, second)).toBe(second);
  expect(newest(first, second, third)).toBe(third); // two were asked for at once
  expect(newest(first, third, second)).toBe(third);
  expect(newest(third, third, first)).toBe(first); // another file, or the server began anew
});
