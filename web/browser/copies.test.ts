import { expect, test } from "vitest";
import { started, withBrowser } from "./shared.ts";
import { open, settled } from "./workbench.ts";

const shared = withBrowser();
const tall = { width: 1440, height: 1400 };

const blocks = (text: string, header: string) => text.split("\n").filter((line) => line === `[[${header}]]`).length;

test("a dispenser is duplicated with its inlets, hoses and lines, as one step", async () => {
  const workbench = await started("hollin-gap");
  const before = workbench.text();
  const { page, seen, context } = await open(shared.browser, workbench, { query: "?sheet=site", viewport: tall });
  await settled(page);
  await page.locator('.plan-over [data-part="dispenser.D4"]').click();
  await page.click(".insp button:has-text('Duplicate')");
  await page.fill("aside[aria-label='Copy of D4'] [id$='-id']", "D9");
  await page.click("button:has-text('Duplicate D4')");
  await expect.poll(() => blocks(workbench.text(), "dispenser"), { timeout: 10_000 }).toBe(blocks(before, "dispenser") + 1);
  const grown = workbench.text();
  expect(grown).toContain('id = "D9"');
  expect(blocks(grown, "line")).toBeGreaterThan(blocks(before, "line"));
  expect(grown.split("\n").filter((line) => line.trim() === "[[dispenser.hose]]").length).toBeGreaterThan(
    before.split("\n").filter((line) => line.trim() === "[[dispenser.hose]]").length,
  );
  await page.click("button[aria-label=Undo]");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(before);
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});

test("a value is given to all parts of its kind, as one step", async () => {
  const workbench = await started("hollin-gap");
  const before = workbench.text();
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=site", viewport: tall });
  await settled(page);
  await page.locator('.plan-over [data-part="dispenser.D4"]').click();
  await page.locator(".belongs button:has-text('hose')").first().click();
  const whip = page.locator(".insp input[id$='whip.length']");
  await whip.fill("31 in");
  await whip.press("Enter");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toContain('"31 in"');
  const one = workbench.text();
  await whip.focus();
  await page.locator(".insp .forall:visible").click();
  await expect.poll(() => workbench.text().split('"31 in"').length, { timeout: 10_000 }).toBeGreaterThan(10);
  await page.click("button[aria-label=Undo]");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(one);
  await page.click("button[aria-label=Undo]");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(before);
  await context.close();
});

test("a finger carries a part over the plan, and the page does not scroll under it", async () => {
  const workbench = await started("hollin-gap");
  const before = workbench.text();
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=site", viewport: tall, hasTouch: true });
  await settled(page);
  const handle = page.locator('.plan-over [data-part="dispenser.D3"]');
  const box = await handle.boundingBox();
  if (!box) throw new Error("the plan has no handle of D3");
  const touch = await context.newCDPSession(page);
  const at = (i: number) => [{ x: box.x + box.width / 2 + 3 * i, y: box.y + box.height / 2 + i }];
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: at(0) });
  for (let i = 1; i <= 20; ++i) await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: at(i) });
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).not.toBe(before);
  const changed = workbench.text().split("\n").filter((line, i) => line !== before.split("\n")[i]);
  expect(changed).toHaveLength(1);
  expect(changed[0]).toContain("position");
  expect(await page.evaluate(() => scrollY)).toBe(0);
  await context.close();
});
