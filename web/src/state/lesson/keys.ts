import { canClose, type Action, type Place } from "./steps";
import type { TallyAction } from "./tally";
import type { FailureTold, Form } from "./told";

/** What a key does in a lesson. */
export type KeyMeaning =
  | { of: "lesson"; action: Action }
  | { of: "tally"; action: TallyAction }
  | { of: "player"; action: "toggle" | "previous" | "next" }
  | { of: "presenter" }
  | { of: "units" }
  | { of: "end" };

interface Now {
  place: Place;
  failures: readonly FailureTold[];
  /** Form of the question that is shown; null: none is. */
  form: Form | null;
  /** Keys of one character are on. */
  letters: boolean;
}

const lesson = (action: Action): KeyMeaning => ({ of: "lesson", action });
const tally = (action: TallyAction): KeyMeaning => ({ of: "tally", action });

/** Keys that mean the same everywhere; a clicker sends the page keys. */
const everywhere: Readonly<Record<string, KeyMeaning>> = {
  ArrowRight: lesson({ do: "on" }),
  PageDown: lesson({ do: "on" }),
  ArrowLeft: lesson({ do: "back" }),
  PageUp: lesson({ do: "back" }),
  Home: lesson({ do: "first" }),
  End: lesson({ do: "last" }),
};

const letterKeys: Readonly<Record<string, KeyMeaning>> = {
  a: lesson({ do: "ask" }),
  n: lesson({ do: "question" }),
  b: lesson({ do: "blank" }),
  x: lesson({ do: "failures" }),
  ",": { of: "player", action: "previous" },
  ".": { of: "player", action: "next" },
  p: { of: "presenter" },
  u: { of: "units" },
};

const upDown: Readonly<Record<string, 1 | -1>> = { ArrowDown: 1, ArrowUp: -1 };

/** Keys with which a tally is entered. */
function tallyKey(key: string, form: Form, letters: boolean): KeyMeaning | null {
  if (key === "Enter") return tally({ do: "enter" });
  if (key === "Backspace") return tally({ do: "erase" });
  const way = upDown[key];
  if (way) return tally({ do: "row", way });
  const typed = form === "estimate" ? /^[\d.,−-]$/ : /^\d$/;
  return letters && typed.test(key) ? tally({ do: "type", text: key }) : null;
}

/** The failure that a digit names, of those that are listed. */
function failureKey(key: string, failures: readonly FailureTold[]): KeyMeaning | null {
  const failure = /^[1-9]$/.test(key) ? failures[Number(key) - 1] : undefined;
  return failure?.available ? lesson({ do: "failure", failure: failure.failure }) : null;
}

function overKey(key: string, now: Now): KeyMeaning | null {
  const { over } = now.place;
  if (over.kind === "question" && now.form) return tallyKey(key, now.form, now.letters);
  if (over.kind === "failures" && now.letters) return failureKey(key, now.failures);
  if (over.kind === "replay" && key === " ") return { of: "player", action: "toggle" };
  return null;
}

/** What a key does now; null: nothing of the lesson. */
export function keyMeaning(key: string, now: Now): KeyMeaning | null {
  if (key === "Escape") {
    return canClose(now.place) ? lesson({ do: "close" }) : { of: "end" };
  }
  const over = overKey(key, now);
  if (over) return over;
  if (key === " ") return lesson({ do: "on" });
  const way = upDown[key];
  if (way) return lesson({ do: "state", way });
  return everywhere[key] ?? (now.letters ? (letterKeys[key.toLowerCase()] ?? null) : null);
}
