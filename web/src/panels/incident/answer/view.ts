import { clockOf } from "../../../draw/clock";
import { eventTimes, traceOf, type Trace } from "../../../draw/curve_trace";
import { capital } from "../../../draw/words";
import type { PlaySide, PlayView } from "../../replay/view";
import type { Choice } from "./choice";
import type { IncidentDocument, IncidentRun } from "./documents";

/** One of the two choices, with all that is known of it. */
export interface Side extends PlaySide {
  run: IncidentRun;
  trace: Trace;
  document: IncidentDocument;
}

/** What the sheet shows. */
export interface View extends PlayView<Side> {
  document: IncidentDocument;
}

const differs = (a: IncidentRun, b: IncidentRun) =>
  Math.abs(a.escaped_m3 - b.escaped_m3) + Math.abs(a.to_environment_m3 - b.to_environment_m3) >
  1e-9 * Math.max(a.escaped_m3, b.escaped_m3, 1e-9);

/** Whether any run ends otherwise than the first. */
export const anyDiffers = ([first, ...rest]: readonly IncidentRun[]) => rest.some((r) => first && differs(first, r));

/** The run that shows most beside the first: the first that lacks one barrier more and loses clearly more, else the one
 * that loses most of those that end otherwise; none, if all end the same. */
export function tellingRun(runs: readonly IncidentRun[]): IncidentRun | undefined {
  const [first, ...rest] = runs;
  if (!first) return undefined;
  const one = rest.find((r) => r.missing.length === first.missing.length + 1 && r.escaped_m3 > 1.2 * first.escaped_m3);
  const others = rest.filter((r) => differs(first, r));
  return one ?? others.sort((a, b) => b.escaped_m3 - a.escaped_m3)[0];
}

const runNamed = (document: IncidentDocument, name: string) => document.result.runs.find((r) => r.name === name);

export const barrierWords = (barrier: string) => barrier.replaceAll("-", " ");

function choiceWords(choice: Choice): string {
  if (choice.is === "run") return capital(choice.name);
  if (choice.is === "dead") {
    return `${capital(barrierWords(choice.barrier))} does not act${choice.time ? ` for ${choice.time}` : ""}`;
  }
  return `${choice.path} = ${choice.value}`;
}

function side(letter: "A" | "B", document: IncidentDocument, run: IncidentRun, words: string): Side {
  return { letter, document, run, words, trace: traceOf(run, document.result.fire?.link_parts_at_s ?? null) };
}

function sideB(document: IncidentDocument, second: IncidentDocument | null, choice: Choice | null, a: IncidentRun) {
  if (choice && choice.is !== "run") {
    const run = second && (runNamed(second, a.name) ?? second.result.runs[0]);
    return second && run ? side("B", second, run, choiceWords(choice)) : null;
  }
  const run = (choice && runNamed(document, choice.name)) ?? tellingRun(document.result.runs);
  return run ? side("B", document, run, capital(run.name)) : null;
}

/** What two documents and two choices show; null: the document has no run. */
export function viewOf(
  document: IncidentDocument,
  second: IncidentDocument | null,
  a: Choice | null,
  b: Choice | null,
  two: boolean,
): View | null {
  const run = (a?.is === "run" && runNamed(document, a.name)) || document.result.runs[0];
  if (!run) return null;
  const first = side("A", document, run, capital(run.name));
  const other = two ? sideB(document, second, b, run) : null;
  const traces = other ? [first.trace, other.trace] : [first.trace];
  const clock = clockOf(Math.max(...traces.map((t) => t.end)));
  return { document, a: first, b: other, clock, marks: eventTimes(traces) };
}
