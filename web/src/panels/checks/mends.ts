import type { Edit, ErrorAnswer } from "../../api/types";
import type { Finding } from "../parts/finding";
import type { State } from "../parts/status";
import type { Group } from "./findings";

interface MendEdit {
  path: string;
  before: string | null;
  value: string;
}

export interface MendEffect {
  subject: string;
  requirement: string;
  /** Null: it was not asked before, or is no longer. */
  before: State | null;
  after: State | null;
}

interface MendTry {
  words: string;
  edit: MendEdit;
  mends: boolean;
  /** Done at the station before it is entered. */
  work: boolean;
  reason: string | null;
}

/** The smallest change that mends one finding, as the program found it. */
export interface Mend {
  study: Finding["study"];
  set: string | null;
  rule: string;
  subject: string;
  way: "change" | "work" | "duty" | "replace" | "retest" | "none";
  words: string | null;
  /** Why no edit is offered. */
  reason: string | null;
  edits: MendEdit[];
  after: State | null;
  effects: MendEffect[];
  least_flow_before_m3_per_s: number | null;
  least_flow_after_m3_per_s: number | null;
  tried: MendTry[];
}

interface MendsDocument {
  document: { cautions: string[]; result: { mends: Mend[] } };
}
export type MendsAnswer = MendsDocument | ErrorAnswer;

/** The mends of the findings of a row, in their order. */
export const mendsOf = (group: Group, mends: readonly Mend[]): Mend[] =>
  mends.filter((mend) =>
    group.findings.some(
      (f) =>
        f.rule === mend.rule &&
        f.subject === mend.subject &&
        (f.set ?? null) === mend.set &&
        (f.study ?? null) === (mend.study ?? null),
    ),
  );

/** What is to be set for all parts of a row, as one step; each value once. */
export function editsOfMends(mends: readonly Mend[]): Edit[] {
  const values = new Map(mends.flatMap((mend) => mend.edits).map((edit) => [edit.path, edit.value]));
  return [...values].map(([path, value]) => ({ path, value }));
}

/** Edits to try, and those that record work once it is done: one step each, at the first mend of its kind. */
export function stepsOf(mends: readonly Mend[]): Map<Mend, Edit[]> {
  const steps = new Map<Mend, Edit[]>();
  for (const work of [false, true]) {
    const kind = mends.filter((mend) => mend.edits.length > 0 && (mend.way === "work") === work);
    if (kind[0]) steps.set(kind[0], editsOfMends(kind));
  }
  return steps;
}

/** Mends that say the same of several parts, with the parts. */
export function likewise(mends: readonly Mend[]): { mend: Mend; subjects: string[] }[] {
  const out: { key: string; mend: Mend; subjects: string[] }[] = [];
  for (const mend of mends) {
    const edit = mend.edits[0];
    const key = edit ? [mend.way === "work", edit.before, edit.value].join("|") : [mend.words, mend.reason].join("|");
    const same = out.find((one) => one.key === key);
    if (same) same.subjects.push(mend.subject);
    else out.push({ key, mend, subjects: [mend.subject] });
  }
  return out;
}

/** Other values that mend a finding too, by a larger change. */
export const otherWays = (mend: Mend): MendTry[] =>
  mend.tried.filter((one) => one.mends && one.edit.path !== mend.edits[0]?.path);

/** "T1: a vent ends at least 12 ft above the ground" */
export const effectWords = (effect: MendEffect) => `${effect.subject}: ${effect.requirement}`;
