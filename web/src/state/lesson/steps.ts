import { stopNames } from "../stops";
import type { LessonTold, PageTold, QuestionTold } from "./told";

/** What lies over a page. */
export type Over =
  | { kind: "none" }
  /** The list of failures to choose from. */
  | { kind: "failures" }
  | { kind: "replay"; failure: string }
  | { kind: "question"; at: number; revealed: boolean };

/** Where a lesson stands. */
export interface Place {
  page: number;
  /** State of the page's picture. */
  state: number;
  over: Over;
  blank: boolean;
  /** Questions of this level only; 0: of all. */
  level: number;
  /** How many questions of each page have been shown, by its id. */
  shown: Readonly<Record<string, number>>;
}

/** What a trainer does. */
export type Action =
  | { do: "on" | "back" | "first" | "last" | "ask" | "question" | "failures" | "blank" | "close" }
  | { do: "state"; way: 1 | -1 }
  | { do: "show-state"; state: number }
  | { do: "page"; page: number }
  | { do: "failure"; failure: string }
  | { do: "level"; level: number };

const none: Over = { kind: "none" };
export const start: Place = { page: 0, state: 0, over: none, blank: false, level: 0, shown: {} };

/** The state that a page opens with: the first in which something flows, else its first. */
export function firstState(page: PageTold | undefined): number {
  const flows = page?.states.findIndex((s) => (s.values["flow"] ?? 0) > 0) ?? -1;
  return Math.max(0, flows);
}

/** Where a lesson begins. */
export const opening = (lesson: LessonTold): Place => ({ ...start, state: firstState(lesson.pages[0]) });

/** The questions of a page, of the level asked for. */
export const questionsOf = (all: readonly QuestionTold[], page: PageTold | undefined, level: number) =>
  all.filter((q) => q.page === page?.page && (level === 0 || q.level === level));

function turnTo(place: Place, lesson: LessonTold, to: number): Place {
  const page = Math.min(Math.max(to, 0), Math.max(lesson.pages.length - 1, 0));
  const closed = { ...place, over: none, blank: false };
  return page === place.page ? closed : { ...closed, page, state: firstState(lesson.pages[page]) };
}

/** The question that a page shows next, of `count`. */
const nextQuestion = (place: Place, id: string, count: number) => (count ? (place.shown[id] ?? 0) % count : 0);

function showQuestion(place: Place, id: string, count: number): Place {
  const shown = { ...place.shown, [id]: (place.shown[id] ?? 0) + 1 };
  return { ...place, shown, over: { kind: "question", at: nextQuestion(place, id, count), revealed: false } };
}

/** Shows a question, then its answer, then the page again. */
function ask(place: Place, id: string, count: number): Place {
  const { over } = place;
  if (over.kind !== "question") return showQuestion(place, id, count);
  if (!over.revealed && count > 0) return { ...place, over: { ...over, revealed: true } };
  return { ...place, over: none };
}

function turnState(place: Place, page: PageTold, way: number): Place {
  const count = Math.max(page.states.length, 1);
  return { ...place, state: (place.state + way + count) % count };
}

/** Where a lesson stands after what a trainer does. */
export function step(place: Place, action: Action, lesson: LessonTold, questions: readonly QuestionTold[]): Place {
  const page = lesson.pages[place.page];
  if (!page) return place;
  const count = questionsOf(questions, page, place.level).length;
  switch (action.do) {
    case "on":
      return turnTo(place, lesson, place.page + 1);
    case "back":
      return turnTo(place, lesson, place.page - 1);
    case "first":
      return turnTo(place, lesson, 0);
    case "last":
      return turnTo(place, lesson, lesson.pages.length - 1);
    case "page":
      return turnTo(place, lesson, action.page);
    case "ask":
      return ask(place, page.page, count);
    case "question":
      return showQuestion(place, page.page, count);
    case "failures":
      return { ...place, over: place.over.kind === "none" ? { kind: "failures" } : none };
    case "failure":
      return { ...place, over: { kind: "replay", failure: action.failure } };
    case "state":
      return turnState(place, page, action.way);
    case "show-state":
      return { ...place, state: action.state };
    case "blank":
      return { ...place, blank: !place.blank };
    case "level":
      return { ...place, level: action.level, shown: {}, over: place.over.kind === "question" ? none : place.over };
    case "close":
      return place.blank ? { ...place, blank: false } : { ...place, over: none };
  }
}

/** Whether there is something to close before the lesson ends. */
export const canClose = (place: Place) => place.blank || place.over.kind !== "none";

/** A stop of the band: its pages by their places in the lesson. */
interface StopOfBand {
  number: number;
  name: string;
  pages: number[];
}

/** The eleven stops with the pages of each. */
export function bandOf(lesson: LessonTold): StopOfBand[] {
  const places = lesson.pages.map((_, i) => i);
  return stopNames.map((name, i) => ({
    number: i + 1,
    name,
    pages: places.filter((p) => lesson.pages[p]?.stop_number === i + 1),
  }));
}

/** "2 of 5": which page of its stop a page is; empty where the stop has one. */
export function pageOfStop(lesson: LessonTold, page: number): string {
  const number = lesson.pages[page]?.stop_number;
  const same = lesson.pages.flatMap((p, i) => (p.stop_number === number ? [i] : []));
  return same.length > 1 ? `${same.indexOf(page) + 1} of ${same.length}` : "";
}
