import { expect, test } from "vitest";
import { dimensions, drawn, foot, ownFrame, type Point } from "../../src/draw/plan";
import { dimensionMark, gridPath, markPath, runPath } from "../../src/draw/plan_marks";

const ft = (x: number, y: number) => ({ x: x * foot, y: y * foot });
const size = { width: 912, height: 300 };

const parts: { kind: string; at: Point }[] = [
  { kind: "tank", at: ft(0, 0) },
  { kind: "tank", at: ft(0, 14) },
  { kind: "branch", at: ft(80, 7) },
  { kind: "dispenser", at: ft(100, 0) },
  { kind: "dispenser", at: ft(126, 0) },
];
const places = parts.map((p) => p.at);
const frame = ownFrame(places, size.width, size.height);

/** The page's own plan of these parts, with the dimensions of one of them. */
function plan(chosen: number, units: "us" | "si"): string {
  const rest = places.filter((_, i) => i !== chosen);
  const path = (name: string, d: string, more = "") =>
    `<path class="${name}" fill="none" stroke="black"${more} d="${d}"/>`;
  const marks = parts.map((p) => {
    const { x, y } = drawn(frame, p.at);
    return path("own", markPath(p.kind), ` transform="translate(${x.toFixed(2)} ${y.toFixed(2)})"`);
  });
  const told = dimensions(places[chosen] as Point, rest).map((d) => dimensionMark(frame, d, units));
  const lines = [
    path("coarse", gridPath(frame, size.width, size.height, 25 * foot)),
    path("own-run", runPath(frame, ft(0, 0), ft(100, 0))),
    path("own-run", runPath(frame, ft(0, 14), ft(80, 7))),
    ...marks,
    ...told.flatMap((m) => [
      path("dim-own", m.path),
      `<text x="${m.x.toFixed(2)}" y="${m.y.toFixed(2)}" text-anchor="${m.anchor}">${m.text}</text>`,
    ]),
  ];
  const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size.width} ${size.height}">`;
  return [head, ...lines, "</svg>", ""].join("\n");
}

test("the page's own plan with long dimensions", async () => {
  await expect(plan(3, "us")).toMatchFileSnapshot("pictures/plan-row.svg");
});
test("the page's own plan where dimensions are too short for their numbers", async () => {
  await expect(plan(1, "si")).toMatchFileSnapshot("pictures/plan-short.svg");
});

test("a dimension's number stands within the line, or behind its end", () => {
  const mark = (to: Point) => dimensionMark(frame, { from: ft(50, 0), to, length: 1 }, "us");
  const [a, b] = [drawn(frame, ft(50, 0)), drawn(frame, ft(90, 0))];
  expect(mark(ft(90, 0)).x).toBeCloseTo((a.x + b.x) / 2, 6);
  expect(mark(ft(90, 0)).anchor).toBe("middle");
  expect(mark(ft(51, 0)).anchor).toBe("start");
  expect(mark(ft(51, 0)).x).toBeGreaterThan(drawn(frame, ft(51, 0)).x);
  expect(mark(ft(49, 0)).anchor).toBe("end");
  expect(mark(ft(49, 0)).x).toBeLessThan(drawn(frame, ft(49, 0)).x);
});
