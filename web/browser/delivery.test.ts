import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { started, withBrowser, withWorkbench } from "./shared.ts";
import { commandJson, open, settled } from "./workbench.ts";

const shared = withBrowser();
const station = withWorkbench("marle-cross");
const query = "?sheet=tank&view=delivery";

/** SI in one of the unit shown; of the conventional inch of water. */
const sizes = { gpm: 6.30901964e-5, gal: 3.785411784e-3, inH2O: 249.0889 };

interface Run {
  name: string;
  time_s: number;
  drops: { left_in_truck_m3: number }[];
  tanks: { tank: string; capacity_m3: number; volume_after_m3: number }[];
  ullages: { vented_m3: number; to_truck_m3: number }[];
  chart: {
    time_s: number[];
    ullage_pressure_gauge_pa: Record<string, number[]>;
    return_riser_pressure_gauge_pa: Record<string, number[]>;
    vapor_hose_pressure_gauge_pa: Record<string, number[]>;
    truck_pressure_gauge_pa: number[] | null;
  };
  events: { time_s: number; what: string; rate_m3_per_s: number; ullage_pressure_gauge_pa: number | null }[];
}
const runsOf = async () => {
  const told = (await commandJson("delivery", station.workbench.file)) as { result: { runs: Run[] } };
  return told.result.runs;
};

/** What the view shows at its playhead. */
const shown = (page: Page) =>
  page.evaluate(() => {
    const text = (e: Element | null | undefined) => (e?.textContent ?? "").replaceAll("\u00A0", " ").trim();
    const rows = [...document.querySelectorAll(".cmp tbody tr")].map((tr): [string, string[]] => [
      text(tr.querySelector("th")),
      [...tr.querySelectorAll("td")].map(text),
    ]);
    return {
      clock: text(document.querySelector(".clock")),
      table: text(document.querySelector(".cmp thead th")),
      said: document.querySelector("input[type=range]")?.getAttribute("aria-valuetext")?.replaceAll("\u00A0", " "),
      rows: Object.fromEntries(rows),
      scenes: [...document.querySelectorAll(".scene-words")].map(text),
      cells: Object.fromEntries(
        [...document.querySelectorAll(".vcell")].map((c) => [
          text(c.querySelector("b")),
          [...c.querySelectorAll("p > span:last-child")].map(text),
        ]),
      ),
      heads: new Set(
        [...document.querySelectorAll(".courses .playhead")].map((e) => e.getAttribute("d")?.split(" ")[0]),
      ).size,
    };
  });
type Shown = Awaited<ReturnType<typeof shown>>;

const numberOf = (text: string | undefined) => Number((text ?? "").replaceAll(" ", "").replace("−", "-"));
const valueOf = (now: Shown, row: string, side: number) => numberOf(now.rows[row]?.[side]);

/** What the command says of the last event at a time, held against the table. */
function expectEvent(now: Shown, run: Run, at: number, side: number) {
  const event = run.events.filter((e) => e.time_s === at).at(-1);
  if (!event) throw new Error("no event");
  expect(valueOf(now, "Drop rate, gpm", side)).toBeCloseTo(event.rate_m3_per_s / sizes.gpm, -0.31);
  if (event.ullage_pressure_gauge_pa !== null)
    expect(
      Math.abs(valueOf(now, "Vapor space, inH2O", side) - event.ullage_pressure_gauge_pa / sizes.inH2O),
    ).toBeLessThan(0.051);
}

test("at every event scene, clock, band and table say what the command line says", async () => {
  const runs = await runsOf();
  const [a, b] = [runs[0], runs.find((r) => r.name === "vent alone")];
  if (!a || !b) throw new Error("the command has no such runs");
  const { page, seen, context } = await open(shared.browser, station.workbench, { query });
  await settled(page);
  expect(await page.$$eval(".scene select", (all) => all.map((s) => (s as HTMLSelectElement).value))).toEqual([
    a.name,
    b.name,
  ]);
  const times = [...new Set([...a.events, ...b.events].map((e) => e.time_s))].sort((x, y) => x - y);
  await page.focus("main");
  for (const t of times) {
    if (t > 0) await page.keyboard.press(".");
    await page.waitForTimeout(60);
    const now = await shown(page);
    expect(now.table).toBe(`At ${now.clock}`);
    expect(now.said).toBe(now.clock);
    expect(now.heads).toBe(1);
    for (const [side, run] of [a, b].entries()) {
      if (run.events.some((e) => e.time_s === t)) expectEvent(now, run, t, side);
      const rate = now.rows["Drop rate, gpm"]?.[side] ?? "";
      if (numberOf(rate) > 0) expect(now.scenes[side]).toContain(`at ${rate} gpm`);
      expect(now.cells["Tank vapor space"]?.[side]).toBe(now.rows["Vapor space, inH2O"]?.[side]);
    }
  }
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});

/** What the command's chart has of a course at a time that it tells; the last of it where a jump has two. */
function charted(run: Run, course: number[] | undefined, t: number): number | null {
  const at = run.chart.time_s.lastIndexOf(t);
  return course && at >= 0 ? (course[at] ?? null) : null;
}

test("the vapor band has seven cells, with the numbers of the command and words where there is none", async () => {
  const runs = await runsOf();
  const [a, b] = [runs[0], runs.find((r) => r.name === "vent alone")];
  if (!a || !b) throw new Error("the command has no such runs");
  const { page, seen, context } = await open(shared.browser, station.workbench, { query });
  await settled(page);
  const of = "T1, T2, T3";
  const near = (cell: string | undefined, pascal: number | null) =>
    expect(Math.abs(numberOf(cell) - (pascal ?? NaN) / sizes.inH2O)).toBeLessThan(0.051);
  await page.focus("main");
  // The compartment is empty: the hose is on, and vapor flows.
  const t = a.events.find((e) => e.what === "the compartment is empty")?.time_s ?? NaN;
  for (const time of [...new Set([...a.events, ...b.events].map((e) => e.time_s))].sort((x, y) => x - y)) {
    if (time > 0 && time <= t) await page.keyboard.press(".");
  }
  await page.waitForTimeout(60);
  const { cells } = await shown(page);
  const names = ["Vehicle", "Nozzle", "Tank vapor space", "Vent", "Return riser", "Vapor hose", "Tanker"];
  expect(Object.keys(cells)).toEqual(names);
  for (const name of names) expect(cells[name]).toHaveLength(2);
  near(cells["Tank vapor space"]?.[0], charted(a, a.chart.ullage_pressure_gauge_pa[of], t));
  near(cells["Return riser"]?.[0], charted(a, a.chart.return_riser_pressure_gauge_pa[of], t));
  near(cells["Vapor hose"]?.[0], charted(a, a.chart.vapor_hose_pressure_gauge_pa[of], t));
  near(cells["Tanker"]?.[0], charted(a, a.chart.truck_pressure_gauge_pa ?? undefined, t));
  expect(numberOf(cells["Return riser"]?.[0])).toBeGreaterThan(numberOf(cells["Vapor hose"]?.[0]));
  expect(cells["Vehicle"]).toEqual(["off", "off"]);
  expect(cells["Nozzle"]).toEqual(["0.0", "0.0"]);
  expect(cells["Vent"]?.[1]).toMatch(/^open, /);
  expect(cells["Return riser"]?.[1]).toBe(cells["Tank vapor space"]?.[1]);
  expect(cells["Vapor hose"]?.[1]).toBe("off");
  expect(cells["Tanker"]?.[1]).toBe("open to the air");
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});

test("play walks to the end, and the end is that of the command line", async () => {
  const runs = await runsOf();
  const [a, b] = [runs[0], runs.find((r) => r.name === "vent alone")];
  if (!a || !b) throw new Error("the command has no such runs");
  const { page, seen, context } = await open(shared.browser, station.workbench, {
    query,
    reducedMotion: "no-preference",
  });
  await settled(page);
  expect(await page.textContent(".caution")).toMatch(
    /^Never open a stalled drop under pressure\. Close the compartment valve/,
  );
  await page.click('[aria-label="Speed"] >> text=10×');
  await page.focus("main");
  await page.keyboard.press(" ");
  await page.waitForFunction(() => document.querySelector(".play-btn")?.textContent === "Play", undefined, {
    timeout: 15_000,
  });
  const now = await shown(page);
  const end = Math.round(Math.max(a.time_s, b.time_s));
  expect(now.clock).toBe(`${Math.floor(end / 60)} min ${String(end % 60).padStart(2, "0")} s`);
  for (const [side, run] of [a, b].entries()) {
    for (const { tank, capacity_m3, volume_after_m3 } of run.tanks)
      expect(Math.abs(valueOf(now, `${tank} full, %`, side) - (100 * volume_after_m3) / capacity_m3)).toBeLessThan(
        0.051,
      );
    expect(valueOf(now, "Left in the truck, gal", side)).toBe(0);
    const gallons = (of: (u: Run["ullages"][number]) => number) =>
      run.ullages.reduce((sum, u) => sum + of(u), 0) / sizes.gal;
    // As many digits as are shown.
    const tolerance = (value: number) => (value < 10 ? 0.0051 : value < 100 ? 0.051 : 0.51);
    const [out, back] = [gallons((u) => u.vented_m3), gallons((u) => u.to_truck_m3)];
    expect(Math.abs(valueOf(now, "Out of the vent by the end, gal", side) - out)).toBeLessThan(tolerance(out));
    expect(Math.abs(valueOf(now, "Back to the truck by the end, gal", side) - back)).toBeLessThan(tolerance(back));
    expect(now.scenes[side]).toContain("All is in the tanks");
  }
  const last = a.time_s > b.time_s ? 0 : 1;
  expect(now.rows["Vapor out of the vent, gal"]?.[last]).toBe(now.rows["Out of the vent by the end, gal"]?.[last]);
  expect(now.rows["Vapor out of the vent, gal"]?.[1 - last]).toBe("ended");
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});

test("a drop with every vent blocked says that it stands under pressure, and can be asked for", async () => {
  const { page, seen, context } = await open(shared.browser, station.workbench, { query });
  await settled(page);
  await page.selectOption('[aria-label="Choice B"]', "every vent blocked, no vapor return");
  await expect.poll(() => page.textContent(".dlv .note.bad")).toContain("shut in under pressure");
  await page.click("summary:has-text('Leave out')");
  await page.check("text=Vapor return");
  await settled(page);
  await expect
    .poll(() => page.$eval('[aria-label="Choice A"]', (s) => (s as HTMLSelectElement).value))
    .toBe("without vapor return");
  await page.fill('label:has-text("Given rate") input', "12 ft");
  await page.keyboard.press("Enter");
  await expect.poll(() => page.textContent(".dlv .note")).toMatch(/^Rate is a flow, .* What you see is from before\.$/);
  expect(await page.locator(".dropscene svg").count()).toBe(2);
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});

test("of one tank alone, and on a phone without entry", async () => {
  const { page, context } = await open(shared.browser, station.workbench, { query });
  await settled(page);
  await page.selectOption('label:has-text("Into") select', "T3");
  await expect.poll(() => page.textContent(".head p")).toMatch(/^2.500.gal premium into T3/);
  expect((await shown(page)).rows["Full, %"]).toHaveLength(2);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.waitForSelector(".dlv .setup-words:not(.on-paper)");
  expect(await page.locator(".dlv .setup, .dlv .scene select").count()).toBe(0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  await context.close();
});

test("a station without a delivery says what to enter", async () => {
  const workbench = await started("thornby");
  const { page, seen, context } = await open(shared.browser, workbench, { query });
  await page.waitForSelector("text=No delivery is entered");
  expect(await page.textContent(".caution")).toContain("Never open a stalled drop under pressure.");
  await page.click("text=Add a delivery on the Site sheet");
  await page.waitForSelector("h1:text('Site')");
  expect(seen).toEqual({ faults: [], foreign: [] });
  await context.close();
});
