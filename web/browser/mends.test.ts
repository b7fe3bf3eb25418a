import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { violations } from "./access.ts";
import { started, withBrowser } from "./shared.ts";
import { commandJson, open, picture, project, settled } from "./workbench.ts";

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

test("work is entered once it is done", async () => {
  const text = readFileSync(join(project, "sites/hollin-gap.toml"), "utf8").replace("\ntight_hoses = true", "\ntight_hoses = false");
  const workbench = await started("hollin-gap", text);
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=checks" });
  await settled(page);
  await page.click(".crow:has-text('couplers of the tanker are tight')");
  await page.waitForSelector(".det ol.fix button:has-text('Enter it as done')");
  expect(await page.locator(".det ol.fix button:has-text('Try it')").count()).toBe(0);
  await page.click(".det ol.fix button:has-text('Enter it as done')");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toContain("\ntight_hoses = true");
  await context.close();
});

test("an answer that was refused is told, not taken for none", async () => {
  const workbench = await started("hollin-gap");
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=checks" });
  await page.route("**/api/ask", async (route) => {
    const { wants } = route.request().postDataJSON() as { wants: { study?: string }[] };
    const response = await route.fetch();
    const told = (await response.json()) as { answers: unknown[] };
    const answers = told.answers.map((one, i) => (wants[i]?.study === "mends" ? { error: "no such finding", hint: "ask again" } : one));
    await route.fulfill({ response, json: { ...told, answers } });
  });
  await settled(page);
  await page.click(".crow:has-text('shear groove lies within')");
  await page.waitForSelector(".det [role=status]:has-text('No such finding')");
  await context.close();
});
