import { statSync } from "node:fs";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { small, violations } from "./access.ts";
import { withBrowser } from "./shared.ts";
import { commandJson, picture, project, sizes } from "./workbench.ts";

// The lesson as one file, written by `forecourse lesson sites/hollin-gap.toml --take-away FILE`; ./test wasm gives it.
const file = process.env["FORECOURSE_TAKE_AWAY"];
const shared = withBrowser();
const largest = 3_000_000;

interface LessonDocument {
  result: { pages: { page: string; title: string; numbers: { shown: string | null }[]; failures: { available: boolean }[] }[] };
}

const title = (page: Page) => page.textContent(".les-page h1");

/** The file in a browser that has no network, and what it said or asked for that it should not have. */
async function opened(path: string) {
  const context = await shared.browser.newContext({ viewport: sizes.middle, reducedMotion: "reduce", offline: true });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("request", (request) => {
    if (!/^(file|data|blob):/.test(request.url())) faults.push(`asks for ${request.url()}`);
  });
  await page.goto(pathToFileURL(path).href);
  await page.waitForSelector(".les-page h1", { timeout: 60_000 });
  return { page, context, faults };
}

describe.skipIf(!file)("the lesson that is taken away", () => {
  test("is one file of less than 3 MB", () => {
    expect(statSync(file ?? "").size).toBeLessThan(largest);
  });

  test("goes from the first page to the last with no program and no network, with the numbers of the command", async () => {
    const { pages } = ((await commandJson("lesson", `${project}/sites/hollin-gap.toml`)) as LessonDocument).result;
    const { page, context, faults } = await opened(file ?? "");
    for (const of of pages) {
      expect(await title(page)).toBe(of.title);
      const text = ((await page.textContent(".les-side")) ?? "").replaceAll("\u00A0", " ");
      for (const { shown } of of.numbers) if (shown) expect(text).toContain(shown.replaceAll("\u00A0", " "));
      await page.keyboard.press("PageDown");
    }
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(small)).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  }, 180_000);

  test("breaks parts and asks, by its own engine", async () => {
    const { pages } = ((await commandJson("lesson", `${project}/sites/hollin-gap.toml`)) as LessonDocument).result;
    const at = pages.findIndex((one) => one.page === "shear-poppets");
    const { page, context, faults } = await opened(file ?? "");
    for (let i = 0; i < at; ++i) await page.keyboard.press("PageDown");
    await page.keyboard.press("x");
    await page.keyboard.press("1");
    await page.waitForSelector(".les-replay", { timeout: 20_000 });
    expect(await page.locator(".les-scene .cutaway").count()).toBe(2);
    await picture(page, "take-away-replay");
    await page.keyboard.press("Escape");
    await page.keyboard.press("a");
    await page.waitForSelector(".les-ask h1", { timeout: 60_000 });
    await picture(page, "take-away-question");
    expect(faults).toEqual([]);
    await context.close();
  }, 180_000);
});
