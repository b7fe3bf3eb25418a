import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { started, withBrowser } from "./shared.ts";
import { commandJson, open, settled, type Workbench } from "./workbench.ts";

const shared = withBrowser();

/** What is entered for each part of the smallest station that delivers, by the end of a field's id; figures invented. */
const parts: [kind: string, values: Record<string, string>][] = [
  ["product", { "-id": "regular", "-kind": "gasoline-e10" }],
  ["tank", { "-product": "regular", "-position": "0 ft", "-position-up": "0 ft" }],
  ["pump", { "-tank": "T1", "-curve.shutoff": "29 psi", "-curve.run_out": "120 gpm" }],
  ["dispenser", { "-position": "100 ft", "-position-up": "0 ft" }],
  ["inlet", { "-product": "regular" }],
  ["hose", { "-product": "regular", "-lift": "11 ft", "-loss": "0.18 psi/gpm^2" }],
  ["line", { "-from": "P1", "-to": "D1.regular", "-length": "140 ft", "-bore": "2.00 in" }],
];

interface FlowJson {
  result: { states: { systems: { hoses: { id: string; hose_flow_m3_per_s: number }[] }[] }[] };
}

/** The flow that the page shows for the one hose, against the command line's on the same file. */
async function agrees(page: Page, workbench: Workbench, name: string) {
  await page.click('nav a:has-text("Flow")');
  await settled(page);
  const told = (await commandJson("flow", join(workbench.folder, `${name}.toml`))) as FlowJson;
  const flow = told.result.states[0]?.systems[0]?.hoses[0]?.hose_flow_m3_per_s ?? NaN;
  const gpm = (flow / 3.785411784e-3) * 60;
  expect(gpm).toBeGreaterThan(5);
  expect(await page.textContent("main")).toContain(gpm.toFixed(1));
}

test("a station grows from the empty template by mouse to the command line's flow", async () => {
  const workbench = await started("site-s");
  const { page, seen, context } = await open(shared.browser, workbench, { query: "?sheet=site" });
  await settled(page);
  await page.click('button[aria-haspopup=menu]:has-text("File")');
  await page.click('[role=menuitem]:has-text("New station")');
  await page.fill("#file-name", "mine");
  await page.click("text=Make the station");
  await page.waitForFunction(() => document.querySelector(".who span")?.textContent?.includes("mine.toml"));
  for (const [kind, values] of parts) {
    await page.click("button:has-text('Add a part')");
    await page.click(`[role=menuitem]:has-text("${kind}") >> nth=0`);
    for (const [field, value] of Object.entries(values)) {
      const input = page.locator(`.newform [id$="${field}"]`).first();
      await input.waitFor();
      if ((await input.evaluate((e) => e.tagName)) === "SELECT") await input.selectOption(value);
      else await input.fill(value);
    }
    await page.click(".newform button[type=submit]");
    await page.waitForSelector(".newform", { state: "detached" });
  }
  await agrees(page, workbench, "mine");
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});

/** The keys alone: Tab to a thing, type into it, choose in a list by its first letters. */
class Keys {
  constructor(private page: Page) {}

  press = (...keys: string[]) => keys.reduce((before, key) => before.then(() => this.page.keyboard.press(key)), Promise.resolve());
  focused = () =>
    this.page.evaluate(() => {
      const e = document.activeElement;
      return `${e?.tagName} ${e?.id || e?.getAttribute("aria-label") || (e?.textContent ?? "").trim().slice(0, 40)}`;
    });

  async to(wanted: string, most = 200) {
    for (let i = 0; i < most; ++i) {
      if ((await this.focused()).includes(wanted)) return;
      await this.page.keyboard.press("Tab");
    }
    throw new Error(`Tab never comes to ${wanted}; it is at ${await this.focused()}`);
  }

  async item(wanted: string) {
    for (let i = 0; i < 40; ++i) {
      if ((await this.focused()).toLowerCase().includes(wanted)) return this.press("Enter");
      await this.press("ArrowDown");
    }
    throw new Error(`the menu has no ${wanted}`);
  }
}

test("the same by keyboard alone", async () => {
  const workbench = await started("site-s");
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=site" });
  await settled(page);
  const keys = new Keys(page);
  await keys.to("BUTTON File");
  await keys.press("Enter");
  await page.waitForSelector("[role=menu]");
  await keys.item("new station");
  await page.waitForSelector("#file-name");
  await keys.to("file-name");
  await page.keyboard.type("keyed");
  await keys.press("Enter");
  await page.waitForFunction(() => document.querySelector(".who span")?.textContent?.includes("keyed.toml"));
  for (const [kind, values] of parts) {
    await keys.to("Add a part");
    await keys.press("Enter");
    await page.waitForSelector("[role=menu]");
    await keys.item(kind);
    await page.waitForSelector(".newform");
    for (const [field, value] of Object.entries(values)) {
      await keys.to(field);
      if (!(await keys.focused()).startsWith("SELECT")) await keys.press("Control+A");
      await page.keyboard.type(value);
    }
    await keys.to("BUTTON Add the");
    await keys.press("Enter");
    await page.waitForSelector(".newform", { state: "detached" });
  }
  await agrees(page, workbench, "keyed");
  await context.close();
});

test("a drag is one step, Esc puts it back, arrow keys do the same", async () => {
  const workbench = await started("hollin-gap");
  const before = workbench.text();
  const { page, context } = await open(shared.browser, workbench, { query: "?sheet=site", viewport: { width: 1440, height: 1200 } });
  await settled(page);
  const handle = page.locator('.plan-over [data-part="dispenser.D3"]');
  await handle.scrollIntoViewIfNeeded();
  const label = () => handle.getAttribute("aria-label");
  const [at, box] = [await label(), await handle.boundingBox()];
  if (!box) throw new Error("the plan has no handle of D3");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const drag = async () => {
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 20; ++i) await page.mouse.move(x + 2 * i, y + i);
  };
  await drag();
  expect(await label()).not.toBe(at);
  expect(workbench.text()).toBe(before);
  await page.keyboard.press("Escape");
  await page.mouse.up();
  expect(await label()).toBe(at);
  expect(workbench.text()).toBe(before);
  await drag();
  await page.mouse.up();
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).not.toBe(before);
  const dragged = await label();
  await handle.focus();
  await page.keyboard.press("Shift+ArrowRight");
  await expect.poll(label).not.toBe(dragged);
  await page.waitForTimeout(1500);
  await page.keyboard.press("Control+z");
  await page.waitForTimeout(800);
  await page.keyboard.press("Control+z");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(before);
  expect(readFileSync(workbench.file, "utf8")).toBe(before);
  await context.close();
});
