import { signal } from "@preact/signals";
import { keepForStation, readAs } from "../../state/kept";

/** The book that is shown, by its product; none: the first of the product. */
export const chosenBooks = signal<Record<string, string>>({});
/** "2026-11"; empty: the last month with readings. */
export const month = signal("");

/** Kept for this tab, so that a reload shows the same. */
keepForStation(
  "ledger",
  sessionStorage,
  () => ({ books: chosenBooks.value, month: month.value }),
  (text) => {
    const read = readAs<{ books: Record<string, string>; month: string }>(text);
    chosenBooks.value = read.books ?? {};
    month.value = read.month ?? "";
  },
);
