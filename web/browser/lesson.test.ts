import { describe, expect, onTestFinished, test } from "vitest";
import type { Page } from "playwright-core";
import { small, violations } from "./access.ts";
import { withBrowser, withWorkbench } from "./shared.ts";
import { commandJson, open, picture, sizes, project } from "./workbench.ts";

const shared = withBrowser();
const station = withWorkbench("hollin-gap");
const projector = sizes.middle;

interface LessonDocument {
  result: {
    pages: {
      page: string;
      title: string;
      stop_number: number;
      numbers: { shown: string | null }[];
      failures: { failure: string; title: string; available: boolean }[];
    }[];
  };
}
const told = async () =>
  ((await commandJson("lesson", `${project}/sites/hollin-gap.toml`)) as LessonDocument).result.pages;

/** The lesson in a browser where little motion is asked for, unless `moves`. */
async function lesson({ moves = false, query = "?sheet=lesson", viewport = projector } = {}) {
  const opened = await open(shared.browser, station.workbench, {
    query,
    viewport,
    reducedMotion: moves ? "no-preference" : "reduce",
  });
  onTestFinished(() => opened.context.close());
  if (query.includes("lesson")) await opened.page.waitForSelector(".les-page h1", { timeout: 20_000 });
  return opened;
}

const title = (page: Page) => page.textContent(".les-page h1");
const press = async (page: Page, ...keys: string[]) => {
  for (const key of keys) await page.keyboard.press(key);
};
/** Turns pages until one of this id is shown. */
async function turnTo(page: Page, id: string) {
  const pages = await told();
  await press(page, "Home", ...Array.from({ length: pages.findIndex((p) => p.page === id) }, () => "PageDown"));
}

/** Words on the lesson's page set smaller than is read from the back row, px. */
const least = 15;
const faint = (limit: number) =>
  [...document.querySelectorAll<HTMLElement>(".lesson *")]
    .filter((e) => e.children.length === 0 && e.textContent?.trim())
    .filter((e) => !e.closest("svg, .kbd, .btn, .les-band, .vh, .ticks"))
    .filter((e) => parseFloat(getComputedStyle(e).fontSize) < limit)
    .map((e) => `${e.tagName} ${e.className} ${e.textContent}`);
const overflow = () => document.documentElement.scrollWidth - innerWidth;

async function looked(page: Page) {
  expect(await violations(page)).toEqual([]);
  expect(await page.evaluate(small)).toEqual([]);
  expect(await page.evaluate(faint, least)).toEqual([]);
  expect(await page.evaluate(overflow)).toBeLessThanOrEqual(0);
}

describe("the lesson", () => {
  test("opens by its keys over everything, and ends where it was", async () => {
    const { page, seen } = await lesson({ query: "?sheet=flow" });
    for (const key of ["9", "w"]) {
      await press(page, key);
      await page.waitForSelector(".les-page h1", { timeout: 20_000 });
      await press(page, "Escape");
      await page.waitForSelector(".flow");
      expect(await page.locator("dialog.lesson").count()).toBe(0);
    }
    expect(seen.faults).toEqual([]);
  });

  test("goes from the first page to the last and back by keyboard alone, each as the command tells it", async () => {
    const pages = await told();
    const { page, seen } = await lesson();
    const forward = ["ArrowRight", " ", "PageDown"];
    for (const [i, of] of pages.entries()) {
      expect(await title(page)).toBe(of.title);
      const shown = of.numbers.flatMap((n) => n.shown ?? []);
      const text = ((await page.textContent(".les-side")) ?? "").replaceAll("\u00A0", " ");
      for (const number of shown) expect(text).toContain(number.replaceAll("\u00A0", " "));
      await looked(page);
      await picture(page, `lesson-${String(i + 1).padStart(2, "0")}-${of.page}`);
      await press(page, forward[i % 3] ?? "PageDown");
    }
    expect(await title(page)).toBe(pages.at(-1)?.title);
    await press(page, "PageUp");
    expect(await title(page)).toBe(pages.at(-2)?.title);
    await press(page, "Home");
    expect(await title(page)).toBe(pages[0]?.title);
    await press(page, "End");
    expect(await title(page)).toBe(pages.at(-1)?.title);
    expect(seen).toEqual({ faults: [], foreign: [] });
  }, 180_000);

  test("has the eleven stops at its foot; one is clicked", async () => {
    const { page } = await lesson();
    expect(await page.locator(".les-band button").count()).toBe(11);
    await page.click(".les-band button:nth-child(7)");
    expect(await page.textContent(".les-band [aria-current=step]")).toContain("Shear valve");
    expect(await page.textContent(".les-where")).toContain("Shear valve");
  });

  test("stands still where little motion is asked for, and runs else", async () => {
    for (const moves of [false, true]) {
      const { page } = await lesson({ moves });
      await turnTo(page, "line");
      await page.waitForTimeout(600);
      const before = await page.innerHTML(".les-picture");
      await page.waitForTimeout(300);
      expect((await page.innerHTML(".les-picture")) !== before).toBe(moves);
    }
  });

  test.each(Object.entries(sizes))("fits a screen that is %s", async (name, viewport) => {
    const { page } = await lesson({ viewport });
    await turnTo(page, "shear-poppets");
    await looked(page);
    await picture(page, `lesson-${name}`);
  });

  test("goes by its keys after a button was clicked", async () => {
    const pages = await told();
    const { page } = await lesson();
    await page.click('.les-top button:has-text("Next")');
    await press(page, " ");
    expect(await title(page)).toBe(pages[2]?.title);
  });

  test("goes blank and comes back", async () => {
    const { page } = await lesson();
    await press(page, "b");
    expect(await page.isVisible(".les-page")).toBe(false);
    await looked(page);
    await press(page, "b");
    expect(await page.isVisible(".les-page")).toBe(true);
  });

  test("does nothing by letters that are turned off; the clicker turns pages", async () => {
    const { page } = await lesson({ query: "?sheet=flow" });
    await page.evaluate(() => localStorage.setItem("keys", "off"));
    await page.goto(`${station.workbench.origin}/?sheet=lesson`);
    await page.waitForSelector(".les-page h1", { timeout: 20_000 });
    const first = await title(page);
    await press(page, "a", "b", "x", "1", "9");
    expect(await page.isVisible(".les-page h1")).toBe(true);
    expect(await page.locator(".les-failures").count()).toBe(0);
    expect(await title(page)).toBe(first);
    await press(page, "PageDown");
    expect(await title(page)).not.toBe(first);
  });
});

describe("break it", () => {
  test("plays both scenes, behind the caution", async () => {
    const { page, seen } = await lesson();
    await turnTo(page, "shear-poppets");
    await press(page, "x");
    await looked(page);
    await press(page, "1");
    await page.waitForSelector(".les-replay");
    expect(await page.locator(".les-scene .cutaway").count()).toBe(2);
    expect(await page.locator(".les-scene.works").count()).toBe(1);
    const order = await page.evaluate(() => {
      const [caution, number] = [document.querySelector(".les-caution"), document.querySelector(".les-scene dd")];
      return caution && number ? caution.compareDocumentPosition(number) : 0;
    });
    expect(order & 4).toBe(4);
    const at = () => page.textContent(".les-player .clock");
    const zero = await at();
    await press(page, ".", ".");
    expect(await at()).not.toBe(zero);
    await press(page, ",", ",");
    expect(await at()).toBe(zero);
    await looked(page);
    await picture(page, "lesson-replay");
    await press(page, "Escape");
    expect(await title(page)).toBe((await told()).find((p) => p.page === "shear-poppets")?.title);
    expect(seen.faults).toEqual([]);
  });

  test("each failure of each page can be shown, or says why it cannot", async () => {
    const pages = await told();
    const { page, seen } = await lesson();
    const failures = new Set(pages.flatMap((p) => p.failures.filter((f) => f.available).map((f) => f.failure)));
    expect(failures.size).toBeGreaterThan(10);
    for (const of of pages) {
      for (const [i, failure] of of.failures.entries()) {
        await press(page, "x");
        if (failure.available) {
          await press(page, String(i + 1));
          await page.waitForSelector(".les-replay h1");
          expect(await page.evaluate(overflow)).toBeLessThanOrEqual(0);
          await picture(page, `lesson-break-${of.page}-${failure.failure}`);
        } else {
          expect(await page.textContent(`.les-failures li:nth-child(${i + 1}) small`)).not.toBe("");
        }
        await press(page, "Escape");
      }
      await press(page, "PageDown");
    }
    expect(seen.faults).toEqual([]);
  }, 180_000);
});

describe("ask the room", () => {
  test("shows a question of every page, reveals the answer, and counts hands", async () => {
    const pages = await told();
    const { page, seen } = await lesson();
    let asked = 0;
    for (const of of pages) {
      await press(page, "a");
      await page.waitForSelector(".les-ask h1");
      if (await page.isVisible(".les-options .letter")) {
        await press(page, "7");
        if (await page.isVisible(".hands output")) expect(await page.textContent(".hands output")).toBe("7");
      }
      await press(page, "a");
      const revealed = await page.isVisible(".les-explains");
      if (revealed) {
        ++asked;
        expect(await page.locator(".les-options .right, .les-answer").count()).toBeGreaterThan(0);
        await looked(page);
        await picture(page, `lesson-ask-${of.page}`);
        await press(page, "a");
      }
      expect(await title(page)).toBe(of.title);
      await press(page, "PageDown");
    }
    expect(asked).toBeGreaterThan(pages.length / 2);
    expect(seen.faults).toEqual([]);
  }, 180_000);

  test("draws guesses on an axis, with the answer when it is revealed", async () => {
    const { page } = await lesson();
    for (let i = 0; i < 60 && !(await page.isVisible(".les-estimates")); ++i) {
      await press(page, i % 2 ? "PageDown" : "a");
      await page.waitForTimeout(30);
    }
    await page.keyboard.type("12.5");
    await press(page, "Enter");
    await page.keyboard.type("40");
    await press(page, "Enter");
    expect(await page.locator(".les-axis circle").count()).toBe(2);
    expect(await page.locator(".les-axis .answer").count()).toBe(0);
    await press(page, "a");
    expect(await page.locator(".les-axis .answer").count()).toBe(1);
    await picture(page, "lesson-guesses");
  });
});

describe("the presenter's window", () => {
  test("shows the notes and the next page, and steers as the lesson's own does", async () => {
    const pages = await told();
    const { page, context, seen } = await lesson();
    const [presenter] = await Promise.all([context.waitForEvent("page"), press(page, "p")]);
    await presenter.waitForSelector(".presenter .notes");
    expect(await presenter.textContent("h1")).toBe(pages[0]?.title);
    expect(await presenter.textContent(".presenter .aside")).toContain(pages[1]?.title);
    await press(presenter, "PageDown");
    await page.waitForFunction((t) => document.querySelector(".les-page h1")?.textContent === t, pages[1]?.title);
    await press(page, "PageDown");
    await presenter.waitForFunction((t) => document.querySelector("h1")?.textContent === t, pages[2]?.title);
    expect(await violations(presenter)).toEqual([]);
    expect(await presenter.evaluate(small)).toEqual([]);
    await picture(presenter, "lesson-presenter");
    await press(presenter, "b");
    await page.waitForSelector(".lesson.blank");
    expect(seen.faults).toEqual([]);
  });
});
