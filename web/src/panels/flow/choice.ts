import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import { product } from "../../state/look";
import { stateOf, systemOf, type Answer, type Freshness } from "./answers";
import { renamed } from "./renamed";
import { documentOf, type FlowDocument } from "./told/documents";

/** One choice: the course to one hose with the hoses that are open. */
export interface Choice {
  of: "A" | "B" | null;
  answers: Answer[] | null;
  as: Freshness;
}

/** A drawing of a choice. With stops to choose it is a group of buttons, not a picture. */
export const drawn = (choice: Choice, at: number, id: string) => {
  const answer = choice.answers?.[at] as DrawingAnswer | ErrorAnswer | undefined;
  if (!answer || !("svg" in answer)) return answer;
  const svg = choice.of === "B" ? renamed(answer.svg, id) : answer.svg;
  return { ...answer, svg: svg.includes("data-stop") ? svg.replace('role="img"', 'role="group"') : svg };
};

/** The flow to keep that was asked for [m3/s]. */
export const keepIn = (choice: Choice) =>
  documentOf<FlowDocument>(choice.answers?.[0])?.options.keep_flow_m3_per_s ?? null;

/** The piping of the product that is shown. */
export const systemIn = (choice: Choice) => systemOf(stateOf(choice.answers?.[0]), product.value);
