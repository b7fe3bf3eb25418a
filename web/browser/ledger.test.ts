import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { small, violations } from "./access.ts";
import { withBrowser } from "./shared.ts";
import { copyOf, end, open, picture, program, project, serveFile, settled, sizes } from "./workbench.ts";

const shared = withBrowser();

/** Days of a tank that is read at night, 100 gal for each inch; `short` gallons are missing on each day. */
function records(short: number) {
  const days = Array.from({ length: 12 }, (_, i) => `2026-11-${String(i + 1).padStart(2, "0")}`);
  const dips = days.map((day, i) => `${day},23:00,T1,${90 - 5 * i - (short * i) / 100} in`);
  const sales = days.map((day) => `${day},T1,500 gal`);
  return {
    "dips.csv": `day,time,tank,depth\n${dips.join("\n")}\n2026-10-31,23:00,T1,95 in\n`,
    "sales.csv": `day,tank,volume\n${sales.join("\n")}\n`,
  };
}

const tank = (id: string, product: string) =>
  `[[tank]]\nid = "${id}"\nproduct = "${product}"\nshape = { kind = "rectangular", length = "231 in", width = "100 in", height = "100 in" }\n`;
const site =
  `format = 1\n[site]\nname = "Yard (invented)"\n` +
  ["regular", "premium"].map((p) => `[[product]]\nid = "${p}"\nkind = "gasoline-e10"\ndensity = "740 kg/m3"\n`).join("") +
  tank("T1", "regular") + tank("T2", "premium");

/** The program on a yard with records beside it, as files or as a store. */
async function yard(kind: "none" | "files" | "store", short = 2) {
  const file = copyOf("yard", site);
  const folder = join(file, "..", "records");
  if (kind !== "none") {
    mkdirSync(folder);
    for (const [name, text] of Object.entries(records(short))) writeFileSync(join(folder, name), text);
  }
  if (kind === "store") execFileSync(program, ["records", "import", file.replace(/toml$/, "db"), folder, "--site", file]);
  const workbench = await serveFile(file);
  onTestFinished(() => end(workbench));
  return workbench;
}

const sheet = (workbench: Awaited<ReturnType<typeof yard>>, more: { query?: string; viewport?: { width: number; height: number } } = {}) =>
  open(shared.browser, workbench, { query: "?sheet=ledger", ...more });
const dayRows = ".days tbody tr:not(.opening):not(.fillnext):not(.entryproblem)";

describe("the sheet", () => {
  test("without records says how to give some", async () => {
    const { page } = await sheet(await yard("none"));
    await settled(page);
    expect(await page.textContent(".empty h2")).toBe("No records are given");
    expect(await page.textContent(".empty")).toContain("--records");
    expect(await violations(page)).toEqual([]);
  });

  test("shows days, limits, causes and the answer of the engine", async () => {
    const { page, seen } = await sheet(await yard("files"));
    await settled(page);
    expect(await page.locator(dayRows).count()).toBe(12);
    expect(await page.textContent(".insp .v")).toContain("−22");
    expect(await page.textContent(".statusline")).toContain("Not determined"); // the month is not over
    expect(await page.textContent(".insp")).toContain("standard error");
    expect(await page.locator("svg.ledgerchart").count()).toBe(4);
    expect(await page.textContent(".daycol")).toContain("records import");
    expect(await page.locator(".fillnext").count()).toBe(0);
    await page.keyboard.press("u");
    await page.waitForFunction(() => document.querySelector(".insp .v")?.textContent?.includes("L"));
    expect(seen.faults).toEqual([]);
  });

  test("one that falls short says first that explaining does not cancel reporting, and marks the days by shape", async () => {
    const { page } = await sheet(await yard("files", 40));
    await settled(page);
    const words = (await page.textContent(".insp")) ?? "";
    expect(words).toContain("Falls short");
    expect(words.indexOf("does not cancel a duty to report")).toBeLessThan(words.indexOf("What to do next"));
    expect(words.indexOf("does not cancel a duty to report")).toBeGreaterThan(0);
    expect(await page.locator(".days .out .st").count()).toBeGreaterThan(0);
    expect(await page.locator(".ledgerchart .outside").count()).toBeGreaterThan(0);
  });

  test("gives the checks their findings", async () => {
    const file = copyOf("hollin-gap");
    cpSync(join(project, "sites/records/hollin-gap"), join(file, "../records/hollin-gap"), { recursive: true });
    const workbench = await serveFile(file);
    onTestFinished(() => end(workbench));
    const { page } = await open(shared.browser, workbench, { query: "?sheet=checks" });
    await page.waitForSelector(".crow");
    await page.click(".crow:has-text('over and short of a month') >> nth=0");
    await page.click(".det >> text=Ledger, Month");
    await page.waitForSelector(".days");
    expect(await page.locator(dayRows).count()).toBe(31);
  });

  test("picks a book, and one without readings says so", async () => {
    const { page } = await sheet(await yard("files"));
    await settled(page);
    await page.click("role=radio[name=T2]");
    await page.waitForSelector(".empty h2");
    expect(await page.textContent(".empty h2")).toBe("No reading of it is on record");
    await page.reload();
    await page.waitForSelector(".empty h2");
  });

  test("tells what is wrong with the records, and follows when it is mended", async () => {
    const workbench = await yard("files");
    const { page } = await sheet(workbench);
    await settled(page);
    const dips = join(workbench.folder, "records", "dips.csv");
    writeFileSync(dips, "day,time,tank,depth\n2026-11-01,23:00,T9,50 in\n");
    await page.waitForSelector(".ledgerwrong");
    expect(await page.textContent(".ledgerwrong")).toContain("dips.csv, line 2");
    writeFileSync(dips, records(2)["dips.csv"]);
    await page.waitForSelector(".days");
  });
});

describe("entry", () => {
  test("goes down the column, is kept, and can be taken back", async () => {
    const workbench = await yard("store");
    const { page } = await sheet(workbench);
    await settled(page);
    const before = await page.locator(dayRows).count();
    expect(await page.textContent(".fillnext .expects")).toContain("book expects");
    await page.fill("[aria-label='Sold of 13 Nov 2026']", "480");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelector(".fillnext")?.textContent?.includes("480"));
    await page.fill("[aria-label='Dip of 13 Nov 2026']", "30 1/8");
    await page.keyboard.press("Enter");
    await page.waitForSelector("[aria-label='Dip of 14 Nov 2026']");
    expect(await page.locator(dayRows).count()).toBe(before + 1);
    expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-label"))).toBe("Dip of 14 Nov 2026");
    await page.keyboard.press("ArrowUp");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("30.125");
    await page.keyboard.press("ArrowDown");
    await page.reload();
    await page.waitForSelector("[aria-label='Dip of 14 Nov 2026']");
    await picture(page, "ledger-entry");
    await page.click("text=Take back the last entry");
    await page.waitForSelector("[aria-label='Dip of 13 Nov 2026']");
    expect(await page.locator(dayRows).count()).toBe(before);
  });

  test("that is bad changes nothing and says why; Esc empties the field", async () => {
    const { page } = await sheet(await yard("store"));
    await settled(page);
    const before = await page.locator(dayRows).count();
    const dip = page.locator("[aria-label='Dip of 13 Nov 2026']");
    await dip.fill("30 fet");
    await dip.press("Enter");
    await page.waitForSelector(".entryproblem");
    expect(await page.textContent(".entryproblem")).toContain("Nothing was stored.");
    expect(await dip.inputValue()).toBe("30 fet");
    expect(await violations(page)).toEqual([]);
    await dip.press("Escape");
    expect(await dip.inputValue()).toBe("");
    expect(await page.locator(".entryproblem").count()).toBe(0);
    expect(await page.locator(dayRows).count()).toBe(before);
  });
});

for (const [size, viewport] of Object.entries(sizes)) {
  test.each(["light", "dark"])(`${size}, %s: can be read and used by all`, async (theme) => {
    const { page, seen } = await sheet(await yard("store", 40), { viewport, query: `?sheet=ledger&theme=${theme}` });
    await settled(page);
    await picture(page, `ledger-records-${viewport.width}-${theme}`);
    expect(await page.evaluate(small)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await violations(page)).toEqual([]);
    expect(seen).toEqual({ faults: [], foreign: [] });
    expect(await page.locator(".days input").count()).toBe(size === "phone" ? 0 : 3);
  });
}
