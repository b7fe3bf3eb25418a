import { effect, signal, untracked, type ReadonlySignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { api, Refused } from "../api/client";
import type { Edit, Want } from "../api/types";
import { alive, station } from "./station";

/** What was asked, as it stands. Old answers stay, marked, while new ones are on their way. */
export interface Standing<A> {
  answers: A[] | null;
  /** Answers belong to an older question: 0 fresh, 1 asked again, 2 for over 300 ms. */
  age: 0 | 1 | 2;
  error: string | null;
  /** Time from question to answer, ms. */
  took: number;
  /** Of the saved station that they belong to; null: none yet, or edits were tried on it. */
  revision: number | null;
}

/** How an answer is to be shown: nothing yet, placeholders, as of before, or as it is. */
export type Freshness = "none" | "waiting" | "old" | "fresh";
export function freshness(now: Standing<unknown>): Freshness {
  if (now.answers && (now.error || now.age === 1)) return "old";
  if (now.age === 2 && !now.error) return "waiting";
  return now.answers ? "fresh" : "none";
}

export interface Question {
  /** How often the records have changed, for one that rests on them. */
  after?: number;
  wants: Want[];
  edits?: Edit[];
}

/** Edits tried on the station without saving, by a drag in progress. */
export const preview = signal<Edit[]>([]);

/** Answers to a question that may change; asked anew with each change of the station, the preview or itself. One is on
 * its way at a time; what changes meanwhile is asked next, so that answers never come in the wrong order. */
function standing<A>(question: () => Question | null): { now: ReadonlySignal<Standing<A>>; end: () => void } {
  const now = signal<Standing<A>>({ answers: null, age: 0, error: null, took: 0, revision: null });
  let busy = false;
  let again = false;
  let current: Question | null = null;
  let currentTried = false;

  const run = async () => {
    if (busy) {
      again = true;
      return;
    }
    busy = true;
    do {
      again = false;
      const q = current;
      if (!q) break;
      now.value = { ...now.value, age: now.value.answers ? 1 : 0 };
      const tried = currentTried;
      const late = setTimeout(() => (now.value = { ...now.value, age: 2 }), 300);
      const start = performance.now();
      try {
        const got = await api.ask<A>(q.wants, q.edits ?? []);
        const revision = tried ? null : got.revision;
        now.value = { answers: got.answers, age: 0, error: null, took: performance.now() - start, revision };
      } catch (error) {
        if (!(error instanceof Refused)) alive.value = false;
        const message = error instanceof Error ? error.message : String(error);
        now.value = { ...now.value, error: message, age: now.value.answers ? 2 : 0 };
      }
      clearTimeout(late);
    } while (again);
    busy = false;
  };

  const end = effect(() => {
    const revision = station.value?.revision;
    const tried = preview.value;
    const q = question();
    if (revision === undefined) return;
    currentTried = tried.length > 0;
    current = q && tried.length ? { ...q, edits: [...(q.edits ?? []), ...tried] } : q;
    untracked(() => void run());
  });
  return { now, end };
}

/** The same for a panel: ends with it. `question` may read signals; `key` changes when other things it reads do. */
export function useStanding<A>(question: () => Question | null, key: unknown = null): Standing<A> {
  const asked = useMemo(() => standing<A>(question), [key]);
  useEffect(() => asked.end, [asked]);
  return asked.now.value;
}

/** What the program refuses of one question of several. */
interface RefusedOne {
  error?: string;
  hint?: string;
  document?: { result: unknown };
}

/** Asks the open station once; gives the result of the document, or fails with words for the reader. */
export async function askOnce<A>(want: object): Promise<A> {
  const { answers } = await api.ask<RefusedOne>([want as Want]);
  const { document, error = "no answer", hint } = answers[0] ?? {};
  if (!document) throw new Error(hint ? `${error}; ${hint}` : error);
  return document.result as A;
}
