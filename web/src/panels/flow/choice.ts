import type { Freshness } from "../../state/ask";
import { product } from "../../state/look";
import { stateOf, systemOf, type Answer, type Drawn } from "./answers";
import { documentOf, type FlowDocument } from "./told/documents";

/** One choice: the course to one hose with the hoses that are open. */
export interface Choice {
  of: "A" | "B" | null;
  answers: Answer[] | null;
  as: Freshness;
}

/** A drawing of a choice, by its place in what was asked. */
export const drawn = (choice: Choice, at: number) => choice.answers?.[at] as Drawn | undefined;

/** The flow to keep that was asked for [m3/s]. */
export const keepIn = (choice: Choice) =>
  documentOf<FlowDocument>(choice.answers?.[0])?.options.keep_flow_m3_per_s ?? null;

/** The piping of the product that is shown. */
export const systemIn = (choice: Choice) => systemOf(stateOf(choice.answers?.[0]), product.value);
