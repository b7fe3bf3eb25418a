import { describe, expect, test } from "vitest";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { started, withBrowser } from "./shared.ts";
import { open, picture, project, settled, sheets, sizes } from "./workbench.ts";

const shared = withBrowser();

const station = readFileSync(join(project, "sites/hollin-gap.toml"), "utf8");
/** The longest that the engine takes is 60 letters, a hose with its dispenser and product. */
const longId = "L".repeat(25);
/** Names that a page which takes text for markup would act on, or that could break its layout. */
const hostile = {
  image: "<img src=x onerror=alert(1)>",
  script: `"></title><script>alert(2)</script>'q'`,
  svg: "</style></svg><svg onload=alert(3)>",
  template: "&amp;{{x}}${y}",
  backwards: "\u202Eمضخة שלום",
};

/** The station with another name, and with other ids for some of its parts. */
function renamed(name: string, ids: Record<string, string>): string {
  const part = (text: string) => {
    const word = Object.keys(ids).find((w) => text === w || text.startsWith(`${w}-`));
    return word ? ids[word] + text.slice(word.length) : text;
  };
  return station
    .replace(/"([A-Za-z][A-Za-z0-9.-]*)"/g, (_, text: string) => JSON.stringify(text.split(".").map(part).join(".")))
    .replace(/^name = "Hollin Gap[^"]*"/m, `name = ${JSON.stringify(name)}`);
}

/** Ids as the engine takes them, but very long; the name is hostile. */
const taken = renamed(`${hostile.image} ${hostile.script} ${hostile.backwards} ${"N".repeat(120)}`, { D3: longId, regular: "r".repeat(30), T1: "T".repeat(60) });
/** Ids that the engine refuses, and tells of. */
const refused = renamed(hostile.image, {
  regular: hostile.image,
  D1: hostile.script,
  P1: hostile.svg,
  D4: hostile.template,
  T1: hostile.backwards,
  D3: "L".repeat(120),
});

/** A browser tells of every answer that is not 2xx; the engine answers a report of a file with errors with 422. */
const ofThePage = (faults: string[]) => faults.filter((f) => !/status of 422/.test(f));

describe.each([
  ["taken", taken],
  ["refused", refused],
])("hostile names, %s", (word, text) => {
  test("stand as text on every sheet, and nothing of them is run", async () => {
    const workbench = await started("hostile", text);
    for (const [size, viewport] of Object.entries({ wide: sizes.wide, phone: sizes.phone })) {
      const { page, seen, context } = await open(shared.browser, workbench, { viewport });
      const dialogs: string[] = [];
      page.on("dialog", (d) => (dialogs.push(d.message()), void d.dismiss()));
      for (const sheet of sheets) {
        await page.click(`nav a[href="?sheet=${sheet}"]`);
        await settled(page);
        await picture(page, `hostile-${word}-${sheet}-${size}`);
        const found = await page.evaluate(() => ({
          made: document.querySelectorAll("img, script:not([src]), [onerror], [onload]").length,
          over: document.documentElement.scrollWidth - innerWidth,
          sheetOver: (document.querySelector(".main")?.scrollWidth ?? 0) - (document.querySelector(".main")?.clientWidth ?? 0),
        }));
        // The plan and section of the Site sheet scroll in boxes of their own.
        expect({ sheet, size, ...found }).toEqual({ sheet, size, made: 0, over: 0, sheetOver: 0 });
      }
      expect(await page.textContent(".who")).toContain(hostile.image);
      expect(dialogs).toEqual([]);
      expect(ofThePage(seen.faults)).toEqual([]);
      expect(seen.foreign).toEqual([]);
      await context.close();
    }
  });
});
