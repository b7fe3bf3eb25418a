import { viewOf } from "../../state/look";
import { LineTests } from "./linetests/LineTests";
import { Meters } from "./meters/Meters";
import { Month } from "./Month";

/** What records and tests say: a view to each question. */
export function Ledger() {
  const view = viewOf("ledger");
  if (view === "line-tests") return <LineTests />;
  if (view === "meters") return <Meters />;
  return <Month />;
}
