import { useRef } from "preact/hooks";
import type { ErrorAnswer } from "../../api/types";
import { sentence } from "../../draw/words";
import { labelOf } from "../../state/entry";
import { askGroups } from "../ledger/linetests/asks";

export type Told<D> = { document: D } | ErrorAnswer | undefined;

/** What the page calls the options of the command line. */
const asked: Record<string, string> = {
  rate: "Delivery rate", tank: "Into", volume: "Brought", filled: "In the tank", at: "Dips", depth: "Depth",
  ...Object.fromEntries(askGroups.flatMap((g) => g.asks).map(({ key, label }) => [key.replaceAll("_", "-"), label])),
};

const named = (key: string) => `"${labelOf(key)}"`;

/** What the engine says, with its options and the keys of the file as the page calls them. */
export const asCalledHere = (text: string) =>
  text
    .replace(/--([a-z_-]+)/g, (_, option: string) => `"${asked[option] ?? option.replaceAll(/[_-]/g, " ")}"`)
    .replace(/\[\[(?:[a-z_]+\.)?([a-z_]+)\]\]/g, "$1")
    .replace(/([a-z_]+) = \{ ([a-z_]+) = \.\.\. \}/g, (_, of: string, key: string) => `${named(key)} of the ${of}`)
    .replace(/([a-z_]+) = \.\.\. in (its|a) /g, (_, key: string, its: string) => `${named(key)} of ${its} `)
    .replace(/(?<!")\b[a-z]+(?:[_.][a-z]+)+\b/g, (key) => key.replaceAll("_", " ").replaceAll(".", ", "));

/** The last document that could be computed; a refused entry leaves it standing and says why. */
export function useLast<D>(answer: Told<D>): { document: D | null; problem: string | null } {
  const last = useRef<D | null>(null);
  if (answer && "document" in answer) last.current = answer.document;
  const problem = answer && "error" in answer ? asCalledHere(`${sentence(answer.error)} ${sentence(answer.hint)}`.trim()) : null;
  return { document: last.current, problem };
}
