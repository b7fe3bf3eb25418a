import { effect, signal } from "@preact/signals";
import { station } from "../../state/station";

/** A steady inflow as the engine reads it; empty: the first of the usual ones in the units shown. */
export const inflow = signal("");
/** Time for which the sensors see nothing; empty: they see at once. */
export const deadFor = signal("");

/** Room for the drawing, pixels; in steps, so that it is not asked for with each of them. */
export const drawWidth = signal(920);
const [narrowest, step] = [328, 40];
export const roomFor = (pixels: number) => Math.max(narrowest, Math.floor(pixels / step) * step);

/** Kept for this tab and station. */
let keptFor = "";
effect(() => {
  const file = station.value?.file;
  if (!file) return;
  if (file !== keptFor) {
    keptFor = file;
    const text = sessionStorage.getItem(`containment ${file}`) ?? "{}";
    const kept = JSON.parse(text) as { inflow?: string; dead?: string };
    inflow.value = kept.inflow ?? "";
    deadFor.value = kept.dead ?? "";
    return;
  }
  sessionStorage.setItem(`containment ${file}`, JSON.stringify({ inflow: inflow.value, dead: deadFor.value }));
});
