import { batch, computed, signal } from "@preact/signals";
import { step as stepPlayer, toggle } from "../player";
import { opening, questionsOf, start, step, type Action, type Place } from "./steps";
import { keyIn, noTally, rowCount, type Tally, type TallyAction } from "./tally";
import type { Ask, FailureTold, LessonTold, QuestionsTold, QuestionTold, ReplayTold } from "./told";

export type Units = "us" | "si";

/** What the page gives to a lesson: the station's name, the engine, and what ends it. */
export interface Host {
  station: string;
  ask: Ask;
  end(): void;
}

/** All that the windows of a lesson share. */
export interface Shared {
  place: Place;
  tallies: Readonly<Record<string, Tally>>;
  units: Units;
  /** Keys of one character are on. */
  letters: boolean;
  /** When the lesson and its page began, ms. */
  began: number;
  pageBegan: number;
}

/** What is told once for all its windows. */
export interface Told {
  station: string;
  lesson: LessonTold | null;
  questions: QuestionsTold | null;
  /** Why there are no questions. */
  questionsProblem: string | null;
}

/** What happens in a lesson, from whichever window. */
export type Doing =
  | { of: "lesson"; action: Action }
  | { of: "tally"; action: TallyAction }
  | { of: "player"; action: "toggle" | "previous" | "next" }
  | { of: "units" }
  | { of: "end" };

export const told = signal<Told>({ station: "", lesson: null, questions: null, questionsProblem: null });
export const shared = signal<Shared>({
  place: start,
  tallies: {},
  units: "us",
  letters: true,
  began: Date.now(),
  pageBegan: Date.now(),
});

/** A replay on its way, or as it came. */
interface Replaying {
  failure: string;
  replay: ReplayTold | null;
  error: string | null;
}
export const replaying = signal<Replaying | null>(null);

const place = computed(() => shared.value.place);
export const page = computed(() => told.value.lesson?.pages[place.value.page]);
const allQuestions = computed(() => told.value.questions?.questions ?? []);
/** The questions that the page can show. */
export const pageQuestions = computed(() => questionsOf(allQuestions.value, page.value, place.value.level));

/** The question that is shown; null: none is, or the page has none. */
export const question = computed<QuestionTold | null>(() => {
  const { over } = place.value;
  return over.kind === "question" ? (pageQuestions.value[over.at] ?? null) : null;
});
const keyOf = (q: QuestionTold) => `${q.page} ${q.question}`;
export const tallyOf = (q: QuestionTold): Tally => shared.value.tallies[keyOf(q)] ?? noTally(rowCount(q));

/** Those of the page's failures that are listed. */
export const failures = computed<readonly FailureTold[]>(() => page.value?.failures ?? []);

let host: Host | null = null;
/** In a second window: hands to the first what is done in it. */
let elsewhere: ((doing: Doing) => void) | null = null;
export const steerElsewhere = (send: (doing: Doing) => void) => (elsewhere = send);

/** Questions that are asked of the engine at once: all kinds there are, by far. */
const allKinds = 500;

const replays = new Map<string, Promise<ReplayTold>>();

/** A replay that can be shown; else it fails with the reason. */
function whole(replay: ReplayTold): ReplayTold {
  if (replay.problem || !replay.scenes.length) throw new Error(replay.problem || "there is nothing to show");
  return replay;
}

function replayOf(failure: string, at: string): Promise<ReplayTold> {
  const key = `${failure} ${at}`;
  const kept = replays.get(key);
  if (kept) return kept;
  if (!host) return Promise.reject(new Error("no lesson is open"));
  const asked = host.ask<ReplayTold>({ study: "lesson", failure, ...(at ? { at } : {}) }).then(whole);
  replays.set(key, asked);
  asked.catch(() => replays.delete(key));
  return asked;
}

const words = (error: unknown) => (error instanceof Error ? error.message : String(error));

async function runReplay(failure: string) {
  replaying.value = { failure, replay: null, error: null };
  const still = () => replaying.peek()?.failure === failure;
  try {
    const replay = await replayOf(failure, page.peek()?.subject ?? "");
    if (still()) replaying.value = { failure, replay, error: null };
  } catch (error) {
    if (still()) replaying.value = { failure, replay: null, error: words(error) };
  }
}

async function fetchQuestions(from: Host) {
  try {
    const questions = await from.ask<QuestionsTold>({ study: "lesson", questions: allKinds, seed: 1 });
    if (host === from) told.value = { ...told.peek(), questions, questionsProblem: null };
  } catch (error) {
    if (host === from) told.value = { ...told.peek(), questionsProblem: words(error) };
  }
}

/** The page that a lesson is shown by, which it asks and which it ends. */
export const shownBy = (page: Host) => void (host = page);

/** Opens a lesson where it was left, or anew where it is another. */
export function openLesson(of: Host, lesson: LessonTold) {
  const same = told.peek().station === of.station && told.peek().lesson !== null;
  host = of;
  replays.clear();
  batch(() => {
    told.value = { station: of.station, lesson, questions: null, questionsProblem: null };
    const last = shared.peek();
    const kept = same && last.place.page < lesson.pages.length;
    const at = kept ? { ...last.place, over: start.over, blank: false } : opening(lesson);
    shared.value = { ...last, place: at, began: kept ? last.began : Date.now(), pageBegan: Date.now() };
  });
  void fetchQuestions(of);
}

function doLesson(action: Action) {
  const { lesson } = told.peek();
  if (!lesson) return;
  const was = shared.peek();
  const now = step(was.place, action, lesson, allQuestions.peek());
  const turned = now.page !== was.place.page;
  batch(() => {
    shared.value = { ...was, place: now, pageBegan: turned ? Date.now() : was.pageBegan };
    if (now.over.kind !== "replay") replaying.value = null;
  });
  if (action.do === "failure") void runReplay(action.failure);
}

function doTally(action: TallyAction) {
  const q = question.peek();
  if (!q) return;
  const tallies = { ...shared.peek().tallies, [keyOf(q)]: keyIn(tallyOf(q), action, q.form) };
  shared.value = { ...shared.peek(), tallies };
}

function doPlayer(action: "toggle" | "previous" | "next") {
  if (action === "toggle") toggle();
  else stepPlayer(action === "next" ? 1 : -1);
}

/** Does what a trainer asks for, in whichever window. */
export function perform(doing: Doing) {
  if (elsewhere) elsewhere(doing);
  else if (doing.of === "lesson") doLesson(doing.action);
  else if (doing.of === "tally") doTally(doing.action);
  else if (doing.of === "player") doPlayer(doing.action);
  else if (doing.of === "units") setUnits(shared.peek().units === "us" ? "si" : "us");
  else host?.end();
}

export const act = (action: Action) => perform({ of: "lesson", action });
export const tally = (action: TallyAction) => perform({ of: "tally", action });

export function setUnits(units: Units) {
  if (units !== shared.peek().units) shared.value = { ...shared.peek(), units };
}
export function setLetters(letters: boolean) {
  if (letters !== shared.peek().letters) shared.value = { ...shared.peek(), letters };
}

/** In the units shown. */
export const shownIn = (of: { shown: string | null; shown_si: string | null } | null | undefined) =>
  (shared.value.units === "si" ? of?.shown_si : of?.shown) ?? null;
export const wordsIn = (of: { words: string; words_si?: string }) =>
  shared.value.units === "si" ? (of.words_si ?? of.words) : of.words;
