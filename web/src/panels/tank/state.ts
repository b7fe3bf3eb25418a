import { signal } from "@preact/signals";
import { keepForStation, readAs } from "../../state/kept";

/** The tank that is shown; empty: the first of the product chosen. */
export const chosenTank = signal("");
/** Where the stick is put: "fill", "gauge", "pump"; empty: where the last reading was taken. */
export const stickAt = signal("");
/** The depth asked for, as the engine reads it; empty: the last reading. */
export const depth = signal("");

/** Kept for this tab, so that a reload shows the same. */
const now = () => ({ tank: chosenTank.value, at: stickAt.value, depth: depth.value });
keepForStation("tank", sessionStorage, now, (text) => {
  const kept = readAs<ReturnType<typeof now>>(text);
  chosenTank.value = kept.tank ?? "";
  stickAt.value = kept.at ?? "";
  depth.value = kept.depth ?? "";
});
