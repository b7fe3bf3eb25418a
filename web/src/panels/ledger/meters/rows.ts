/** What the view of meters tells of a meter. Nothing here knows of the page. */
import { digits } from "../../../draw/numbers";
import type { Finding } from "../../parts/finding";
import type { State } from "../../parts/status";
import type { Judged, Meter, MeterLimit, Proving } from "./documents";

/** A share of one, as a percentage with three decimals. */
export const percent = (share: number | null) => (share === null ? "–" : digits(100 * share, 3));

export const lastOf = (meter: Meter): Proving | undefined => meter.provings.at(-1);

/** The draw of a proving that is furthest off. */
export const worstOf = (proving: Proving | undefined) => (proving && proving.worst !== null ? proving.draws[proving.worst] : undefined);

const order: readonly State[] = ["falls short", "close", "meets", "not determined", "does not apply"];

/** The state of a meter: the worst of its findings that are determined. */
export function stateOf(hose: string, findings: readonly Finding[]): State {
  const own = findings.filter((f) => f.subject === hose).map((f) => f.state);
  return order.find((state) => own.includes(state)) ?? "not determined";
}

/** How a draw stands against a limit, in shape and word. A limit that is from memory, or not of this place, decides nothing. */
export function standing(judged: Judged, limit: MeterLimit | undefined): { state: State; words: string } {
  if (judged.within === null) return { state: "does not apply", words: "for another draft" };
  const words = judged.within ? "Within" : "Beyond";
  if (!limit?.applies) return { state: "does not apply", words: `${words}; not a rule here` };
  if (limit.known.includes("memory")) return { state: "not determined", words: `${words}; decides nothing` };
  return { state: judged.within ? "meets" : "falls short", words };
}
