import { effect, signal } from "@preact/signals";
import { api, Refused } from "../../api/client";
import { keepForStation } from "../../state/kept";
import type { ErrorAnswer } from "../../api/types";
import { units } from "../../state/look";
import { alive, station } from "../../state/station";
import { nothingKept, readKept, wanted, type Kept } from "./choice";
import type { Choices } from "./documents";

/** Why a document was not made. */
export type Problem = ErrorAnswer;

export const kept = signal<Kept>(nothingKept);
/** What can be chosen; null until the server has said. */
export const choices = signal<Choices | null>(null);
/** The page as it goes on paper; null until it is there. */
export const page = signal<string | null>(null);
/** The page shown is older than what is chosen. */
export const old = signal(false);
export const problem = signal<Problem | null>(null);

/** What went wrong, in words. */
export function told(error: unknown): Problem {
  if (error instanceof Refused) return { error: error.message, hint: error.hint };
  alive.value = false;
  return { error: "The server does not answer", hint: "" };
}

/** Kept in this browser. */
keepForStation("report", localStorage, () => kept.value, (text) => {
  kept.value = readKept(text);
  choices.value = null;
  page.value = null;
});

/** Asks for the choices with each revision of the station, and for the page with each change of what it is made of. A
 * newer question ends an older one. Returns what ends it. */
export function followReport(): () => void {
  let asking: AbortController | undefined;
  let making: AbortController | undefined;
  let soon: ReturnType<typeof setTimeout> | undefined;
  const endChoices = effect(() => {
    if (station.value?.revision === undefined) return;
    asking?.abort();
    const mine = (asking = new AbortController());
    old.value = true;
    api.reportChoices<Choices>(mine.signal).then(
      (got) => {
        problem.value = null;
        choices.value = got;
      },
      (error: unknown) => {
        if (!mine.signal.aborted) problem.value = told(error);
      },
    );
  });
  const endPage = effect(() => {
    const all = choices.value;
    const ask = all && wanted(all, kept.value, units.value);
    making?.abort();
    clearTimeout(soon);
    if (!ask) {
      if (all) page.value = null;
      return;
    }
    old.value = true;
    const mine = (making = new AbortController());
    soon = setTimeout(() => {
      api
        .report({ ...ask, format: "paper" }, mine.signal)
        .then((blob) => blob.text())
        .then(
          (html) => {
            if (mine.signal.aborted) return;
            page.value = html;
            old.value = false;
            problem.value = null;
          },
          (error: unknown) => {
            if (!mine.signal.aborted) problem.value = told(error);
          },
        );
    }, 200);
  });
  return () => {
    endChoices();
    endPage();
    clearTimeout(soon);
    asking?.abort();
    making?.abort();
  };
}
