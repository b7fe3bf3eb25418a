import { describe, expect, test } from "vitest";
import { small, violations } from "./access.ts";
import { withBrowser, withWorkbench } from "./shared.ts";
import { open, picture, settled, sheets, sizes } from "./workbench.ts";

const shared = withBrowser();
const station = withWorkbench("hollin-gap");

for (const [size, viewport] of Object.entries(sizes)) {
  for (const theme of ["light", "dark"] as const) {
    describe(`${size}, ${theme}`, () => {
      test.each(sheets)("%s", async (sheet) => {
        const { page, seen, context } = await open(shared.browser, station.workbench, { viewport, query: `?sheet=${sheet}&theme=${theme}` });
        await settled(page);
        await picture(page, `${sheet}-${viewport.width}x${viewport.height}-${theme}`);
        expect(await page.evaluate(small)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
        expect(await violations(page)).toEqual([]);
        expect(seen).toEqual({ faults: [], foreign: [] });
        await context.close();
      });
    });
  }
}
