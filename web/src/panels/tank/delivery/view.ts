/** What the view shows: two runs of one delivery, one beside the other. */
import { evenClockOf } from "../../../draw/clock";
import { eventTimes } from "../../../draw/curve_trace";
import { capital } from "../../../draw/words";
import type { PlaySide, PlayView } from "../../replay/view";
import type { DeliveryDocument, DeliveryRun } from "./documents";
import { traceOf, ventedOf, type DropTrace } from "./trace";

export interface DropSide extends PlaySide {
  run: DeliveryRun;
  trace: DropTrace;
}

export interface DropView extends PlayView<DropSide> {
  document: DeliveryDocument;
}

/** Stands for no second choice. */
export const noChoice = "none";

/** The run that shows most beside the first: the one that lets most vapor out, else the next. */
export function tellingRun(runs: readonly DeliveryRun[], first: DeliveryRun): DeliveryRun | undefined {
  const others = runs.filter((r) => r !== first && r.chart);
  const out = (run: DeliveryRun) => ventedOf(run) ?? 0;
  const most = [...others].sort((a, b) => out(b) - out(a))[0];
  return most && out(most) > out(first) ? most : others[0];
}

const side = (letter: "A" | "B", run: DeliveryRun): DropSide => ({
  letter,
  words: capital(run.name),
  run,
  trace: traceOf(run),
});

/** `a`, `b`: names of runs; empty or unknown: the one asked for, and the one that tells most. */
export function viewOf(document: DeliveryDocument, a: string, b: string): DropView | null {
  const runs = document.result.runs.filter((r) => r.chart);
  const first = runs.find((r) => r.name === a) ?? runs[0];
  if (!first) return null;
  const second = b === noChoice ? undefined : (runs.find((r) => r.name === b) ?? tellingRun(runs, first));
  const sides = { a: side("A", first), b: second ? side("B", second) : null };
  const traces = sides.b ? [sides.a.trace, sides.b.trace] : [sides.a.trace];
  return {
    document,
    ...sides,
    clock: evenClockOf(Math.max(...traces.map((t) => t.end))),
    marks: eventTimes(traces),
  };
}
