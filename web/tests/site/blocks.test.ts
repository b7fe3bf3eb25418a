import { describe, expect, test } from "vitest";
import hollinGap from "../../../sites/hollin-gap.toml?raw";
import pellRidge from "../../../sites/pell-ridge.toml?raw";
import thornby from "../../../sites/thornby.toml?raw";
import {
  blocksOf, blockText, bracesOf, copyOf, copyWithIds, listIn, freshId,
  stretchOf, tableText, withBlock, withItem, withValue, type Written,
} from "../../src/state/entry-blocks";

const value = (key: string, kind: string, typed: string): Written => ({
  key, kind, table: null, choices: null, typed,
});

const station = `# A station
format = 1

[site]
name = "[[tank]]" # [[pump]]

[[tank]]
id = "T1"
chart = [
  [["0 in", "0 gal"]],
]

# the first one
[[dispenser]]
id = "D1"
  [[dispenser.inlet]]
  product = "regular"
  [[dispenser.hose]]
  id = "D1.a"

# the second one
[[dispenser]]
id = "D1.x"
  [[dispenser.hose]]
  id = "D1.x.a"
`;

describe("blocks of a text", () => {
  test("are its headers, not what looks like one", () => {
    expect(blocksOf(station).map((b) => b.header)).toEqual([
      "site", "tank", "dispenser", "dispenser.inlet", "dispenser.hose", "dispenser", "dispenser.hose",
    ]);
  });
  test("cover the text from the first header on", () => {
    const all = blocksOf(station);
    all.forEach((b, i) => expect(b.end).toBe(all[i + 1]?.begin ?? station.length));
  });
  test("are found in stations that come with the program", () => {
    for (const text of [hollinGap, pellRidge, thornby]) {
      const headers = text.split("\n").filter((l) => /^\s*\[\[?[a-z_.]+\]/.test(l)).length;
      expect(headers).toBeGreaterThan(5);
      expect(blocksOf(text)).toHaveLength(headers);
    }
  });
});

describe("the stretch of a part", () => {
  const at = (path: string) => {
    const found = stretchOf(station, path);
    return found && station.slice(found.begin, found.end);
  };
  test("holds what belongs to it and no comment of the next", () => {
    const inlet = '  [[dispenser.inlet]]\n  product = "regular"\n';
    expect(at("dispenser.D1")).toBe(`[[dispenser]]\nid = "D1"\n${inlet}  [[dispenser.hose]]\n  id = "D1.a"\n`);
    expect(at("dispenser.D1.x")).toContain("D1.x.a");
  });
  test("is found within its owner", () => {
    expect(at("dispenser.D1.hose.D1.a")).toBe('  [[dispenser.hose]]\n  id = "D1.a"\n');
    expect(at("dispenser.D1.inlet.regular")).toContain("regular");
    expect(at("dispenser.D1.x.hose.D1.a")).toBeNull();
  });
  test("is none where nothing stands", () => {
    expect(at("pump.P1")).toBeNull();
    expect(at("tank.T2")).toBeNull();
  });
});

describe("a new block", () => {
  test("has its values line by line, tables within in braces, and leaves out what is empty", () => {
    const block = blockText("pump", [
      value("id", "id", "P1"),
      value("tank", "reference", "T1"),
      value("curve.shutoff", "pressure difference", "29 psi"),
      value("curve.per_flow_squared", "loss per flow squared", ""),
      value("curve.run_out", "flow", "120 gpm"),
      value("check_valve", "flag", "true"),
      value("speed", "ratio", ""),
    ]);
    const curve = 'curve = { shutoff = "29 psi", run_out = "120 gpm" }';
    expect(block).toBe(`[[pump]]\nid = "P1"\ntank = "T1"\n${curve}\ncheck_valve = true\n`);
  });
  test("is indented under its owner", () => {
    expect(blockText("dispenser.hose", [value("id", "id", "D1.a")])).toBe('  [[dispenser.hose]]\n  id = "D1.a"\n');
  });
  test("of nothing is no table", () => {
    expect(tableText([value("k", "number", "")])).toBe("");
    expect(tableText([value("a.b", "number", "1"), value("a.c", "number", "2")])).toBe("{ a = { b = 1, c = 2 } }");
  });
  test("goes behind the last of its kind, or to its owner", () => {
    const block = '  [[dispenser.hose]]\n  id = "D1.b"\n';
    const text = withBlock(station, block, "dispenser.hose", "dispenser.D1");
    expect(text).toContain(`  id = "D1.a"\n${block}\n# the second one`);
    expect(text.length).toBe(station.length + block.length);
    const tank = withBlock(station, '[[tank]]\nid = "T2"\n', "tank", null);
    expect(tank).toContain(']\n\n[[tank]]\nid = "T2"\n\n# the first one');
    expect(withBlock("format = 1", '[[tank]]\nid = "T1"\n', "tank", null)).toBe('format = 1\n\n[[tank]]\nid = "T1"\n');
  });
});

describe("ids", () => {
  test("go on from those there are", () => {
    expect(freshId([], "T1")).toBe("T1");
    expect(freshId(["T1", "T3"], "T1")).toBe("T2");
    expect(freshId(["D1.a", "D1.b"], "D1.a")).toBe("D1.c");
    expect(freshId(["trunk"], "trunk")).toBe("trunk-2");
    expect(freshId(["trunk", "trunk-2"], "trunk")).toBe("trunk-3");
  });
  test("of a copy are all its own", () => {
    const stretch = stretchOf(station, "dispenser.D1");
    const copy = copyOf(station.slice(stretch?.begin, stretch?.end), "D1", "D2", ["D1", "D1.a", "D2.a"]);
    expect(copy).toContain('id = "D2"\n');
    expect(copy).toContain('id = "D2.b"\n');
    expect(copy).not.toContain('"D1');
  });
});

test("a copy tells the new id of each old one", () => {
  const block = '[[dispenser]]\nid = "D1"\n  id = "D1.a"\n  id = "far"\n';
  const { ids } = copyWithIds(block, "D1", "D2", ["D1", "D1.a", "far"]);
  expect([...ids]).toEqual([["D1", "D2"], ["D1.a", "D2.a"], ["far", "far-2"]]);
});

describe("a value of a copied block", () => {
  const line = '[[line]]\nid = "L1"\nlength = "105 ft"  # paced\nbore = "2 in"\n';
  test("takes the place of the old one, comment and all", () => {
    expect(withValue(line, "id", '"L2"')).toBe(line.replace("L1", "L2"));
    expect(withValue(line, "length", '"30 ft"')).toBe('[[line]]\nid = "L1"\nlength = "30 ft"\nbore = "2 in"\n');
  });
  test("is left out", () => {
    expect(withValue(line, "length", null)).toBe('[[line]]\nid = "L1"\nbore = "2 in"\n');
    expect(withValue(line, "loss", null)).toBe(line);
  });
  test("follows the header where there was none", () => {
    expect(withValue("  [[x]]\n", "loss", "3.6")).toBe("  [[x]]\n  loss = 3.6\n");
  });
});

test("values of the file as one table in braces", () => {
  const values = [
    { key: "poppet", text: '"double"' },
    { key: "loss.k", text: "1.1" },
    { key: "tested", text: "2026-03-12" },
    { key: "loss.bore", text: '"1.61 in"' },
  ];
  expect(bracesOf(values)).toBe('{ poppet = "double", loss = { k = 1.1, bore = "1.61 in" }, tested = 2026-03-12 }');
});

describe("a list in brackets", () => {
  const text = `[[hose]]
id = "H1"
blend = [{ product = "a]", share = "60 %" }, # half
  { product = "b", share = "40 %" },
]
[[hose]]
id = "H2"
`;
  test("is found with what stands in it", () => {
    const list = listIn(text, "hose.H1", "blend");
    expect(list?.startsWith("[{ product")).toBe(true);
    expect(list?.endsWith("},\n]")).toBe(true);
    expect(listIn(text, "hose.H2", "blend")).toBeNull();
    expect(listIn(text, "hose.H1", "id")).toBeNull();
  });
  test("takes one more at its end", () => {
    expect(withItem('[{ a = 1 }]', "{ a = 2 }")).toBe("[{ a = 1 }, { a = 2 }]");
    expect(withItem("[\n  { a = 1 },\n]", "{ a = 2 }")).toBe("[\n  { a = 1 }, { a = 2 },\n]");
    expect(withItem("[]", "{ a = 2 }")).toBe("[{ a = 2 }]");
  });
});
