import { signal } from "@preact/signals";
import { product, setProduct, sheet } from "../../state/look";
import { keepForStation, readAs } from "../../state/kept";

/** The book that is shown, by its product; none: the first of the product. */
export const chosenBooks = signal<Record<string, string>>({});
/** "2026-11"; empty: the last month with readings. */
export const month = signal("");

/** Kept for this tab, so that a reload shows the same. */
keepForStation(
  "ledger",
  sessionStorage,
  () => ({ books: chosenBooks.value, month: month.value, product: product.value }),
  (text) => {
    const read = readAs<{ books: Record<string, string>; month: string; product: string }>(text);
    chosenBooks.value = read.books ?? {};
    month.value = read.month ?? "";
    if (sheet.value === "ledger" && read.product && !new URLSearchParams(location.search).has("product")) setProduct(read.product);
  },
);
