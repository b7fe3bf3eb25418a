import { signal } from "@preact/signals";
import { keepForStation, readAs } from "../../state/kept";

/** The row whose parts are shown; empty: none. */
export const openRow = signal("");

/** Who tested, as it was typed last. */
export const lastBy = signal("");

/** Kept for this tab, so that a reload shows the same. */
keepForStation("kit", sessionStorage, () => ({ row: openRow.value, by: lastBy.value }), (text) => {
  const read = readAs<{ row: string; by: string }>(text);
  openRow.value = read.row ?? "";
  lastBy.value = read.by ?? "";
});
