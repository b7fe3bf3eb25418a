import { viewOf } from "../../state/look";
import { LineTests } from "./linetests/LineTests";
import { Month } from "./Month";

/** What records and tests say: a view to each question. */
export function Ledger() {
  return viewOf("ledger") === "line-tests" ? <LineTests /> : <Month />;
}
