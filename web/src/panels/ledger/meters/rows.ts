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

/** What a meter makes in a year, in its own currency; null where no price is known. */
export const money = ({ money: sum, currency }: Meter["year"]) =>
  sum === null ? null : digits(sum, 0) + (currency ? `\u00A0${currency}` : "");

/** Whether a draw was corrected for the temperatures of its fuel. */
export const isCorrected = (draw: Pick<Draw, "fuel_by">) => draw.fuel_by !== null;

/** Each limit with the worst draw of a proving against it. */
export function worstAgainst(proving: Proving | undefined): { draw: Draw; judged: Judged }[] {
  return (proving?.against ?? []).flatMap((one) => {
    const draw = proving?.draws[one.draw];
    const judged = draw?.limits.find(({ limit }) => limit === one.limit);
    return draw && judged ? [{ draw, judged }] : [];
  });
}

const isFromMemory = (limit: MeterLimit) => limit.known.includes("memory");
const isOn = (finding: Finding, hose: string, limit: MeterLimit) =>
  finding.subject === hose && finding.rule === `meter-error, ${limit.name}`;

const order: readonly State[] = ["falls short", "not determined", "close", "meets"];

/** The state of a meter: the worst of its findings on limits that decide something. */
export function stateOf(hose: string, findings: readonly Finding[], limits: readonly MeterLimit[]): State {
  const deciding = limits.filter((limit) => !isFromMemory(limit));
  const own = findings.filter((f) => deciding.some((limit) => isOn(f, hose, limit))).map((f) => f.state);
  return order.find((state) => own.includes(state)) ?? "not determined";
}

interface Stands {
  hose: string;
  judged: Judged;
  limit: MeterLimit;
  corrected: boolean;
}

/** How a draw stands against a limit: the state of its finding, and in words why it is that. */
export function standing({ hose, judged, limit, corrected }: Stands, findings: readonly Finding[]): { state: State; words: string } {
  const state = findings.find((f) => isOn(f, hose, limit))?.state ?? "not determined";
  const told = (words: string) => ({ state, words: `${stateWords[state]}: ${words}` });
  if (judged.within === null) return told("for another draft");
  const where = judged.within ? "within" : "beyond";
  if (!limit.applies) return told(`${where}, not a rule here`);
  if (isFromMemory(limit)) return told(`${where}, the limit is from memory`);
  return told(judged.within && !corrected ? "within, temperatures left out" : where);
}
