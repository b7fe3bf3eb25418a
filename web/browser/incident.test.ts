import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { withBrowser, withWorkbench } from "./shared.ts";
import { open, settled } from "./workbench.ts";

const shared = withBrowser();
const station = withWorkbench("hollin-gap");

/** Each kind, and whether it has a scene: only what happens at a dispenser has one. */
const kinds = {
  "Dispenser struck": true,
  "Drive-off": true,
  "Sump fire": true,
  Crack: true,
  "Line break": false,
  Overfill: false,
  "Nozzle left open": true,
};

/** What the sheet shows at its playhead. */
const shown = (page: Page) =>
  page.evaluate(() => {
    const text = (e: Element | null | undefined) => (e?.textContent ?? "").replaceAll("\u00A0", " ").trim();
    const rows = [...document.querySelectorAll(".cmp tbody tr:not(.final)")].map((tr) => ({
      name: text(tr.querySelector("th")),
      values: [...tr.querySelectorAll("td:not(.dim)")].map(text),
    }));
    return {
      clock: text(document.querySelector(".clock")),
      table: text(document.querySelector(".cmp thead th")),
      said: document.querySelector("input[type=range]")?.getAttribute("aria-valuetext")?.replaceAll("\u00A0", " "),
      scenes: [...document.querySelectorAll(".scene-words")].map(text),
      rows,
      past: [...document.querySelectorAll(".evlog li.past .t")].map(text),
      heads: new Set([...document.querySelectorAll(".courses .playhead")].map((e) => e.getAttribute("d")?.split(" ")[0])).size,
    };
  });

/** The value of a row for a choice with its unit, as the scene says it. */
function valueOf(now: Awaited<ReturnType<typeof shown>>, label: RegExp, side: number): string | null {
  const row = now.rows.find((r) => label.test(r.name));
  const value = row?.values[side];
  const unit = row?.name.split(", ").at(-1);
  return value && Number(value.replaceAll(" ", "")) > 0 ? `${value} ${unit}` : null;
}

const scrub = (page: Page, place: number) =>
  page.$eval(
    "input[type=range]",
    (e, value) => {
      (e as HTMLInputElement).value = String(value);
      e.dispatchEvent(new Event("input", { bubbles: true }));
    },
    place,
  );

test.each(Object.entries(kinds))("%s: scene, clock and table agree wherever the playhead stands", async (kind, hasScene) => {
  const { page, seen, context } = await open(shared.browser, station.workbench, { query: "?sheet=incident" });
  await settled(page);
  await page.click(`.pick button:has(b:text-is("${kind}"))`);
  await page.waitForSelector(".clock");
  await settled(page);
  let compared = 0;
  for (const place of [0, 120, 333, 500, 777, 1000]) {
    await scrub(page, place);
    await page.waitForTimeout(60);
    const now = await shown(page);
    expect(now.table).toBe(`At ${now.clock}`);
    expect(now.said).toBe(now.clock);
    expect(now.past.length).toBeGreaterThan(0);
    now.scenes.forEach((words, side) => {
      const told = [
        [/^(Leak flow|Flow over the top)/, "escaping"],
        [/^On the slab/, "on the slab"],
        [/^In the sump/, "in the sump"],
      ] as const;
      for (const [label, of] of told) {
        const value = valueOf(now, label, side);
        if (!value) continue;
        expect(words.split(" · ")).toContain(`${value} ${of}`);
        ++compared;
      }
    });
  }
  expect(compared > 0).toBe(hasScene);
  expect(await page.textContent(".caution")).toContain("stop the pump, clear people away, call the fire service");
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});

test("play walks to the end and the keys step over the events", async () => {
  const { page, context } = await open(shared.browser, station.workbench, { query: "?sheet=incident", reducedMotion: "no-preference" });
  await settled(page);
  await page.click('[aria-label="Speed"] >> text=10×');
  await page.focus("main");
  await page.keyboard.press(" ");
  await page.waitForFunction(() => document.querySelector(".play-btn")?.textContent === "Play", undefined, { timeout: 10_000 });
  expect((await shown(page)).clock).toBe("10 min");
  await page.keyboard.press(",");
  const before = await shown(page);
  expect(before.clock).not.toBe("10 min");
  await page.keyboard.press(".");
  expect((await shown(page)).clock).toBe("10 min");
  await context.close();
});

test("with little motion asked for, play goes from event to event", async () => {
  const { page, context } = await open(shared.browser, station.workbench, { query: "?sheet=incident", reducedMotion: "reduce" });
  await settled(page);
  await page.click(".play-btn");
  const clocks = new Set<string>();
  for (let i = 0; i < 20; ++i) {
    clocks.add((await shown(page)).clock);
    await page.waitForTimeout(100);
  }
  expect(clocks.size).toBeLessThanOrEqual(3);
  const events = await page.$$eval(".evlog .t", (all) => all.map((e) => (e.textContent ?? "").replaceAll("\u00A0", " ")));
  for (const clock of clocks) expect(["0 ms", ...events]).toContain(clock);
  await context.close();
});

test("a long run is counted, can be stopped, and draws its curve", async () => {
  const { page, seen, context } = await open(shared.browser, station.workbench, { query: "?sheet=incident" });
  await settled(page);
  const spread = page.locator('section[aria-label="Spread of the loss"]');
  await spread.locator("text=5 000").first().click();
  await spread.locator(".run-ctl > .btn").click();
  const counts = new Set<string>();
  await expect
    .poll(async () => {
      counts.add((await spread.locator("progress + span").textContent()) ?? "");
      return counts.size;
    }, { timeout: 30_000, interval: 150 })
    .toBeGreaterThan(2);
  await spread.locator("text=Stop").click();
  await spread.locator('[role=status]:has-text("Stopped")').waitFor({ timeout: 15_000 });
  await spread.locator('[role=radio]:has-text("200")').click();
  await spread.locator(".run-ctl > .btn").click();
  await spread.locator("figure .line-a").waitFor({ timeout: 50_000 });
  expect(await spread.textContent()).toContain("200 runs, seed");
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});
