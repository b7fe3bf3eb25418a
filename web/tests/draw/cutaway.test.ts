import { expect, test } from "vitest";
import { cutaway, cutawayWords, hasCutaway, namedIn, pictures, type PageId } from "../../src/draw/cutaway/cutaway";
import { wordWidth } from "../../src/draw/cutaway/ink";
import type { Values } from "../../src/draw/cutaway/picture";

const struck = "hit broken lower upper flow escape";
const hung = "pull angle parted shut escape";
/** The values by which the engine tells each page's picture. */
const named: Record<string, string> = {
  drop: "truck tank flow vapor vent",
  fill: "cap container flow tank",
  "overfill-valve": "tank flow valve valve_height valve_gone",
  "tank-walls": "tank double space sensor",
  "tank-water": "tank water suction",
  "tank-breathing": "tank pressure out in",
  pump: "runs flow check tank suction",
  "tank-sump": "liquid sensor_height seal_height sensor leak brim",
  "leak-detector": "runs opened pressure leak trips detector_gone",
  "double-wall": "flow leak space sump",
  line: "runs pressure flow check warm",
  sump: "liquid sensor_height seal_height sensor leak through",
  "shear-groove": struck,
  "shear-poppets": struck,
  "shear-anchor": `${struck} anchored`,
  "shear-crack": "crack tripped lower escape",
  "shear-link": "heat parted lower flow escape",
  filter: "flow clogged",
  meter: "flow count",
  price: "flow count",
  "whip-hose": hung,
  breakaway: hung,
  "curb-hose": "pull turn flow",
  swivel: "pull turn flow",
  nozzle: "flow tank shut lever",
  vehicle: "flow tank away",
  "vapor-return": "flow vapor vent tank",
  vent: "pressure out in blocked",
  "emergency-stop": "pressed runs flow escape",
  interlocks: "sensor signal runs flow",
};
const pages = Object.keys(named) as PageId[];
const namesOf = (page: PageId) => named[page]!.split(" ");

/** What must hold for a value to be seen: both ends of a breakaway shut once it has parted, and the like. */
const seenWith: Record<string, Values> = {
  "whip-hose": { parted: 1 },
  breakaway: { parted: 1 },
  "shear-groove": { broken: 1, hit: 1 },
  "shear-poppets": { broken: 1, hit: 1 },
  "shear-anchor": { hit: 1 },
  "leak-detector": { runs: 1 },
};

/** Every value at rest, but for those that hide another. */
const restOf = (page: PageId): Values => ({ ...pictures[page].rest, ...seenWith[page] });

/** States of a page: every value at both ends with the others at rest, all at either end, and a hundred drawn by a
 * counter that returns to where it began. */
function statesOf(page: PageId): Values[] {
  const names = namesOf(page);
  const all = (value: number) => Object.fromEntries(names.map((name) => [name, value]));
  const ends = names.flatMap((name) => [0, 0.5, 1].map((value): Values => ({ ...restOf(page), [name]: value })));
  let seed = 7;
  const next = () => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648;
  const drawn = Array.from({ length: 100 }, (): Values =>
    Object.fromEntries(names.map((name) => [name, Math.round(next() * 10) / 10])),
  );
  const some = drawn.map((values, i): Values =>
    Object.fromEntries(Object.entries(values).filter((_, j) => (i + j) % 3)),
  );
  return [{}, pictures[page].rest, all(0), all(1), ...ends, ...drawn, ...some];
}

interface Box {
  text: string;
  left: number;
  right: number;
  top: number;
  foot: number;
}

function labelsOf(svg: string): Box[] {
  return [...svg.matchAll(/<text x="([^"]+)" y="([^"]+)" text-anchor="(\w+)" class="\w+">([^<]*)<\/text>/g)].map(
    ([, x, y, anchor, text]) => {
      const width = wordWidth(text!);
      const left = Number(x) - (anchor === "end" ? width : anchor === "middle" ? width / 2 : 0);
      return { text: text!, left, right: left + width, top: Number(y) - 14, foot: Number(y) + 4 };
    },
  );
}

/** Leaders as straight lines. */
const leadersOf = (svg: string) =>
  [...svg.matchAll(/<path class="leader" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"\/>/g)].map((match) =>
    match.slice(1).map(Number),
  );

/** Whether a line runs through a label, by points along it. */
const through = ([x1, y1, x2, y2]: number[], { left, right, top, foot }: Box) =>
  Array.from({ length: 101 }, (_, i) => [x1! + ((x2! - x1!) * i) / 100, y1! + ((y2! - y1!) * i) / 100]).some(
    ([x, y]) => x! > left && x! < right && y! > top && y! < foot,
  );

const meet = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot;

test("every page has a picture, and its values are those of the page", () => {
  expect(Object.keys(pictures).sort()).toEqual([...pages].sort());
  for (const page of pages) expect(Object.keys(pictures[page].rest).sort(), page).toEqual(namesOf(page).sort());
  expect(hasCutaway("drop") && !hasCutaway("elsewhere")).toBe(true);
});

test.each(pages)("%s: each value changes the picture", (page) => {
  for (const name of namesOf(page)) {
    const at = (value: number) => cutaway(page, { ...restOf(page), [name]: value });
    const [low, high] = name === "count" ? [0.1, 0.3] : [0, 1];
    expect(at(low) === at(high), name).toBe(false);
  }
});

test.each(pages)("%s: every number is one, with values that are missing, too large or none", (page) => {
  const odd: Values[] = [NaN, Infinity, -Infinity, -7, 9, undefined].map((value) =>
    Object.fromEntries(namesOf(page).map((name) => [name, value])),
  );
  for (const values of [...odd, ...statesOf(page)])
    expect(cutaway(page, values)).not.toMatch(/NaN|Infinity|undefined|e[+-]\d/);
  expect(cutaway(page, { ...odd[0] })).toBe(cutaway(page, {}));
});

test.each(pages)("%s: labels lie within the picture and apart", (page) => {
  for (const values of statesOf(page)) {
    const labels = labelsOf(cutaway(page, values));
    expect(labels.length).toBeGreaterThan(1);
    const state = JSON.stringify(values);
    for (const [i, one] of labels.entries()) {
      const within = one.left >= 0 && one.right <= 640 && one.top >= 0 && one.foot <= 420;
      expect(within, `${one.text} within, ${state}`).toBe(true);
      for (const other of labels.slice(i + 1))
        expect(meet(one, other), `${one.text} and ${other.text}, ${state}`).toBe(false);
    }
  }
});

test.each(pages)("%s: no leader runs through a word", (page) => {
  for (const values of statesOf(page)) {
    const svg = cutaway(page, values);
    const labels = labelsOf(svg);
    for (const line of leadersOf(svg))
      for (const one of labels) expect(through(line, one), `${one.text}, ${JSON.stringify(values)}`).toBe(false);
  }
});

test.each(pages)("%s: its state in words is its title", (page) => {
  for (const values of statesOf(page)) {
    const words = cutawayWords(page, values);
    expect(words).toMatch(/^[A-Z0-9][^<>&"]+\.$/);
    expect(cutaway(page, values)).toContain(`role="img"><title>${words}</title>`);
  }
});

test.each(pages)("%s: of what is not told it says nothing", (page) => {
  expect(cutawayWords(page, {})).toBe("State not determined.");
  expect(cutaway(page, {})).not.toMatch(/class="(state|bad)"|%<|class="needle"/);
  const [name] = namesOf(page);
  expect(cutaway(page, { [name!]: NaN })).toBe(cutaway(page, {}));
});

test("dashes move where there is flow and nowhere else", () => {
  const at = (flow: number, dash: number) => cutaway("line", { flow }, { dash });
  expect(at(1, 0)).not.toBe(at(1, 6));
  expect(at(0, 0)).toBe(at(0, 6));
});

test("two pictures of one page share no id, and every reference is answered", () => {
  for (const page of pages) {
    const [one, two] = ["a", "b"].map((id) => cutaway(page, {}, { id }));
    const ids = (svg: string) => [...svg.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]!);
    const wanted = (svg: string) => [...svg.matchAll(/url\(#([^)]+)\)/g)].map((match) => match[1]!);
    expect(new Set(ids(one!)).size, page).toBe(ids(one!).length);
    expect(ids(one!).filter((id) => ids(two!).includes(id))).toEqual([]);
    expect(wanted(one!).filter((id) => !ids(one!).includes(id))).toEqual([]);
  }
});

test("a small picture's states stand beside it, what is wrong first", () => {
  const gone = namedIn(cutaway("leak-detector", { detector_gone: 1, leak: 1, runs: 1 }));
  expect(gone).toEqual([
    { name: "no leak detector", state: "" },
    { name: "from the pump", state: "runs" },
    { name: "line", state: "leaks" },
  ]);
  expect(namedIn(cutaway("leak-detector", { opened: 0 }))).toEqual([{ name: "piston", state: "down" }]);
});
