import { cpSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { small, violations } from "./access.ts";
import { withBrowser } from "./shared.ts";
import { commandJson, copyOf, end, open, picture, project, serveFile, settled, sizes } from "./workbench.ts";

const shared = withBrowser();
const given = join(project, "sites/records/hollin-gap");

async function view(more: { query?: string; viewport?: { width: number; height: number }; records?: boolean } = {}) {
  const file = copyOf("hollin-gap");
  if (more.records ?? true) cpSync(given, join(file, "../records/hollin-gap"), { recursive: true });
  const workbench = await serveFile(file);
  onTestFinished(() => end(workbench));
  const { query = "?sheet=ledger&view=meters", ...rest } = more;
  const opened = await open(shared.browser, workbench, { query, ...rest });
  await settled(opened.page);
  return opened;
}

interface Told {
  result: { meters: { hose: string; error: number; answer: string[] }[]; unproved: string[]; books: unknown[] };
}
const told = async (...more: string[]) =>
  (await commandJson("meter", `${project}/sites/hollin-gap.toml`, "--records", given, "--json", ...more)) as Told;

describe("the view Meters", () => {
  test("shows what the command tells of the same records", async () => {
    const { page, seen } = await view();
    const { meters, unproved, books } = (await told()).result;
    expect(await page.textContent(".caution")).toContain("does not cancel a duty to report");
    const rows = page.locator("[aria-label='Meters, table'] tbody tr");
    expect(await rows.count()).toBe(meters.length);
    expect(await rows.first().textContent()).toContain((100 * (meters[0]?.error ?? 0)).toFixed(3));
    expect(await page.textContent(`[aria-label='Meter of ${meters[0]?.hose}']`)).toContain(meters[0]?.answer[0] ?? "none");
    expect(await page.textContent(".insp")).toContain(unproved.at(-1) ?? "none");
    expect(await page.locator("h2:has-text('Which meters explain')").count()).toBe(books.length);
    expect(await page.locator("[role=group][aria-label^='Error of each meter'] svg").count()).toBe(1);
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(small)).toEqual([]);
    expect(seen.faults).toEqual([]);
    await picture(page, "meters");
  });

  test("a meter is chosen by keyboard, and each limit stands by shape and word", async () => {
    const { page } = await view();
    await page.focus("[aria-label='Meters, table'] tbody tr:nth-child(2) button");
    await page.keyboard.press("Enter");
    const hose = (await page.textContent("[aria-label='Meters, table'] tbody tr:nth-child(2) button")) ?? "";
    await page.waitForFunction((name) => document.querySelector(".insp h2")?.textContent === `Meter of ${name}`, hose);
    const stands = page.locator(`[aria-label='Limits of the meter of ${hose}, table'] .state`);
    expect(await stands.count()).toBeGreaterThan(2);
    expect(await stands.locator(".st").count()).toBe(await stands.count());
    expect(await stands.allTextContents()).toContain(" Meets: within");
  });

  test("counts money at a price, and says what it cannot read", async () => {
    const { page } = await view();
    const price = page.locator(".ask", { has: page.locator("label:text-is('Price')") }).locator("input");
    await price.fill("3.20 USD per gal");
    await page.keyboard.press("Enter");
    await page.waitForSelector("td:has-text('USD')");
    await price.fill("cheap");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".note.bad");
    expect(await page.locator("[aria-label='Meters, table'] tbody tr").count()).toBeGreaterThan(0);
  });

  test("without records says how to give some", async () => {
    const { page } = await view({ records: false });
    expect(await page.textContent(".empty h2")).toBe("No records are given");
  });

  test("is where the checks say its findings are computed", async () => {
    const { page } = await view({ query: "?sheet=checks" });
    await page.waitForSelector(".crow");
    await page.click(".crow:has-text('a meter errs') >> nth=0");
    await page.click(".det >> text=Ledger, Meters");
    await page.waitForSelector("[aria-label='Meters, table']");
  });

  test("can be read dark, at a middle width and on a narrow screen", async () => {
    for (const viewport of [{ width: 1180, height: 820 }, sizes.phone]) {
      const { page } = await view({ viewport, query: "?sheet=ledger&view=meters&theme=dark" });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
      expect(await violations(page)).toEqual([]);
      if (viewport === sizes.phone) expect(await page.locator("[aria-label='Asked with']").count()).toBe(0);
    }
  });
});
