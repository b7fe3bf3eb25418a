/** What the view of meters tells of a meter. Nothing here knows of the page. */
import { digits } from "../../../draw/numbers";
import type { Finding } from "../../parts/finding";
import { stateWords, type State } from "../../parts/status";
import type { Draw, Judged, Meter, MeterLimit, Proving } from "./documents";

/** A share of one, as a percentage with three decimals. */
export const percent = (share: number | null) => (share === null ? "–" : digits(100 * share, 3));

export const lastOf = (meter: Meter): Proving | undefined => meter.provings.at(-1);

/** The draw of a proving that is furthest off. */
export const worstOf = (proving: Proving | undefined) => (proving && proving.worst !== null ? proving.draws[proving.worst] : undefined);

const order: readonly State[] = ["falls short", "close", "meets", "not determined", "does not apply"];

/** What a meter makes in a year, in its own currency; null where no price is known. */
export const money = ({ money: sum, currency }: Meter["year"]) =>
  sum === null ? null : digits(sum, 0) + (currency ? `\u00A0${currency}` : "");

/** Whether a draw was corrected for the temperatures of its fuel. */
export const isCorrected = (draw: Pick<Draw, "fuel_by">) => draw.fuel_by !== null;

/** The state of a meter: the worst of its findings that are determined. */
export function stateOf(meter: Pick<Meter, "hose" | "provings">, findings: readonly Finding[]): State {
  const own = findings.filter((f) => f.subject === meter.hose).map((f) => f.state);
  const state = order.find((one) => own.includes(one)) ?? "not determined";
  const worst = worstOf(meter.provings.at(-1));
  return worst && !isCorrected(worst) && (state === "meets" || state === "close") ? "not determined" : state;
}

/** How a draw stands against a limit, in shape and word. A limit that is from memory, or not of this place, decides
 * nothing, nor does a draw within it whose temperatures are not known. */
export function standing(
  judged: Judged,
  limit: MeterLimit | undefined,
  corrected: boolean,
): { state: State; words: string } {
  const told = (state: State, words: string) => ({ state, words: `${stateWords[state]}: ${words}` });
  if (judged.within === null) return told("does not apply", "for another draft");
  const where = judged.within ? "within" : "beyond";
  if (!limit?.applies) return told("does not apply", `${where}, not a rule here`);
  if (limit.known.includes("memory")) return told("not determined", `${where}, the limit is from memory`);
  if (judged.within && !corrected) return told("not determined", "within, temperatures left out");
  return told(judged.within ? "meets" : "falls short", where);
}
