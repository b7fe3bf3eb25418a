import { spawn, type ChildProcess } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium, type Browser, type BrowserContextOptions, type Page } from "playwright-core";

/** The folder of the project. */
export const project = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
/** Where pictures go. */
export const pictures = join(project, "out/test/workbench");
export const program = process.env["FORECOURSE_PROGRAM"] ?? join(project, "build/release/forecourse");
/** Where the page lies that it serves, in `web`. */
export const programFolder = dirname(program);
const browserPath = process.env["FORECOURSE_BROWSER"] ?? "/usr/bin/chromium";

/** The program serving a copy of a site in a folder of its own. */
export interface Workbench {
  address: string;
  origin: string;
  key: string;
  folder: string;
  file: string;
  process: ChildProcess;
  text(): string;
  stop(signal?: NodeJS.Signals): Promise<number | null>;
}

/** Starts the program on a file; at a port of its own, unless one is named. */
export async function serveFile(file: string, port = "0"): Promise<Workbench> {
  const running = spawn(program, ["serve", file, "--port", port], { stdio: ["ignore", "pipe", "inherit"] });
  const ended = new Promise<number | null>((done) => running.once("exit", done));
  const address = await new Promise<string>((done, failed) => {
    let told = "";
    running.stdout?.on("data", (data: Buffer) => {
      told += data.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/#key=[0-9a-f]+/.exec(told);
      if (found) done(found[0]);
    });
    void ended.then((code) => failed(new Error(`the program ended with ${code}: ${told}`)));
  });
  const url = new URL(address);
  return {
    address,
    origin: url.origin,
    key: url.hash.replace("#key=", ""),
    folder: dirname(file),
    file,
    process: running,
    text: () => readFileSync(file, "utf8"),
    stop: async (signal = "SIGTERM") => {
      running.kill(signal);
      return ended;
    },
  };
}

/** A copy of a station of sites/, or a text, in a fresh folder. */
export function copyOf(site: string, text?: string): string {
  const folder = mkdtempSync(join(tmpdir(), "forecourse-"));
  const file = join(folder, `${site}.toml`);
  if (text === undefined) copyFileSync(join(project, "sites", `${site}.toml`), file);
  else writeFileSync(file, text);
  return file;
}

export const serve = (site: string, text?: string) => serveFile(copyOf(site, text));

/** Stops the program and removes its folder. */
export async function end(workbench: Workbench) {
  await workbench.stop();
  if (workbench.folder.startsWith(tmpdir()) && existsSync(workbench.folder)) rmSync(workbench.folder, { recursive: true });
}

export const launch = (): Promise<Browser> =>
  chromium.launch({ executablePath: browserPath, args: ["--no-sandbox", "--disable-dev-shm-usage", "--font-render-hinting=none"] });

export const sizes = { wide: { width: 1440, height: 900 }, middle: { width: 1024, height: 768 }, phone: { width: 390, height: 844 } };
export const sheets = ["site", "tank", "flow", "incident", "containment", "ledger", "checks", "kit", "reports"] as const;

/** What a page said or asked for that it should not have. */
export interface Seen {
  faults: string[];
  foreign: string[];
}

/** A tab on the workbench, opened with the printed address. */
export async function open(browser: Browser, workbench: Workbench, options: BrowserContextOptions & { query?: string } = {}) {
  const { query = "", ...rest } = options;
  const context = await browser.newContext({ viewport: sizes.wide, ...rest });
  const page = await context.newPage();
  const seen = watch(page, workbench.origin);
  await page.goto(`${workbench.origin}/${query}#key=${workbench.key}`);
  await page.waitForSelector("main h1");
  return { page, seen, context };
}

function watch(page: Page, origin: string): Seen {
  const seen: Seen = { faults: [], foreign: [] };
  page.on("pageerror", (error) => seen.faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") seen.faults.push(message.text());
  });
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !url.startsWith("data:") && !url.startsWith("blob:")) seen.foreign.push(url);
  });
  return seen;
}

/** Until nothing is asked of the server any more and no placeholder is left. */
export async function settled(page: Page) {
  await page.waitForFunction(() => !document.querySelector(".skel, .skel-box, .old"), undefined, { timeout: 30_000 });
  await page.waitForTimeout(150);
}

export async function picture(page: Page, name: string) {
  mkdirSync(pictures, { recursive: true });
  await page.screenshot({ path: join(pictures, `${name}.png`), fullPage: false });
}

/** The answer of the command line to the same question, as JSON. */
export async function commandJson(...words: string[]): Promise<unknown> {
  const running = spawn(program, [...words, "--json"], { stdio: ["ignore", "pipe", "inherit"] });
  let out = "";
  running.stdout.on("data", (data: Buffer) => (out += data.toString()));
  await new Promise((done) => running.once("close", done));
  return JSON.parse(out);
}
