import type { Units } from "../../api/types";
import type { Choices, Paper, Section, Wanted } from "./documents";

/** What is kept of a station's report between visits: sections left out, so that a new one is in it, and what was typed
 * into the title cells. */
export interface Kept {
  out: string[];
  cells: Record<string, string>;
  paper: Paper | null;
}
export const nothingKept: Kept = { out: [], cells: {}, paper: null };

/** Read from storage; whatever is not of its shape counts as nothing. */
export function readKept(text: string | null): Kept {
  try {
    const read = JSON.parse(text ?? "{}") as Partial<Kept>;
    const cells = Object.entries(read.cells ?? {}).filter((c): c is [string, string] => typeof c[1] === "string");
    return {
      out: Array.isArray(read.out) ? read.out.filter((id) => typeof id === "string") : [],
      cells: Object.fromEntries(cells),
      paper: read.paper === "a4" || read.paper === "letter" ? read.paper : null,
    };
  } catch {
    return nothingKept;
  }
}

export const usualPaper = (units: Units): Paper => (units === "us" ? "letter" : "a4");

/** The sections that are in the report, in its order. */
export const chosen = (choices: Choices, kept: Kept): Section[] =>
  choices.sections.filter((s) => s.has_content && !kept.out.includes(s.id));

/** With a section in the report, or out of it. */
export function withSection(kept: Kept, id: string, inside: boolean): Kept {
  const rest = kept.out.filter((o) => o !== id);
  return { ...kept, out: inside ? rest : [...rest, id] };
}

export const withCell = (kept: Kept, name: string, text: string): Kept => ({
  ...kept,
  cells: { ...kept.cells, [name]: text },
});

/** What is asked of the server; null where no section is in the report. Cells without a text are left to it. */
export function wanted(choices: Choices, kept: Kept, units: Units): Wanted | null {
  const sections = chosen(choices, kept).map((s) => s.id);
  if (sections.length === 0) return null;
  const known = new Set(choices.cells.map((c) => c.name));
  const cells = Object.entries(kept.cells).filter(([name, text]) => known.has(name) && text.trim() !== "");
  return { sections, cells: Object.fromEntries(cells), units, paper: kept.paper ?? usualPaper(units) };
}

/** "hollin-gap-report.pdf" */
export const fileName = (site: string, ending: string) => `${site.replace(/\.toml$/, "")}-report.${ending}`;
