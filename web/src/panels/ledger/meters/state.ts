import { signal } from "@preact/signals";
import { keepForStation, readAs } from "../../../state/kept";

/** The meter that is shown, by its hose; empty: the first. */
export const chosenMeter = signal("");

/** What is asked for, as typed; empty: as the records have it. */
export const asked = { prices: signal(""), yearly: signal(""), limits: signal(""), expansion: signal("") };

/** Kept for this tab, so that a reload shows the same. */
keepForStation(
  "meters",
  sessionStorage,
  () => ({ meter: chosenMeter.value, ...Object.fromEntries(Object.entries(asked).map(([key, one]) => [key, one.value])) }),
  (text) => {
    const read = readAs<Record<string, string>>(text);
    chosenMeter.value = read["meter"] ?? "";
    for (const [key, one] of Object.entries(asked)) one.value = read[key] ?? "";
  },
);
