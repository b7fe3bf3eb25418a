import {
  digits,
  figure,
  shownChange,
  signed,
  unitOf,
  withUnit,
  decimalsOf,
  type Quantity,
  type UnitSystem,
} from "../../../draw/numbers";
import { count } from "../../../draw/words";
import type { CompareRow, FindingChange, WorthStep, WorthTold } from "./documents";

const keys: [suffix: string, quantity: Quantity, gauge: boolean][] = [
  ["_m3_per_s", "flow", false],
  ["_pa", "pressure", false],
  ["_gauge_pa", "pressure", true],
  ["_m_per_s", "velocity", false],
  ["_m", "length", false],
];
const numberAt = (row: CompareRow, key: string) => (typeof row[key] === "number" ? row[key] : null);

interface ComparedRow {
  what: string;
  unit: string;
  a: string;
  b: string;
  change: string;
}

const nameOf = (row: CompareRow, units: UnitSystem) =>
  typeof row["bore_m"] === "number" ? `pipe of ${withUnit("bore", units, row["bore_m"])} bore` : row.topic;

/** A figure in A and in B as shown; the change agrees with what is shown. */
export function comparedRow(row: CompareRow, units: UnitSystem): ComparedRow {
  const what = [nameOf(row, units), row.of ?? row.system].filter((w) => w !== null).join(", ");
  const known = keys.find(([suffix]) => `a${suffix}` in row);
  if (!known) {
    const [a, b] = [numberAt(row, "a_count"), numberAt(row, "b_count")];
    const text = (n: number | null) => (n === null ? "–" : digits(n, 0));
    return { what, unit: "", a: text(a), b: text(b), change: a === null || b === null ? "–" : signed(b - a, 0) };
  }
  const [suffix, quantity, gauge] = known;
  const [a, b] = [numberAt(row, `a${suffix}`), numberAt(row, `b${suffix}`)];
  const decimals = decimalsOf(quantity, units);
  return {
    what,
    unit: unitOf(quantity, units) + (gauge ? " gauge" : ""),
    a: figure(quantity, units, a),
    b: figure(quantity, units, b),
    change: a === null || b === null ? "–" : signed(shownChange(quantity, units, a, b), decimals),
  };
}

/** The figures that differ as they are shown, with the set of open hoses each is of. */
export function differingRows(rows: readonly CompareRow[], units: UnitSystem): (ComparedRow & { open: string })[] {
  return rows
    .filter((r) => r.differs)
    .map((r) => ({ ...comparedRow(r, units), open: r.open ?? "" }))
    .filter((r) => r.a !== r.b);
}

const percent = (share: number) => `${signed(share * 100, 1)}\u00A0%`;
const openCount = (n: number) => `${count(n, "hose")} open`;
const flows = (step: WorthStep, units: UnitSystem) =>
  `${withUnit("flow", units, step.slowest_b_m3_per_s)} instead of ${withUnit("flow", units, step.slowest_a_m3_per_s)}` +
  (step.gain === null ? "" : ` (${percent(step.gain)})`);

/** "B is worth it from 5 hoses open": the answer first, then the numbers. */
export function worthHeadline(worth: WorthTold): string {
  if (worth.worth_it_from !== null) return `B is worth it from ${openCount(worth.worth_it_from)}`;
  if (worth.worse_from !== null) return `B is worse from ${openCount(worth.worse_from)}`;
  if (worth.nothing_below) return "B buys nothing at any number of hoses open";
  if (worth.steps.every((s) => s.verdict === "not determined")) return "Whether B is worth it is not determined";
  return "There is no number of hoses open from which B is worth it";
}

export function worthWords(worth: WorthTold, units: UnitSystem): string[] {
  const from = worth.worth_it_from ?? worth.worse_from;
  const first = worth.steps.find((s) => s.open === from);
  const last = worth.steps.at(-1);
  const out: string[] = [];
  if (first) {
    const all = last && last !== first ? `, and ${flows(last, units)} with all ${last.open} open` : "";
    out.push(`The slowest hose gives ${flows(first, units)}${all}.`);
  }
  if (worth.worth_it_from !== null && worth.worth_it_from > 1 && worth.nothing_below) {
    out.push(
      `Below ${worth.worth_it_from} it buys nothing${worth.limiters_hold_below ? ": limiters hold every open hose in A and in B" : ""}.`,
    );
  }
  out.push(
    `Worth it: at this and at every larger number open the slowest hose gives over ${digits(worth.least_gain * 100, (worth.least_gain * 100) % 1 ? 1 : 0)}\u00A0% more than in A, each time in the worst set of that many.`,
  );
  if (worth.steps.some((s) => s.proof_a === "best found" || s.proof_b === "best found")) {
    out.push("Some of these sets are the worst found, not proved.");
  }
  return out;
}

export const verdictWords = (step: WorthStep) =>
  step.same_flow ? "the same" : step.verdict === "same" ? "no more than the least gain" : step.verdict;

/** Findings that change alike, each change once: "D1.a, D1.b: flow to keep falls short in A, meets in B." */
export function findingChangeWords(changes: readonly FindingChange[]): string[] {
  const alike = new Map<string, string[]>();
  for (const c of changes) {
    const what = `${c.rule.replaceAll("-", " ")} ${c.a ?? "not asked"} in A, ${c.b ?? "not asked"} in B.`;
    alike.set(what, [...(alike.get(what) ?? []), c.subject]);
  }
  return [...alike].map(([what, subjects]) => `${subjects.join(", ")}: ${what}`);
}
