import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, onTestFinished, test } from "vitest";
import { started, withBrowser } from "./shared.ts";
import { open, programFolder, serveFile, settled } from "./workbench.ts";

const shared = withBrowser();

/** Asks the server as the page does. */
async function post(origin: string, key: string, path: string, body: unknown) {
  const response = await fetch(origin + path, {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-Forecourse-Key": key },
    body: JSON.stringify(body),
  });
  return { status: response.status, json: (await response.json()) as Record<string, unknown> };
}

async function revision(origin: string) {
  const station = (await (await fetch(`${origin}/api/station`)).json()) as { revision: number };
  return station.revision;
}

test("comments, order and every other byte of the file stay", async () => {
  const workbench = await started("site-s");
  const before = workbench.text();
  const { page, context } = await open(shared.browser, workbench);
  await settled(page);
  const { status } = await post(workbench.origin, workbench.key, "/api/edit", {
    revision: await revision(workbench.origin),
    label: "trunk bore",
    edits: [{ path: "line.trunk.bore", value: "3 in" }],
  });
  expect(status).toBe(200);
  const changed = before.split("\n").map((line, i) => (line === workbench.text().split("\n")[i] ? null : line));
  expect(changed.filter((line) => line !== null)).toHaveLength(1);
  expect(before).toContain("#");
  await page.waitForFunction(() => document.querySelector<HTMLButtonElement>("button[aria-label=Undo]")?.disabled === false);
  await page.keyboard.press("Control+z");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(before);
  await page.keyboard.press("Control+Shift+z");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).not.toBe(before);
  await context.close();
});

test("an edit outside is noticed by the page and can be undone", async () => {
  const workbench = await started("site-s");
  const { page, context } = await open(shared.browser, workbench);
  await settled(page);
  const before = workbench.text();
  writeFileSync(workbench.file, before.replace(/^name = ".*"/m, 'name = "Changed Outside"'));
  await expect.poll(() => page.textContent(".who b"), { timeout: 10_000 }).toBe("Changed Outside");
  await page.keyboard.press("Control+z");
  await expect.poll(() => workbench.text(), { timeout: 10_000 }).toBe(before);
  await context.close();
});

test("two tabs: a stale write is refused with what changed, one that touches other values is merged", async () => {
  const workbench = await started("site-s");
  const first = await open(shared.browser, workbench);
  const second = await open(shared.browser, workbench);
  await settled(second.page);
  const seen = await revision(workbench.origin);
  const edit = (path: string, value: string) =>
    post(workbench.origin, workbench.key, "/api/edit", { revision: seen, label: path, edits: [{ path, value }] });
  expect((await edit("line.trunk.bore", "3 in")).status).toBe(200);
  const stale = await edit("line.trunk.bore", "4 in");
  expect(stale.status).toBe(409);
  expect(JSON.stringify(stale.json["changed"])).toContain("line.trunk.bore");
  expect(workbench.text()).toContain("3 in");
  expect(workbench.text()).not.toContain("4 in");
  expect((await edit("line.trunk.length", "151 ft")).status).toBe(200);
  // Both tabs come to show the last of it.
  for (const { page } of [first, second]) {
    await page.waitForFunction(() => document.querySelector("button[aria-label=Undo]")?.getAttribute("title")?.includes("line.trunk.length"));
  }
  await first.context.close();
  await second.context.close();
});

test("the workbench says so when the server is gone, and follows it when it is back", async () => {
  const workbench = await started("site-s");
  const { page, context } = await open(shared.browser, workbench);
  await settled(page);
  await workbench.stop();
  const gone = page.locator("text=The server does not answer");
  await gone.waitFor({ timeout: 15_000 });
  const again = await serveFile(workbench.file, new URL(workbench.origin).port);
  onTestFinished(async () => void (await again.stop()));
  await gone.waitFor({ state: "detached", timeout: 15_000 });
  await context.close();
});

test("the page's script is under 150 kB compressed", () => {
  const folder = join(programFolder, "web");
  const index = readFileSync(join(folder, "index.html"), "utf8");
  const scripts = [...index.matchAll(/(?:src|href)="([^"]+\.js)"/g)].map((m) => readFileSync(join(folder, m[1] ?? "")));
  expect(scripts.length).toBeGreaterThan(0);
  const compressed = scripts.map((s) => gzipSync(s).length).reduce((a, b) => a + b, 0);
  console.log(`script: ${(compressed / 1e3).toFixed(1)} kB compressed`);
  expect(compressed).toBeLessThan(150_000);
});
