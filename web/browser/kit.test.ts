import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { small, violations } from "./access.ts";
import { withBrowser } from "./shared.ts";
import { commandJson, copyOf, end, open, picture, program, project, serveFile, settled, sizes } from "./workbench.ts";

const shared = withBrowser();
const given = join(project, "sites/records/hollin-gap");

interface More {
  query?: string;
  viewport?: { width: number; height: number };
  store?: boolean;
  there?: string;
}

/** The sheet on a copy of a station, with a store of records beside it where one is asked for. */
async function sheet({ store = false, there = ".kit tbody", ...more }: More = {}) {
  const file = copyOf("hollin-gap");
  if (store) execFileSync(program, ["records", "import", file.replace(/toml$/, "db"), given, "--site", file]);
  const workbench = await serveFile(file);
  onTestFinished(() => end(workbench));
  const opened = await open(shared.browser, workbench, { query: "?sheet=kit", ...more });
  await opened.page.waitForSelector(there);
  await settled(opened.page);
  return { ...opened, workbench };
}

interface Kit {
  result: { rows: { parts: string[] }[] };
}
interface Calendar {
  result: { duties: { state: string }[] };
}

describe("the sheet Kit and calendar", () => {
  test("opens by its key, and shows what the commands tell", async () => {
    const { page, seen } = await sheet();
    await page.keyboard.press("1");
    await page.waitForSelector(".site");
    await page.keyboard.press("8");
    await page.waitForSelector(".kit tbody");
    const kit = (await commandJson("kit", `${project}/sites/hollin-gap.toml`)) as Kit;
    const { duties } = ((await commandJson("calendar", `${project}/sites/hollin-gap.toml`)) as Calendar).result;
    const ofNoPart = await page.locator(".kit tbody:last-of-type .part:has(th[colspan='5'])").count();
    expect((await page.locator(".kit .part").count()) - ofNoPart).toBe(kit.result.rows.length);
    const soon = duties.filter((d) => d.state === "due soon").length;
    expect(await page.textContent(".due .top h2")).toContain(`${soon} in 90 days`);
    expect(await page.locator(".kit .g button").count()).toBe(11);
    expect(await page.locator(".yr .today").count()).toBeGreaterThan(5);
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(small)).toEqual([]);
    expect(seen.faults).toEqual([]);
    await picture(page, "kit");
  });

  test("a row opens by keyboard, tells its parts, and chooses its stop on all sheets", async () => {
    const { page } = await sheet();
    const row = page.locator(".kit .part button:has-text('Shear valve')").first();
    await row.focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector(".kit .within");
    expect(await row.getAttribute("aria-expanded")).toBe("true");
    expect(await page.textContent(".kit .within.about")).toContain("static and dead-head, at the level of the tank that is entered");
    expect(await page.textContent(".kit")).toContain("a shear valve is tested each year by tripping it");
    expect(await page.getAttribute(".kit .g button:has-text('Shear valve')", "aria-pressed")).toBe("true");
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("1");
    await page.waitForSelector(".cell[data-stop='7']");
    expect(await page.textContent(".insp .over")).toContain("Stop 7");
  });

  test("without a store says how to record, and offers no button", async () => {
    const { page } = await sheet();
    expect(await page.textContent(".due .closed")).toContain("forecourse records add");
    expect(await page.locator("text=Record a test").count()).toBe(0);
  });

  test("a recorded test moves its day, and can be taken back", async () => {
    const { page, seen } = await sheet({ store: true });
    const detectors = page.locator(".duelist li:has-text('A line leak detector is tested each year')").first();
    const before = (await page.textContent(".due .top h2")) ?? "";
    const parts = (await detectors.locator(".parts").textContent()) ?? "";
    await detectors.locator("text=Record a test").click();
    await page.waitForSelector("form.record");
    expect(await violations(page)).toEqual([]);
    await page.fill("form.record input[placeholder='who tested']", "A. Tester");
    await picture(page, "kit-record");
    await page.click("form.record >> text=Store it");
    await page.waitForSelector(".folded:has-text('later')");
    await page.waitForFunction(
      (names) => ![...document.querySelectorAll(".due > .duelist li")].some((li) => li.textContent?.includes("leak detector is tested") && li.textContent.includes(names)),
      parts,
    );
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("H2");
    await page.click("text=Take back the last entry");
    await page.waitForFunction(
      (names) => [...document.querySelectorAll(".due > .duelist li")].some((li) => li.textContent?.includes("leak detector is tested") && li.textContent.includes(names)),
      parts,
    );
    expect(await page.textContent(".due .top h2")).toBe(before);
    expect(seen.faults).toEqual([]);
  });

  test("a bad entry changes nothing, says why, and Esc leaves it", async () => {
    const { page } = await sheet({ store: true });
    await page.locator("text=Record a test").first().click();
    await page.waitForSelector("form.record");
    await page.evaluate(() => document.querySelector("form.record")?.setAttribute("novalidate", ""));
    await page.fill("form.record input[type=date]", "");
    await page.keyboard.press("Enter");
    await page.waitForSelector("form.record [role=alert]");
    expect(await page.textContent("form.record [role=alert]")).toContain("Nothing was stored");
    await page.keyboard.press("Escape");
    await page.waitForFunction(() => !document.querySelector("form.record"));
    await page.waitForFunction(() => document.activeElement?.textContent === "Record a test");
  });

  test("saves schedule and calendar as files", async () => {
    const { page } = await sheet();
    const folder = mkdtempSync(join(tmpdir(), "forecourse-kit-"));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    for (const [text, name] of [["Kit as XLSX", "kit.xlsx"], ["CSV", "kit.csv"], ["Calendar for a phone", "calendar.ics"]] as const) {
      const [saved] = await Promise.all([page.waitForEvent("download"), page.click(`.downloads >> text="${text}"`)]);
      expect(saved.suggestedFilename()).toBe(`hollin-gap-${name}`);
    }
  });

  test("sheets to fill in and drawings are saved from Reports", async () => {
    const { page } = await sheet({ query: "?sheet=reports", there: ".handed" });
    for (const [text, name] of [["Sheets to fill in, Save as HTML", "sheets.html"], ["Plan, SVG", "plan.svg"], ["Section at a dispenser, DXF", "dispenser.dxf"]] as const) {
      const [saved] = await Promise.all([page.waitForEvent("download"), page.click(`.handed [aria-label="${text}"]`)]);
      expect(saved.suggestedFilename()).toBe(`hollin-gap-${name}`);
      expect(readFileSync(await saved.path(), "utf8").length).toBeGreaterThan(1000);
    }
    await page.locator(".handed").scrollIntoViewIfNeeded();
    await picture(page, "reports-handed");
    expect(await violations(page)).toEqual([]);
  });

  test("can be read dark, at a middle width and on a narrow screen, what is due first", async () => {
    for (const viewport of [sizes.middle, sizes.phone]) {
      const { page } = await sheet({ viewport, query: "?sheet=kit&theme=dark", store: true });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
      expect(await violations(page)).toEqual([]);
      expect(await page.evaluate(small)).toEqual([]);
      if (viewport === sizes.phone) {
        const top = (selector: string) => page.evaluate((s) => document.querySelector(s)?.getBoundingClientRect().top ?? 0, selector);
        expect(await top(".due")).toBeLessThan(await top(".kit"));
        expect(await page.locator("text=Record a test").filter({ visible: true }).count()).toBe(0);
      }
      await picture(page, `kit-${viewport.width}`);
    }
  });

  test("a station without parts says what will stand here", async () => {
    const workbench = await serveFile(copyOf("bare", 'format = 1\n[site]\nname = "Bare (invented)"\n'));
    onTestFinished(() => end(workbench));
    const { page } = await open(shared.browser, workbench, { query: "?sheet=kit" });
    await page.waitForSelector(".empty h2");
    expect(await page.textContent(".empty h2")).toContain("listed yet");
  });
});
