import type { Browser } from "playwright-core";
import { afterAll, beforeAll, onTestFinished } from "vitest";
import { end, launch, serve, type Workbench } from "./workbench.ts";

/** A browser for the tests of a file. */
export function withBrowser() {
  const shared = {} as { browser: Browser };
  beforeAll(async () => {
    shared.browser = await launch();
  });
  afterAll(() => shared.browser.close());
  return shared;
}

/** The program on a copy of a station, for the tests of a file. */
export function withWorkbench(site: string) {
  const shared = {} as { workbench: Workbench };
  beforeAll(async () => {
    shared.workbench = await serve(site);
  });
  afterAll(() => end(shared.workbench));
  return shared;
}

/** The program on a copy of a station, or on a text, until the test ends. */
export async function started(site: string, text?: string) {
  const workbench = await serve(site, text);
  onTestFinished(() => end(workbench));
  return workbench;
}
