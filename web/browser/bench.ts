// Time from a change to the last repaint, frame time of a drag, first paint, and memory over many changes; measured in
// the browser. Not a test: it reports. Run with: ./test bench, or node web/browser/bench.ts
import { readFileSync } from "node:fs";
import { performance } from "node:perf_hooks";
import type { Page } from "playwright-core";
import { end, launch, open, serve, settled, type Workbench } from "./workbench.ts";

const rounds = Number(process.env["FORECOURSE_ROUNDS"] ?? 40);
const changes = Number(process.env["FORECOURSE_CHANGES"] ?? 1000);

const share = (values: number[], q: number) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(q * sorted.length) - 1)] ?? NaN;
};
const told = (name: string, values: number[], unit = "ms") =>
  console.log(
    `${name}: median ${share(values, 0.5).toFixed(1)}, 95th percentile ${share(values, 0.95).toFixed(1)}, most ${Math.max(...values).toFixed(1)} ${unit} (${values.length})`,
  );

/** Notes when the page last changed what it shows. A toast is not an answer. */
async function watchPaint(page: Page) {
  await page.evaluate(() => {
    const w = window as unknown as { painted: number };
    w.painted = 0;
    new MutationObserver((list) => {
      const answers = list.some((m) => !(m.target instanceof Element ? m.target : m.target.parentElement)?.closest(".toast, .who"));
      if (answers) requestAnimationFrame(() => (w.painted = performance.now()));
    }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  });
}

/** From the key that undoes a change, or does it again, until the last repaint after it. */
async function repaint(page: Page, keys: string): Promise<number> {
  await page.evaluate(() => {
    const w = window as unknown as { painted: number; pressed: number };
    w.pressed = 0;
    addEventListener("keydown", () => (w.pressed = performance.now()), { capture: true });
  });
  await page.keyboard.press(keys);
  return page.evaluate(async () => {
    const w = window as unknown as { painted: number; pressed: number };
    for (let quiet = performance.now(); performance.now() - quiet < 500; ) {
      const before = w.painted;
      await new Promise((done) => setTimeout(done, 50));
      if (w.painted !== before) quiet = performance.now();
    }
    return w.painted - w.pressed;
  });
}

async function measureRepaint(site: string, path: string, value: string) {
  const workbench = await serve(site);
  const browser = await launch();
  for (const sheet of ["site", "flow", "checks", "containment"]) {
    const { page, context } = await open(browser, workbench, { query: `?sheet=${sheet}` });
    await settled(page);
    await change(page, workbench, path, value);
    await page.waitForTimeout(500);
    await watchPaint(page);
    const times: number[] = [];
    for (let i = 0; i < rounds; ++i) times.push(await repaint(page, i % 2 ? "Control+Shift+z" : "Control+z"));
    told(`${site}, ${sheet}: change of ${path} to the last repaint`, times.slice(2));
    await context.close();
  }
  await browser.close();
  await end(workbench);
}

/** Frames while a dispenser is dragged: how far apart they are, and what each moved pointer costs before its frame. */
async function measureDrag() {
  const workbench = await serve("hollin-gap");
  const browser = await launch();
  const { page, context } = await open(browser, workbench, { query: "?sheet=site", viewport: { width: 1440, height: 1200 } });
  await settled(page);
  const handle = page.locator('.plan-over [data-part="dispenser.D3"]');
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (!box) throw new Error("the plan has no handle of D3");
  await page.evaluate(() => {
    const w = window as unknown as { apart: number[]; cost: number[] };
    w.apart = [];
    w.cost = [];
    let last = 0;
    const tick = (now: number) => {
      if (last) w.apart.push(now - last);
      last = now;
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
    let start = 0;
    addEventListener("pointermove", () => (start ||= performance.now()), { capture: true });
    const after = () => {
      if (start) w.cost.push(performance.now() - start);
      start = 0;
      requestAnimationFrame(() => queueMicrotask(after));
    };
    requestAnimationFrame(() => queueMicrotask(after));
  });
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 90; ++i) {
    await page.mouse.move(x + i, y + i / 2);
    await page.waitForTimeout(16);
  }
  const { apart, cost } = await page.evaluate(() => {
    const w = window as unknown as { apart: number[]; cost: number[] };
    return { apart: w.apart, cost: w.cost };
  });
  told("drag: from a moved pointer to its frame", cost);
  told("drag: from frame to frame", apart);
  await context.close();
  await browser.close();
  await end(workbench);
}

async function measureFirstPaint() {
  const browser = await launch();
  const times: number[] = [];
  for (let i = 0; i < 5; ++i) {
    const start = performance.now();
    const workbench = await serve("hollin-gap");
    const { page, context } = await open(browser, workbench);
    await page.waitForSelector(".drawing svg");
    times.push(performance.now() - start);
    await context.close();
    await end(workbench);
  }
  told("from `serve` to the section drawn", times);
  await browser.close();
}

const resident = (pid: number) => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? 0) / 1024;

async function measureMemory() {
  const workbench = await serve("hollin-gap");
  const browser = await launch();
  const { page, context } = await open(browser, workbench, { query: "?sheet=flow" });
  await settled(page);
  const session = await context.newCDPSession(page);
  const heap = async () => {
    await session.send("HeapProfiler.collectGarbage");
    const { usedSize } = await session.send("Runtime.getHeapUsage");
    return usedSize / 2 ** 20;
  };
  const line = async (n: number) =>
    console.log(`after ${n} changes: page ${(await heap()).toFixed(1)} MiB, program ${resident(workbench.process.pid ?? 0).toFixed(1)} MiB`);
  for (let n = 0; n <= changes; ++n) {
    if (n % Math.ceil(changes / 5) === 0) await line(n);
    if (n % 2 === 0) await change(page, workbench, "line.regular-trunk.bore", `${(2 + (n % 7) / 10).toFixed(1)} in`);
    else await page.keyboard.press("Control+z");
    await page.waitForTimeout(20);
  }
  await browser.close();
  await end(workbench);
}

/** One step, as another tab would make it. */
const change = (page: Page, workbench: Workbench, path: string, value: string) =>
  page.evaluate(
    async ({ key, path, value }) => {
      const station = (await (await fetch("/api/station")).json()) as { revision: number };
      await fetch("/api/edit", {
        method: "POST",
        headers: { "Content-Type": "application/json", "X-Forecourse-Key": key },
        body: JSON.stringify({ revision: station.revision, label: path, edits: [{ path, value }] }),
      });
    },
    { key: workbench.key, path, value },
  );

await measureFirstPaint();
await measureDrag();
await measureRepaint("hollin-gap", "line.regular-trunk.bore", "2.5 in");
await measureMemory();
