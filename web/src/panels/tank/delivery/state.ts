import { signal } from "@preact/signals";
import { keepForStation, readAs } from "../../../state/kept";

/** What the view asks with; empty: as the file says. */
export interface Asked {
  delivery: string;
  tank: string;
  volume: string;
  rate: string;
  stop_at: string;
  without: string[];
  blocked: string[];
}

const asFile: Asked = { delivery: "", tank: "", volume: "", rate: "", stop_at: "", without: [], blocked: [] };

export const asked = signal<Asked>(asFile);
/** Names of the runs that are shown as A and B; empty: those that tell most. */
export const choiceA = signal("");
export const choiceB = signal("");

/** The vapor space whose path is shown, by its tanks; empty: the first. */
export const chosenSpace = signal("");

export const ask = (change: Partial<Asked>) => (asked.value = { ...asked.value, ...change });

/** The question as the server takes it: nothing stands for what is as the file says. */
export function wantOf(a: Asked): Record<string, string | string[]> {
  const filled = Object.entries(a).filter(([, value]) => value.length > 0);
  return { study: "delivery", ...Object.fromEntries(filled) };
}

/** Kept for this tab, so that a reload shows the same. */
const now = () => ({ asked: asked.value, a: choiceA.value, b: choiceB.value, space: chosenSpace.value });
keepForStation("delivery", sessionStorage, now, (text) => {
  const kept = readAs<ReturnType<typeof now>>(text);
  asked.value = { ...asFile, ...kept.asked };
  choiceA.value = kept.a ?? "";
  choiceB.value = kept.b ?? "";
  chosenSpace.value = kept.space ?? "";
});
