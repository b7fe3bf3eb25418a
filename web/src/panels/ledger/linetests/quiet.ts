/** Nothing here knows of the page. */
import type { State } from "../../parts/status";
import type { Detection } from "./documents";

/** Whether the station's quiet times are long enough for a test of the detector, as a state and in words. */
export function quietState(told: Detection, quiet: readonly number[]): { state: State; words: string } {
  const enough = told.quiet_enough;
  if (enough === null || told.quiet_needed_s === null) return { state: "not determined", words: "Not determined" };
  if (enough === 0) return { state: "falls short", words: `Falls short: ${quiet.length === 1 ? "too short" : `none of ${quiet.length} long enough`}` };
  return { state: "meets", words: `Meets: ${quiet.length === 1 ? "long enough" : `${enough} of ${quiet.length} long enough`}` };
}
