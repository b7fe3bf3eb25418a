import { expect, test } from "vitest";
import { clockOf, ticksOf, tickText } from "../../src/draw/clock";
import { dotOf, lineOf, planOf } from "../../src/draw/curve_chart";
import { exceedancePlan } from "../../src/draw/curve_exceedance";
import { ladderLayout } from "../../src/draw/ladder";
import { marksOf } from "../../src/draw/tracks";
import type { Trace } from "../../src/draw/curve_trace";

// Each drawing as an SVG beside this file, so that a change of it is seen as a picture.
const near = (value: number) => Number(value.toFixed(1));
const path = (d: string, color = "black", dash = "") =>
  `<path d="${d}" fill="none" stroke="${color}"${dash && ` stroke-dasharray="${dash}"`}/>`;
const word = (x: number, y: number, text: string | number, anchor = "middle") =>
  `<text x="${near(x)}" y="${near(y)}" text-anchor="${anchor}">${text}</text>`;
const square = (x: number, y: number) => `<rect x="${near(x - 4)}" y="${near(y - 4)}" width="8" height="8" fill="#0072B2"/>`;
const round = (x: number, y: number) => `<circle cx="${near(x)}" cy="${near(y)}" r="4" fill="#C45500"/>`;
const picture = (width: number, height: number, parts: string[]) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" font-size="11" font-family="sans-serif">\n` +
  `${['<path d="M0 0H' + width + "V" + height + 'H0Z" fill="white"/>', ...parts].join("\n")}\n</svg>\n`;
const matches = (name: string, svg: string) => expect(svg).toMatchFileSnapshot(`./drawings/${name}.svg`);

test.each([
  ["ladder-two-choices", [12, 10.4, 9.1, null, 7.2, 6.4], [12, 11.6, 11, 10.6, 9.9, 9.4], 8, 3],
  ["ladder-36-hoses", Array.from({ length: 36 }, (_, i) => 10 - i / 8), Array.from({ length: 36 }, (_, i) => 10 - i / 12), null, null],
] as const)("%s", (name, a, b, keep, from) => {
  const at = ladderLayout(a, b, { width: 640, keep, from });
  const { plot } = at;
  return matches(
    name,
    picture(at.width, at.height, [
      ...at.rows.flatMap((r) => [path(`M${plot.left} ${near(r.y)}H${plot.right}`, "#ccc"), word(plot.left - 6, r.y + 4, r.value, "end")]),
      ...at.columns.map((c) => word(c.x, plot.foot + 16, c.open)),
      ...(at.keep === null ? [] : [path(`M${plot.left} ${near(at.keep)}H${plot.right}`, "#D55E00", "5 3")]),
      ...(at.from === null ? [] : [path(`M${near(at.from)} ${plot.top}V${plot.foot}`, "#888", "2 3")]),
      path(at.a.path, "#0072B2"),
      path(at.b.path, "#C45500", "7 4"),
      ...at.a.marks.map((m) => square(m.x, m.y)),
      ...at.b.marks.map((m) => round(m.x, m.y)),
      ...(at.names ? [word(at.names.a.x, at.names.a.y, "A", "start"), word(at.names.b.x, at.names.b.y, "B", "start")] : []),
    ]),
  );
});

/** A pressure that swings and settles, and one that ends. */
const swinging = {
  time: Array.from({ length: 120 }, (_, i) => (i / 60) ** 2),
  value: Array.from({ length: 120 }, (_, i) => 20 + 15 * Math.exp(-i / 30) * Math.cos(i / 4)),
};
const ending = { time: [0, 0.1, 0.1, 4, 30, 60], value: [20, 18, -5, NaN, 4, 4] };

test("curves of two choices over the stretched time", () => {
  const clock = clockOf(600);
  const shown = (si: number) => si;
  const plan = planOf([swinging, ending], clock, { width: 640, height: 160 }, shown);
  const dots = [0.05, 1, 45].map((t) => [dotOf(swinging, plan, shown, t), dotOf(ending, plan, shown, t)] as const);
  return matches(
    "curves",
    picture(plan.width, plan.height, [
      ...plan.ticks.flatMap((v) => [
        path(`M${plan.left} ${near(plan.y(v))}H${plan.width - plan.right}`, "#ccc"),
        word(plan.left - 6, plan.y(v) + 4, v.toFixed(plan.decimals), "end"),
      ]),
      ...ticksOf(clock).map((t) => word(plan.x(t), plan.height - 5, tickText(t))),
      path(lineOf(swinging, plan, clock, shown), "#0072B2"),
      path(lineOf(ending, plan, clock, shown), "#C45500", "7 4"),
      ...dots.flatMap(([a, b]) => [a ? square(a.x, a.y) : "", b ? round(b.x, b.y) : ""]).filter(Boolean),
    ]),
  );
});

test("how often more than an amount escapes", () => {
  const amounts = Array.from({ length: 40 }, (_, i) => 0.5 * 1.17 ** i);
  const [width, height] = [640, 180];
  const plan = exceedancePlan(amounts, amounts.map((_, i) => 1 - i / 39), width, height);
  return matches(
    "exceedance",
    picture(width, height, [
      ...plan.yTicks.flatMap((t) => [path(`M${plan.left} ${near(t.y)}H${width - plan.right}`, "#ccc"), word(plan.left - 6, t.y + 4, `${100 * t.share} %`, "end")]),
      ...plan.xTicks.map((t) => word(t.x, height - 5, t.value)),
      path(plan.path, "#0072B2"),
    ]),
  );
});

test("events that lie close are one mark on a track", () => {
  const clock = clockOf(600);
  const event = (time_s: number) => ({ time_s, of: "", what: `at ${time_s}`, escaped_m3: 0, flow_m3_per_s: 0, pressure_gauge_pa: null, held: {} });
  const events = [0, 0, 0.1, 0.101, 0.9, 9.98, 9.98, 10.1, 60, 600].map(event);
  const trace = { name: "", end: 600, courses: new Map(), events, linkParts: null } as Partial<Trace> as Trace;
  const marks = marksOf(trace, clock, 8, 632);
  expect(marks.reduce((all, m) => all + m.events.length, 0)).toBe(events.length);
  return matches(
    "track",
    picture(640, 46, [
      path("M8 14H632", "#888"),
      ...marks.flatMap((m) => [square(m.x, 14), ...(m.events.length > 1 ? [word(m.x, 30, m.events.length)] : [])]),
      ...ticksOf(clock).map((t) => word(8 + clock.placeOf(t) * 624, 42, tickText(t))),
    ]),
  );
});
