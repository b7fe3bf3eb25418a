import { signal } from "@preact/signals";
import { keepForStation, readAs } from "../../state/kept";

/** A steady inflow as the engine reads it; empty: the first of the usual ones in the units shown. */
export const inflow = signal("");
/** Time for which the sensors see nothing; empty: they see at once. */
export const deadFor = signal("");

/** Room for the drawing, pixels; in steps, so that it is not asked for with each of them. */
export const drawWidth = signal(920);
const [narrowest, step] = [328, 40];
export const roomFor = (pixels: number) => Math.max(narrowest, Math.floor(pixels / step) * step);

/** Kept for this tab, so that a reload shows the same. */
const now = () => ({ inflow: inflow.value, dead: deadFor.value });
keepForStation("containment", sessionStorage, now, (text) => {
  const kept = readAs<ReturnType<typeof now>>(text);
  inflow.value = kept.inflow ?? "";
  deadFor.value = kept.dead ?? "";
});
