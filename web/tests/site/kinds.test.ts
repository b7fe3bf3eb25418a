import { describe, expect, test } from "vitest";
import type { Part, Station, TableKey } from "../../src/api/types";
import { choicesFor, firstForm, idFor, missingForCourse, newKinds } from "../../src/state/entry-kinds";
import { shelfFor } from "../../src/state/entry-shelf";

const key = (name: string, kind: string, over: Partial<TableKey> = {}): TableKey => ({
  key: name, kind, table: null, required: false, choices: null, help: "", ...over,
});
const tables = {
  site: [key("name", "text")],
  operations: [key("opens", "clock"), key("throughput", "list", { table: "throughput" })],
  throughput: [key("per_month", "volume")],
  tank: [
    key("id", "id", { required: true }),
    key("product", "reference"),
    key("fill", "list", { table: "fill" }),
    key("position", "position"),
  ],
  fill: [key("id", "id")],
  pump: [
    key("id", "id", { required: true }),
    key("tank", "reference", { required: true }),
    key("curve", "table", { table: "pump_curve" }),
    key("check_valve", "flag"),
  ],
  pump_curve: [key("shutoff", "pressure difference"), key("run_out", "flow")],
  dispenser: [key("id", "id", { required: true }), key("hose", "list", { table: "hose" })],
  hose: [key("id", "id", { required: true }), key("product", "reference"), key("loss", "loss", { table: "loss" })],
  loss: [key("k", "number")],
};
const part = (kind: string, id: string): Part => ({
  path: `${kind}.${id}`, kind, id, stop: null, product: null, of: null, position: null, fields: [],
});
const station = (parts: Part[]): Station => ({
  revision: 1, file: "a.toml", name: "", display: "us", text: "", editable: true, undo: null, redo: null,
  diagnostics: [], products: [], parts, tables,
});
const kindOf = (header: string) => {
  const kind = newKinds(tables).find((k) => k.header === header);
  if (!kind) throw new Error(header);
  return kind;
};

describe("kinds that can be added", () => {
  test("are the lists of the format, each with what belongs to it", () => {
    expect(newKinds(tables).map((k) => k.header)).toEqual([
      "operations", "tank", "tank.fill", "pump", "dispenser", "dispenser.hose",
    ]);
    expect(kindOf("operations").list).toBe(false);
    expect(kindOf("dispenser.hose").owner).toBe("dispenser");
  });
  test("ask for the id, what must be there, then what a flow needs", () => {
    expect(firstForm(tables, kindOf("pump")).map((k) => k.key)).toEqual([
      "id", "tank", "curve.shutoff", "curve.run_out", "check_valve",
    ]);
    expect(firstForm(tables, kindOf("tank.fill")).map((k) => k.key)).toEqual(["id"]);
  });
});

test("references choose among the parts there are", () => {
  const s = station([part("tank", "T1"), part("pump", "P1"), part("inlet", "D1.regular"), part("branch", "B1")]);
  expect(choicesFor(s, key("tank", "reference"))).toEqual(["T1"]);
  expect(choicesFor(s, key("from", "reference"))).toEqual(["P1", "D1.regular", "B1"]);
  expect(choicesFor(s, key("length", "length"))).toBeNull();
  expect(choicesFor(s, key("kind", "choice", { choices: ["a"] }))).toEqual(["a"]);
});

test("ids are fresh; a product is named by the user", () => {
  const s = station([part("tank", "T1"), part("dispenser", "D1"), part("hose", "D1.a")]);
  expect(idFor(s, kindOf("tank"), null)).toBe("T2");
  expect(idFor(s, kindOf("dispenser.hose"), part("dispenser", "D1"))).toBe("D1.b");
  expect(idFor(s, { header: "product", table: "product", owner: null, list: true }, null)).toBe("");
});

test("a course begins with a product and ends with a line", () => {
  expect(missingForCourse(station([])).map((m) => m.header)[0]).toBe("product");
  const begun = missingForCourse(station([part("product", "regular"), part("hose", "D1.a")]));
  expect(begun.filter((m) => m.done).map((m) => m.header)).toEqual(["product", "dispenser.hose"]);
});

test("the shelf offers its generic parts by what they are", () => {
  const nozzles = shelfFor("part", "nozzle");
  expect(nozzles.length).toBeGreaterThan(0);
  expect(nozzles.every((n) => n.kind === "nozzle" && n.status !== "")).toBe(true);
  expect(shelfFor("length", "nominal").length).toBeGreaterThan(0);
  expect(shelfFor("length", "bore")).toEqual([]);
});
