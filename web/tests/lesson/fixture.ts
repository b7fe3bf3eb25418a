import type {
  FailureTold, LessonTold, OptionTold, PageTold, QuestionTold, ReplayTold, SceneTold,
} from "../../src/state/lesson/told";

/** A page of which only what a test looks at is told. */
export function pageOf(page: string, stopNumber: number, more: Partial<PageTold> = {}): PageTold {
  return {
    page,
    stop: "stop",
    stop_number: stopNumber,
    title: page,
    subject: "",
    caution: null,
    picture: page,
    states: [
      { state: "at rest", words: "", values: { flow: 0 } },
      { state: "running", words: "", values: { flow: 0.8 } },
    ],
    numbers: [],
    prevents: "",
    without: "",
    synonyms: [],
    clauses: [],
    failures: [],
    questions: [],
    questions_left_out: [],
    notes: null,
    ...more,
  };
}

export const failureOf = (failure: string, available = true): FailureTold => ({
  failure,
  title: failure,
  available,
  reason: available ? null : "the station has none",
});

/** Two pages of the hose, one of the tanker before and one of the nozzle after them. */
export const lesson: LessonTold = {
  title: "A lesson",
  pages: [
    pageOf("drop", 1),
    pageOf("whip-hose", 9, { failures: [failureOf("drive-off"), failureOf("sump-fire", false)] }),
    pageOf("breakaway", 9, { states: [{ state: "at rest", words: "", values: {} }] }),
    pageOf("nozzle", 10),
  ],
  pages_left_out: [],
};

const option = (words: string, right: boolean): OptionTold => ({ words, words_si: words, right, why: null });

export function questionOf(question: string, page: string, more: Partial<QuestionTold> = {}): QuestionTold {
  return {
    question,
    form: "choice",
    level: 1,
    page,
    words: "Which?",
    words_si: "Which?",
    options: [option("one", false), option("two", true), option("three", false)],
    answer: null,
    tolerance: null,
    order: [],
    explanation: "",
    explanation_si: "",
    follows: null,
    follows_si: null,
    rests_on: null,
    caution: null,
    ...more,
  };
}

export const questions = [
  questionOf("first", "drop"),
  questionOf("second", "drop", { form: "estimate", level: 2 }),
  questionOf("third", "nozzle", { form: "order" }),
];

export function sceneOf(name: string, works: boolean, more: Partial<SceneTold> = {}): SceneTold {
  return { name, works, time_s: [0, 10], values: {}, courses: [], events: [], told: [], rests_on: [], ...more };
}

export const replayOf = (...scenes: SceneTold[]): ReplayTold => ({
  failure: "struck",
  title: "Struck",
  at: "D1",
  caution: "",
  scenes,
});
