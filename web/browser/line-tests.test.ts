import { readFileSync } from "node:fs";
import { onTestFinished, describe, expect, test } from "vitest";
import { small, violations } from "./access.ts";
import { withBrowser } from "./shared.ts";
import { commandJson, end, open, picture, project, serve, settled, sizes } from "./workbench.ts";

const shared = withBrowser();

interface Asked {
  query?: string;
  viewport?: { width: number; height: number };
  /** Of the site file, in place of its own. */
  text?: string;
}

async function view(site: string, { text, ...more }: Asked = {}) {
  const workbench = await serve(site, text);
  onTestFinished(() => end(workbench));
  const opened = await open(shared.browser, workbench, { query: "?sheet=ledger&view=line-tests", ...more });
  await settled(opened.page);
  return opened;
}
type Page = Awaited<ReturnType<typeof view>>["page"];

const field = (page: Page, label: string) => page.locator(".ask", { has: page.locator(`label:text-is("${label}")`) }).locator("input");
async function ask(page: Page, label: string, text: string) {
  await field(page, label).fill(text);
  await page.keyboard.press("Enter");
  await settled(page);
}
async function askAll(page: Page) {
  await ask(page, "Fuel warmer than the ground", "18");
  await ask(page, "Time constant of the line", "1.5");
  await ask(page, "Volume the line yields by pressure", "0.02 gal/psi");
  await ask(page, "Leak", "0.1");
  await ask(page, "Wait before it", "6");
  await ask(page, "Passes with a drop up to", "2 psi");
}

describe("the view Line tests", () => {
  test("says what is not determined and what to enter", async () => {
    const { page, seen } = await view("hollin-gap");
    expect(await page.textContent(".caution")).toContain("certified tester");
    expect(await page.textContent(".ledgerview .halves")).toContain("Not determined");
    expect(await page.textContent(".ledgerview .reads")).toContain("not determined");
    expect(await field(page, "Fuel warmer than the ground").getAttribute("placeholder")).toBe("not determined");
    expect(await page.textContent(".ledgerview .halves")).toContain("Pressure per degree, shut");
    expect(await page.locator(".ledgerview .tbl .state .st.none").count()).toBe(1);
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(small)).toEqual([]);
    expect(seen.faults).toEqual([]);
  });

  test("shows what the command tells of the same line", async () => {
    const text = readFileSync(`${project}/sites/hollin-gap.toml`, "utf8");
    const acting = text.replace('at = "10 psi", detection', 'at = "10 psi", acts_within = "1 h", detection');
    expect(acting).not.toBe(text);
    const { page } = await view("hollin-gap", { text: acting });
    await askAll(page);
    await ask(page, "Quiet times in a day", "6, 0.5 h");
    const told = (await commandJson(
      "line-test", `${project}/sites/hollin-gap.toml`, "--product", "regular", "--warmer", "18 degF", "--time-constant", "1.5 h", "--compliance", "0.02 gal/psi",
      "--leak", "0.1 gph", "--wait", "6 h", "--drop", "2 psi", "--quiet", "6 h", "--quiet", "0.5 h", "--json",
    )) as { result: { lines: { proves: string[]; thermal: { wait_s: number } }[] } };
    const line = told.result.lines[0];
    expect(await page.locator(".proves li").allTextContents()).toEqual(line?.proves);
    expect(await page.textContent(".ledgerview .reads dd")).toContain(((line?.thermal.wait_s ?? 0) / 3600).toFixed(1));
    expect(await page.locator(".ledgerview .halves svg").count()).toBe(2);
    expect(await page.textContent(".ledgerview .halves")).toContain("calls a leak above");
    expect(await page.textContent(".ledgerview .state")).toContain("1 of 2 long enough");
    expect(await page.locator(".quietchart .quietbar").count()).toBe(2);
    expect(await violations(page)).toEqual([]);
    await picture(page, "line-tests");
  });

  test("keeps what was asked over a reload, and shows it in the units chosen", async () => {
    const { page } = await view("hollin-gap");
    await askAll(page);
    await page.reload();
    await settled(page);
    expect(await field(page, "Fuel warmer than the ground").inputValue()).toBe("18 degF");
    await page.click("h1");
    await page.keyboard.press("u");
    await page.waitForFunction(() => document.querySelector(".proves")?.textContent?.includes("kPa"));
    expect(await page.textContent(".ledgerview .reads")).toContain("L/h");
  });

  test("says under the field what cannot be read, and leaves the last answer standing", async () => {
    const { page } = await view("hollin-gap");
    await askAll(page);
    await ask(page, "Duration", "long");
    expect(await page.textContent(".ask .hint.bad")).toContain("Duration");
    expect(await page.locator(".proves li").count()).toBeGreaterThan(0);
    expect(await page.locator(".ledgerview .halves svg").count()).toBe(2);
    await ask(page, "Duration", "");
    expect(await page.locator(".ask .hint.bad").count()).toBe(0);
  });

  test("is reached by keyboard, and a line is picked by the arrows", async () => {
    const { page } = await view("hollin-gap", { query: "?sheet=ledger" });
    await page.keyboard.press("v");
    await page.waitForSelector(".ledgerview");
    await page.focus("[role=radiogroup][aria-label=Line] [aria-checked=true]");
    await page.keyboard.press("ArrowRight");
    await page.waitForFunction(() => document.querySelector(".insp h2")?.textContent === "Line of premium");
  });

  test("is where the checks say its findings are computed", async () => {
    const { page } = await view("hollin-gap", { query: "?sheet=checks" });
    await page.waitForSelector(".crow");
    await page.click(".crow:has-text('280.44(a)')");
    await page.click(".det >> text=Ledger, Line tests");
    await page.waitForSelector(".ledgerview");
  });

  test("is to read on a narrow screen, without sideways overflow", async () => {
    for (const viewport of [sizes.middle, sizes.phone]) {
      const { page } = await view("hollin-gap", { viewport });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
      if (viewport === sizes.phone) expect(await page.locator(".ask input").count()).toBe(0);
      expect(await violations(page)).toEqual([]);
    }
  });
});
