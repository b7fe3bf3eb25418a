import { effect } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { askOnce, useStanding } from "../../state/ask";
import { letterKeys, select, sheet, units, type SheetId } from "../../state/look";
import { page, setLetters, setUnits, type Host } from "../../state/lesson/session";
import type { LessonTold } from "../../state/lesson/told";
import { station } from "../../state/station";
import { later } from "../parts/later";

const Lesson = later(async () => (await import("../lesson/Lesson")).Lesson);

/** The sheet to go back to when the lesson ends. */
let before: SheetId = "site";
effect(() => {
  if (sheet.value !== "lesson") before = sheet.value;
});

const stops = 11;

/** Ends the lesson; the stop where it ended is the chosen one of all sheets. */
function end() {
  const stop = page.peek()?.stop_number ?? 0;
  if (stop >= 1 && stop <= stops) select(stop);
  sheet.value = before;
}

interface Answer {
  document?: { result: LessonTold };
  error?: string;
  hint?: string;
}

/** The lesson of the open station. */
export function LessonSheet() {
  const now = useStanding<Answer>(() => ({ wants: [{ study: "lesson" }] }));
  const name = station.value?.name || station.value?.file || "";
  const host = useMemo<Host>(() => ({ station: name, ask: askOnce, end }), [name]);
  useEffect(() => effect(() => setUnits(units.value)), []);
  useEffect(() => effect(() => setLetters(letterKeys.value)), []);
  const answer = now.answers?.[0];
  const refused = answer?.error ? [answer.error, answer.hint].filter(Boolean).join("; ") : null;
  return <Lesson host={host} lesson={answer?.document?.result ?? null} problem={refused ?? now.error} />;
}
