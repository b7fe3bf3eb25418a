import { expect, test } from "vitest";
import { violations } from "./access.ts";
import { started, withBrowser } from "./shared.ts";
import { commandJson, open, picture, settled } from "./workbench.ts";

const shared = withBrowser();

interface Told {
  result: { mends: { rule: string; subject: string; edits: { path: string; value: string }[] }[] };
}

test("a finding that falls short is mended by Try it, as the command tells it, and one undo puts it back", async () => {
  const workbench = await started("hollin-gap");
  const before = workbench.text();
  const told = (await commandJson("checks", workbench.file, "--mend")) as Told;
  const order = told.result.mends.find((one) => one.rule === "delivery-room")?.edits[0];
  const { page, seen, context } = await open(shared.browser, workbench, { query: "?sheet=checks" });
  await settled(page);
  await page.click(".crow:has-text('What is brought is no more than the room')");
  await page.waitForSelector(".det ol.fix button:has-text('Try it')");
  await settled(page);
  expect(await page.textContent(".det ol.fix")).toContain(order?.path ?? "none");
  expect(await page.textContent(".det")).toContain("What it does");
  expect(await violations(page)).toEqual([]);
  await picture(page, "mends");
  await page.click(".det ol.fix button:has-text('Try it')");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toContain(`volume = ${order?.value}`);
  await expect.poll(() => page.textContent(".toast"), { timeout: 10_000 }).toContain("Ctrl+Z undoes it");
  await settled(page);
  const left = page.locator(".crow:has(.vh:text-is('Falls short'))");
  expect(await left.locator("text=What is brought").count()).toBe(0);
  await page.keyboard.press("Control+z");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(before);
  expect(seen.faults).toEqual([]);
  await context.close();
});

test("all parts of a row are mended in one step", async () => {
  const workbench = await started("hollin-gap");
  const before = workbench.text();
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=checks" });
  await settled(page);
  await page.click(".crow:has-text('shear groove lies within')");
  await page.waitForSelector(".det ol.fix button:has-text('Try it')");
  await page.click(".det ol.fix button:has-text('Try it')");
  await expect.poll(() => workbench.text().split('groove_elevation = "5 5/8 in"').length, { timeout: 10_000 }).toBe(11);
  await page.keyboard.press("Control+z");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(before);
  await context.close();
});
