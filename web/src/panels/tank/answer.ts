import { useRef } from "preact/hooks";
import type { ErrorAnswer } from "../../api/types";
import { sentence } from "../../draw/words";

export type Told<D> = { document: D } | ErrorAnswer | undefined;

/** The last document that could be computed; a refused entry leaves it standing and says why. */
export function useLast<D>(answer: Told<D>): { document: D | null; problem: string | null } {
  const last = useRef<D | null>(null);
  if (answer && "document" in answer) last.current = answer.document;
  const problem = answer && "error" in answer ? `${sentence(answer.error)} ${sentence(answer.hint)}`.trim() : null;
  return { document: last.current, problem };
}

/** A typed value with a unit, where none was typed. */
export const withUnitOr = (typed: string, unit: string) =>
  typed.trim() === "" || /[a-z%"']/i.test(typed) ? typed.trim() : `${typed.trim()} ${unit}`;
