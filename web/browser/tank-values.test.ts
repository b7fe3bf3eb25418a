import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { small, violations } from "./access.ts";
import { started, withBrowser } from "./shared.ts";
import { open, settled, sizes } from "./workbench.ts";

const shared = withBrowser();

const plain = (text: string | null | undefined) => (text ?? "").replaceAll("\u00A0", " ").trim();
const unfold = (page: Page) => page.click("summary:has-text('Values in this view')");
const entry = (page: Page, label: string) =>
  page.locator(`.viewvalues .field:has(> label:text-is("${label}")) input`).first();
/** What the panel beside the view reads. */
const read = (page: Page, name: string) => async () =>
  plain(await page.textContent(`.insp dl.reads dt:has-text("${name}") + dd`));
const enter = async (page: Page, label: string, text: string) => {
  await entry(page, label).fill(text);
  await page.keyboard.press("Enter");
};

interface Edited {
  view: string;
  site: string;
  /** Of the picker, where it is not the first. */
  part?: string;
  label: string;
  was: string;
  set: string;
  /** What the view shows that depends on it. */
  shows: (page: Page) => () => Promise<string>;
  /** An entry that cannot be taken, and how it is told. */
  bad: string;
  told: RegExp;
}

const edits: Edited[] = [
  {
    view: "depth", site: "marle-cross", label: "Inside diameter", was: "118 in", set: "120 in",
    shows: (page) => read(page, "Holds"), bad: "9 fet", told: /'fet' is not .*Kept 118 in\./,
  },
  {
    view: "depth", site: "ludd-bank", part: "F1, overfill valve", label: "Closes at", was: "86.7 in", set: "85 in",
    shows: (page) => async () => plain(await page.textContent(".settings tbody tr:first-child td:nth-child(7)")),
    bad: "-3 in", told: /Kept 86\.7 in\./,
  },
  {
    view: "delivery", site: "marle-cross", label: "Volume", was: "3000 gal", set: "2000 gal",
    shows: (page) => async () => plain(await page.textContent(".head p")), bad: "3 psi", told: /Kept 3000 gal\./,
  },
  {
    view: "delivery", site: "marle-cross", part: "T1, vent", label: "Opens at", was: "3 inH2O", set: "2 inH2O",
    shows: (page) => async () => plain(await page.textContent(".vcell:nth-child(4) small")), bad: "3 gal", told: /Kept 3 inH2O\./,
  },
  {
    view: "vapor", site: "hollin-gap", label: "Per month", was: "92000 gal", set: "50000 gal",
    shows: (page) => read(page, "Gasoline in a month"), bad: "many", told: /Kept 92000 gal\./,
  },
  {
    view: "flotation", site: "hollin-gap", label: "Cover", was: "4 ft 3 in", set: "3 ft",
    shows: (page) => read(page, "Finished and empty"), bad: "3 psi", told: /Kept 4 ft 3 in\./,
  },
];

describe("a value is changed in the view that depends on it", () => {
  test.each(edits)("$view: $label of $site", async ({ view, site, part, label, was, set, shows, bad, told }) => {
    const workbench = await started(site);
    const before = workbench.text();
    const { page, seen, context } = await open(shared.browser, workbench, { query: `?sheet=tank&view=${view}` });
    await settled(page);
    const shown = shows(page);
    const first = await shown();
    expect(first).not.toBe("");
    await unfold(page);
    if (part) await page.selectOption("#values-part", { label: part });
    expect(await entry(page, label).inputValue()).toBe(was);

    await enter(page, label, bad);
    await expect.poll(() => page.textContent(".viewvalues .hint.bad")).toMatch(told);
    expect(workbench.text()).toBe(before);
    await page.keyboard.press("Escape");
    expect(await entry(page, label).inputValue()).toBe(was);

    await enter(page, label, set);
    await expect.poll(() => workbench.text()).toContain(`"${set}"`);
    await expect.poll(shown).not.toBe(first);
    await page.click("[aria-label=Undo]");
    await expect.poll(() => workbench.text()).toBe(before);
    await expect.poll(shown).toBe(first);
    await expect.poll(() => entry(page, label).inputValue()).toBe(was);
    // What was refused was asked of the server, which said no.
    expect(seen.faults.filter((f) => !f.includes("422"))).toEqual([]);
    expect(seen.foreign).toEqual([]);
    await context.close();
  });
});

test("where nothing is entered under flotation, it is entered in the view", async () => {
  const workbench = await started("marle-cross");
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=tank&view=flotation" });
  await page.waitForSelector("text=No tank has its weight and cover entered");
  await page.click(".viewvalues summary:has-text('Add a value')");
  await page.click(".viewvalues li button:has-text('Flotation')");
  await page.fill(".newform .field:has(label:text-is('Empty mass')) input", "21000 lb");
  await page.fill(".newform .field:has(label:text-is('Cover')) input", "4 ft");
  await page.fill(".newform .field:has(label:text-is('Backfill')) input", "115 lbf/ft3");
  await page.fill(".newform .field:has(label:text-is('Water level')) input", "3 ft");
  await page.click(".newform button[type=submit]");
  await page.waitForSelector("[aria-label='Flotation of T1']");
  expect(workbench.text()).toMatch(/flotation = \{.*empty_mass = "21000 lb"/);
  await context.close();
});

test("which part was unfolded stays with its view, and the way to the Site sheet leads to the part", async () => {
  const workbench = await started("marle-cross");
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=tank&view=delivery" });
  await settled(page);
  await unfold(page);
  await page.selectOption("#values-part", { label: "F-T1, drop tube" });
  await page.click("text=All of its values on the Site sheet");
  await page.waitForSelector("h1:text('Site')");
  expect(await page.$eval("#part-shown", (e) => (e as HTMLSelectElement).value)).toBe("tank.T1.fill.F-T1.drop_tube");
  await context.close();
});

const views = ["depth", "delivery", "vapor", "flotation"];
describe("with its values unfolded", () => {
  for (const [size, viewport] of Object.entries(sizes)) {
    test.each(views)(`%s, ${size}: nothing overflows, is too small, or is against WCAG`, async (view) => {
      const workbench = await started(view === "delivery" ? "marle-cross" : "hollin-gap");
      for (const theme of ["light", "dark"]) {
        const query = `?sheet=tank&view=${view}&theme=${theme}&units=${theme === "dark" ? "si" : "us"}`;
        const { page, seen, context } = await open(shared.browser, workbench, { viewport, query });
        await settled(page);
        await unfold(page);
        await settled(page);
        expect(await page.evaluate(small)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
        expect(await violations(page)).toEqual([]);
        expect(seen).toEqual({ faults: [], foreign: [] });
        await context.close();
      }
    });
  }
});
