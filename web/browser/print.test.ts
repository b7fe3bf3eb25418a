import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { withBrowser, withWorkbench } from "./shared.ts";
import { open, settled, sheets } from "./workbench.ts";

const shared = withBrowser();
const station = withWorkbench("hollin-gap");

/** What stands on paper that is there to be pressed, and what is not white, black on white, or throws a shadow. */
const onPaper = (page: Page) =>
  page.evaluate(() => {
    const seen = (e: Element) => e.getClientRects().length > 0;
    const background = (selector: string) => getComputedStyle(document.querySelector(selector)!).backgroundColor;
    return {
      pressed: [...document.querySelectorAll(".nav, .bar .seg, .bar .btn, .main button.btn, .main .seg, input[type=range], .toast")]
        .filter(seen)
        .map((e) => `${e.tagName} ${e.className}`),
      backgrounds: [background("body"), background(".main"), background(".bar")],
      shadows: [...document.querySelectorAll("*")].filter((e) => seen(e) && getComputedStyle(e).boxShadow !== "none").length,
      shapes: [...new Set([...document.querySelectorAll(".st .fill")].filter(seen).map((e) => getComputedStyle(e).fill))],
      split: [...document.querySelectorAll(".main tr")].filter((e) => seen(e) && getComputedStyle(e).breakInside !== "avoid").length,
      title: getComputedStyle(document.querySelector("h1")!).color,
      cut: [...document.querySelectorAll(".main, .flow>.l, .chk .list, .det, .inc .side")].filter((e) => getComputedStyle(e).overflowY !== "visible").length,
    };
  });

const white = "rgb(255, 255, 255)";
describe("a sheet printed from the dark", () => {
  test.each(sheets)("%s is white, whole, and has nothing to press", async (sheet) => {
    const { page, context } = await open(shared.browser, station.workbench, { query: `?sheet=${sheet}&theme=dark` });
    await settled(page);
    await page.emulateMedia({ media: "print" });
    const { shapes, title, ...rest } = await onPaper(page);
    expect(rest).toEqual({ pressed: [], backgrounds: [white, white, white], shadows: 0, split: 0, cut: 0 });
    expect(shapes.filter((fill) => fill !== "rgb(0, 0, 0)")).toEqual([]);
    const lightness = Math.max(...(title.match(/\d+/g) ?? ["255"]).map(Number));
    expect(lightness).toBeLessThan(64);
    await context.close();
  });
});

test("with colors of the reader's own, what is chosen is seen", async () => {
  const { page, context } = await open(shared.browser, station.workbench, { query: "?sheet=incident", forcedColors: "active" });
  await settled(page);
  const background = (selector: string) => page.$eval(selector, (e) => getComputedStyle(e).backgroundColor);
  for (const [on, off] of [
    [".nav a[aria-current]", ".nav a:not([aria-current])"],
    [".ctl [aria-checked=true]", ".ctl [aria-checked=false]"],
    [".pick [aria-checked=true]", ".pick [aria-checked=false]"],
  ] as const) {
    expect(await background(on)).not.toBe(await background(off));
  }
  await context.close();
});
