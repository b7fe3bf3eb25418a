import { test } from "vitest";
import { started, withBrowser } from "./shared.ts";
import { open, settled } from "./workbench.ts";
const shared = withBrowser();
const sites = (process.env["ZSITES"] ?? "ludd-bank").split(",");
const query = process.env["ZQ"] ?? "?sheet=tank";
test.each(sites)("%s", async (site) => {
  const workbench = await started(site);
  for (const [name, viewport] of [["wide", { width: 1440, height: 900 }], ["middle", { width: 1024, height: 768 }], ["phone", { width: 390, height: 844 }]] as const) {
    const { page, seen, context } = await open(shared.browser, workbench, { query: query + (name === "middle" ? "&theme=dark" : ""), viewport });
    await settled(page);
    await page.waitForTimeout(500);
    await page.screenshot({ path: `/work/scratch/h/shots/${site}-${name}.png` });
    if (seen.faults.length) console.log(site, name, seen.faults);
    await context.close();
  }
});
