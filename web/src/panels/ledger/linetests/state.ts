import { signal } from "@preact/signals";
import { keepForStation, readAs } from "../../../state/kept";
import type { AskKey } from "./asks";

/** What is asked for, as typed with its units; missing: as the site file has it. */
export const typed = signal<Partial<Record<AskKey, string>>>({});

export function ask(key: AskKey, text: string) {
  const { [key]: _, ...others } = typed.value;
  typed.value = text === "" ? others : { ...others, [key]: text };
}

/** Kept for this tab, so that a reload shows the same. */
keepForStation(
  "line-tests",
  sessionStorage,
  () => typed.value,
  (text) => (typed.value = readAs<Partial<Record<AskKey, string>>>(text)),
);
