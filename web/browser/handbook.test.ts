import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { withBrowser, withWorkbench } from "./shared.ts";
import { open, pictures, project, settled } from "./workbench.ts";

// The pictures of docs/handbook/workbench.md come from the running workbench. A picture that no longer shows what the
// workbench shows fails here; FORECOURSE_WRITE_PICTURES=1 writes them anew.
const folder = join(project, "docs/images/workbench");
const write = process.env["FORECOURSE_WRITE_PICTURES"] === "1";
/** Letters may be drawn a little otherwise by another browser; more than this is another picture. */
const share = 0.02;

/** So many events on. */
const onEvents = (count: number) => async (page: Page) => {
  for (let i = 0; i < count; ++i) await page.keyboard.press(".");
  await page.waitForTimeout(300);
};

/** Has the server tell the calendar of a day, whatever day it is. */
const onDay = (day: string) => async (page: Page) => {
  await page.route("**/api/ask", (route) => {
    const body = route.request().postDataJSON() as { wants: { study?: string; on?: string }[] };
    for (const want of body.wants) if (want.study === "calendar") want.on = day;
    return route.continue({ postData: JSON.stringify(body) });
  });
  await page.reload();
  await page.waitForSelector(".kit tbody");
  await settled(page);
};

const shown: { name: string; query: string; before?: (page: Page) => Promise<unknown> }[] = [
  { name: "site", query: "?sheet=site" },
  { name: "tank", query: "?sheet=tank" },
  { name: "flow", query: "?sheet=flow" },
  { name: "incident", query: "?sheet=incident", before: onEvents(9) },
  { name: "containment", query: "?sheet=containment" },
  { name: "checks", query: "?sheet=checks" },
  { name: "kit", query: "?sheet=kit", before: onDay("2026-11-30") },
  { name: "reports", query: "?sheet=reports" },
  { name: "dark", query: "?sheet=site&theme=dark&product=diesel" },
];

const shared = withBrowser();
const station = withWorkbench("hollin-gap");

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Share of the pixels that differ by more than the shade of a letter's edge. What lies in `leftOut` does not count:
 * the preview of a report is set in whatever fonts the system has. */
async function difference(a: Buffer, b: Buffer, leftOut: Box | null): Promise<number> {
  const page = await shared.browser.newPage();
  const out = await page.evaluate(
    async ({ first, second, leftOut }) => {
      const pixels = async (data: string) => {
        const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${data}`)).blob());
        const canvas = new OffscreenCanvas(image.width, image.height);
        const context = canvas.getContext("2d");
        context?.drawImage(image, 0, 0);
        return context?.getImageData(0, 0, image.width, image.height);
      };
      const [p, q] = [await pixels(first), await pixels(second)];
      if (!p || !q || p.width !== q.width || p.height !== q.height) return 1;
      let differ = 0;
      for (let i = 0; i < p.data.length; i += 4) {
        const [x, y] = [(i / 4) % p.width, Math.floor(i / 4 / p.width)];
        if (leftOut && x >= leftOut.x && x < leftOut.x + leftOut.width && y >= leftOut.y && y < leftOut.y + leftOut.height) continue;
        const far = [0, 1, 2].some((c) => Math.abs((p.data[i + c] ?? 0) - (q.data[i + c] ?? 0)) > 64);
        if (far) ++differ;
      }
      return differ / (p.data.length / 4);
    },
    { first: a.toString("base64"), second: b.toString("base64"), leftOut },
  );
  await page.close();
  return out;
}

test.each(shown)("the picture $name shows what the workbench shows", async ({ name, query, before }) => {
  const { page, context } = await open(shared.browser, station.workbench, { query, viewport: { width: 1280, height: 800 } });
  await settled(page);
  await page.waitForTimeout(700);
  await before?.(page);
  const preview = page.locator("iframe");
  const leftOut = (await preview.count()) > 0 ? await preview.boundingBox() : null;
  const now = await page.screenshot();
  await context.close();
  const file = join(folder, `${name}.png`);
  mkdirSync(pictures, { recursive: true });
  writeFileSync(join(pictures, `handbook-${name}.png`), now);
  if (write) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(file, now);
    return;
  }
  expect(existsSync(file), `${file} is missing`).toBe(true);
  expect(await difference(readFileSync(file), now, leftOut)).toBeLessThan(share);
});
