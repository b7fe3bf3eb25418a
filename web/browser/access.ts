import axe from "axe-core";
import type { Page } from "playwright-core";

/** Things that can be pressed and are smaller than 24 by 24 px (WCAG 2.2, 2.5.8), but for links in running text and
 * what lies in a drawing, whose parts can be chosen by other ways. */
export const small = () =>
  [...document.querySelectorAll<HTMLElement>("button, a[href], input, select, summary, [role=button], [role=radio]")]
    .filter((e) => !e.closest("svg, p, li, .toast, [hidden]") && !e.matches(".skip, [type=hidden]"))
    .map((e) => {
      const label = e.matches("input[type=checkbox], input[type=radio]") ? (e.closest("label") ?? e) : e;
      return { name: `${e.tagName} ${e.className} ${(e.textContent ?? "").slice(0, 30)}`, box: label.getBoundingClientRect() };
    })
    .filter(({ box }) => box.width > 0 && (box.width < 23.9 || box.height < 23.9))
    .map(({ name, box }) => `${name}: ${box.width.toFixed(1)} x ${box.height.toFixed(1)}`);

/** Violations of WCAG 2.2 A and AA that axe finds. The preview of a report is a page of its own, which `./test report`
 * looks at; it runs no script. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof import("axe-core") };
    const runOnly = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    const found = await axe.run(document, { runOnly, iframes: false, resultTypes: ["violations"] });
    return found.violations.map((v) => `${v.id}: ${v.nodes[0]?.html.slice(0, 160)} ${v.nodes[0]?.failureSummary}`);
  });
}
