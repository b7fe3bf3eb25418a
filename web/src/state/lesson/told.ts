/** What the engine tells of a lesson, as the command `lesson` prints it with --json. */

/** A value in SI and as it is shown in both systems; null: not determined. */
export interface ShownValue {
  value: number | null;
  unit: string;
  quantity: string;
  shown: string | null;
  shown_si: string | null;
}

export interface NumberTold extends ShownValue {
  number: string;
  label: string;
  /** Why it is not determined, and what to enter. */
  reason: string | null;
  /** An unpublished default that it rests on. */
  rests_on: string | null;
}

export interface StateTold {
  state: string;
  words: string;
  values: Record<string, number | null>;
}

export interface ClauseTold {
  clause: string;
  edition: string | null;
  words: string;
  text_seen: boolean;
}

export interface FailureTold {
  failure: string;
  title: string;
  available: boolean;
  reason: string | null;
}

interface LeftOut {
  reason: string;
}
export type QuestionLeftOut = LeftOut & { question: string };
export type PageLeftOut = LeftOut & { page: string };

export interface PageTold {
  page: string;
  stop: string;
  stop_number: number;
  title: string;
  subject: string;
  /** Stands above its numbers. */
  caution: string | null;
  picture: string;
  states: StateTold[];
  numbers: NumberTold[];
  prevents: string;
  without: string;
  synonyms: string[];
  clauses: ClauseTold[];
  failures: FailureTold[];
  questions: string[];
  questions_left_out: QuestionLeftOut[];
  notes: string | null;
}

export interface LessonTold {
  title: string;
  pages: PageTold[];
  pages_left_out: PageLeftOut[];
}

/** A quantity over the time of a scene; null: it has no value there. */
export interface CourseTold {
  course: string;
  label: string;
  unit: string;
  quantity: string;
  values: (number | null)[];
}

export interface SceneTold {
  name: string;
  works: boolean;
  time_s: number[];
  values: Record<string, (number | null)[]>;
  courses: CourseTold[];
  events: { time_s: number; words: string }[];
  told: (ShownValue & { label: string })[];
  /** What nobody entered and no source gives. */
  rests_on: string[];
}

export interface ReplayTold {
  failure: string;
  title: string;
  at: string | null;
  /** Why there is none. */
  problem?: string | null;
  caution: string | null;
  /** The part fails; the part works. */
  scenes: SceneTold[];
}

export type Form = "choice" | "estimate" | "order" | "fault";

export interface OptionTold {
  words: string;
  words_si: string;
  right: boolean;
  /** Of a wrong one: the rule or the slip that leads to it. */
  why: string | null;
}

export interface QuestionTold {
  question: string;
  form: Form;
  level: number;
  page: string;
  caution: string | null;
  words: string;
  words_si: string;
  options: OptionTold[];
  answer: ShownValue | null;
  /** Share of the answer within which an estimate counts as right. */
  tolerance: number | null;
  /** Of an order: the places of its options as they come. */
  order: number[];
  explanation: string;
  explanation_si: string;
  /** The law by which the answer follows, with its numbers. */
  follows: string | null;
  follows_si: string | null;
  /** An unpublished default that the answer rests on. */
  rests_on: string | null;
}

export interface QuestionsTold {
  questions: QuestionTold[];
  left_out: QuestionLeftOut[];
}

/** What a page of the lesson asks the engine for. */
export interface LessonWant {
  study: "lesson";
  failure?: string;
  at?: string;
  questions?: number;
  seed?: number;
}
/** Asks the engine; gives the result, or fails with words for the reader. */
export type Ask = <A>(want: LessonWant) => Promise<A>;
