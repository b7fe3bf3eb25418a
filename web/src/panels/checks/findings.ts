import { partAt } from "../../api/station";
import type { Edit, ErrorAnswer, Part } from "../../api/types";
import {
  decimalsApart,
  decimalsOf,
  figure,
  span,
  valueIn,
  type Quantity,
  type UnitSystem,
} from "../../draw/numbers";
import { quantityOf, withShownUnit, type Finding } from "../parts/finding";
import type { State } from "../parts/status";

interface FindingsDocument {
  document: { findings: Finding[]; cautions: string[] };
}
export type FindingsAnswer = FindingsDocument | ErrorAnswer;

/** The order of the sheet: what is wrong first. */
export const states: readonly State[] = ["falls short", "close", "not determined", "meets", "does not apply"];

/** Findings of one requirement that share state, limit, reason and remedy: one row. */
export interface Group {
  key: string;
  state: State;
  findings: [Finding, ...Finding[]];
}

/** A requirement: its id is its own within a rule set, or a study, alone. */
export const ruleOf = (f: Finding) => [f.set ?? f.study, f.rule].join("|");

const keyOf = (f: Finding) => [ruleOf(f), f.state, f.limit, f.reason, f.change, f.clause].join("|");

export function grouped(findings: readonly Finding[]): Group[] {
  const groups: Group[] = [];
  for (const state of states) {
    for (const finding of findings) {
      if (finding.state !== state) continue;
      const same = groups.find((g) => g.key === keyOf(finding));
      if (same) same.findings.push(finding);
      else groups.push({ key: keyOf(finding), state, findings: [finding] });
    }
  }
  return groups;
}

export const countOf = (findings: readonly Finding[], state: State) => findings.filter((f) => f.state === state).length;

export type Side = "at most" | "at least";
/** On which side of the limit values are good, as the margins say; null where no margin tells. */
export function sideOf(findings: readonly Finding[]): Side | null {
  for (const { limit, value, margin } of findings) {
    if (limit === null || value === null || margin === null || margin === 0) continue;
    const over = value - limit;
    if (Math.abs(Math.abs(margin) - Math.abs(over)) > 1e-6 * Math.max(Math.abs(margin), Math.abs(limit) * 1e-9))
      continue;
    return over > 0 === margin > 0 ? "at least" : "at most";
  }
  return null;
}

const valuesOf = (group: Group) => group.findings.map((f) => f.value).filter((v) => v !== null);

export interface Shown {
  value: string;
  limit: string;
  margin: string;
  decimals: number;
}

/** Decimals that tell every value of a row apart from the limit. */
function decimalsIn(group: Group, units: UnitSystem): number {
  const { limit } = group.findings[0];
  const quantity = quantityOf(group.findings[0]);
  const apart = limit === null ? [] : valuesOf(group).map((v) => decimalsApart(quantity, units, v, limit));
  return Math.max(decimalsOf(quantity, units), ...apart);
}

/** Value, limit and least margin of a row in words, told apart where they differ. */
export function shownOf(group: Group, side: Side | null, units: UnitSystem): Shown {
  const first = group.findings[0];
  const quantity = quantityOf(first);
  const values = valuesOf(group);
  const decimals = decimalsIn(group, units);
  const named = (text: string) => withShownUnit(text, first, units);
  const margins = group.findings.map((f) => f.margin).filter((m) => m !== null);
  return {
    value: values.length
      ? named(span(quantity, units, Math.min(...values), Math.max(...values), decimals))
      : "no value",
    limit: first.limit === null ? "" : `${side ?? "limit"} ${named(figure(quantity, units, first.limit, decimals))}`,
    margin: margins.length ? named(figure(difference(quantity), units, Math.min(...margins), decimals)) : "",
    decimals,
  };
}
/** A difference of temperatures has no zero of its own. */
const difference = (quantity: Quantity): Quantity => (quantity === "temperature" ? "temperature difference" : quantity);

/** Shares of the width of a bar that starts at nothing: value, limit, and the range of a row. */
interface Bar {
  from: number;
  value: number;
  limit: number;
  side: Side | null;
}
export function barOf(group: Group, side: Side | null, units: UnitSystem): Bar | null {
  const { limit } = group.findings[0];
  const quantity = quantityOf(group.findings[0]);
  const values = valuesOf(group);
  if (limit === null || !values.length) return null;
  const shown = (si: number) => valueIn(quantity, units, si);
  const [low, high, at] = [shown(Math.min(...values)), shown(Math.max(...values)), shown(limit)];
  if (low < 0 || at <= 0) return null;
  const end = Math.max(high * 1.1, at * 1.5);
  return { from: low / end, value: high / end, limit: at / end, side };
}

/** "D1.a, D1.b and 22 more" */
export function subjectsOf(group: Group, most = 4): string {
  const names = group.findings.map((f) => f.subject);
  if (names.length <= most + 1) return names.join(", ");
  return `${names.slice(0, most).join(", ")} and ${names.length - most} more`;
}

interface Source {
  clause: string;
  sure: string;
  short: string;
}
const askedOnFlow: Source = {
  clause: "Your own target",
  sure: "It is not a rule: it is the flow to keep that was asked for on the Flow sheet.",
  short: "asked for on Flow",
};
const entered: Source = {
  clause: "Your own target",
  sure: "It is not a rule: what is wanted stands in the site file.",
  short: "wanted in the site file",
};

const wished = (set: string): Source => ({
  clause: set,
  sure: "It is no code: a wish of this rule set.",
  short: "a wish",
});

/** Where a requirement comes from, and how far its text is known. */
export function sourceOf(f: Finding): Source {
  if (!f.clause && f.set) return wished(f.set);
  if (!f.clause) return f.rule === "flow-to-keep" ? askedOnFlow : entered;
  if (f.clause === "common practice") {
    return {
      clause: "Common practice",
      sure: "Common practice; no clause is known that asks for it.",
      short: "no clause known",
    };
  }
  const clause = f.clause + (f.edition ? `, ${f.edition}` : "");
  return f.clause_verified
    ? { clause, sure: "The text of the clause was seen.", short: "text seen" }
    : { clause, sure: "The text of the clause was not verified: read it before relying on it.", short: "to be verified" };
}

/** The sheet that a finding is computed on, and its view. */
export const seenOn = {
  flow: { sheet: "flow", view: "", name: "Flow" },
  tank: { sheet: "tank", view: "depth", name: "Tank, Depth" },
  delivery: { sheet: "tank", view: "delivery", name: "Tank, Delivery" },
  vents: { sheet: "tank", view: "delivery", name: "Tank, Delivery" },
  vapor: { sheet: "tank", view: "vapor", name: "Tank, Vapor" },
  flotation: { sheet: "tank", view: "flotation", name: "Tank, Flotation" },
  "line-test": { sheet: "ledger", view: "line-tests", name: "Ledger, Line tests" },
  ledger: { sheet: "ledger", view: "month", name: "Ledger, Month" },
  meter: { sheet: "ledger", view: "meters", name: "Ledger, Meters" },
} as const;

/** Where a finding comes from, for the choice of sources. */
export const originOf = (f: Finding) => f.set ?? (f.study ? `${seenOn[f.study].name}, computed` : "");
export const originsOf = (findings: readonly Finding[]) => [...new Set(findings.map(originOf))].filter(Boolean);

const assignment = /\b([a-z_]+) = ("[^"]+")/;

/** What the findings of a row ask to be set, as edits, where they name a key of their part and its value. */
export function editsOf(group: Group, parts: readonly Part[]): Edit[] {
  const edits = group.findings.map((f): Edit | null => {
    const [, key, value] = assignment.exec(f.change ?? "") ?? [];
    const field = partAt(parts, f.path)?.fields.find((one) => one.key === key);
    return field && value ? { path: field.path, value } : null;
  });
  return edits.every((e) => e !== null) ? edits : [];
}
