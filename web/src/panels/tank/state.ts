import { signal, type Signal } from "@preact/signals";
import { keepForStation, readAs } from "../../state/kept";

/** The tank that is shown; empty: the first of the product chosen. */
export const chosenTank = signal("");
/** Where the stick is put, by the name of its place; empty: the first of the tank. */
export const stickAt = signal("");
/** The depth asked for, as the engine reads it; empty: the last reading. */
export const depth = signal("");

/** Whether the values of the site file are unfolded; empty: they are not. */
export const valuesOpen = signal("");

/** The rate of a delivery that settings in time are told for; empty: as the site file has it. */
export const rate = signal("");

/** What the other views are asked with, as the engine reads it; empty: as the site file has it. */
export const asked = {
  flotationTank: signal(""),
  waterLevel: signal(""),
  filled: signal(""),
  factor: signal(""),
  temperature: signal(""),
};

const kept: Record<string, Signal<string>> = { chosenTank, stickAt, depth, rate, valuesOpen, ...asked };

/** Kept for this tab, so that a reload shows the same. */
keepForStation(
  "tank",
  sessionStorage,
  () => Object.fromEntries(Object.entries(kept).map(([name, one]) => [name, one.value])),
  (text) => {
    const read = readAs<Record<string, string>>(text);
    for (const [name, one] of Object.entries(kept)) one.value = read[name] ?? "";
  },
);

/** Room for a drawing, px; in steps, so that it is not asked for with each of them. */
const [narrowest, step] = [328, 40];
export const roomOf = (pixels: number) => Math.max(narrowest, Math.floor(pixels / step) * step);
