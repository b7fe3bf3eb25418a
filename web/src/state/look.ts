import { computed, effect, signal } from "@preact/signals";
import type { Units } from "../api/types";
import { station } from "./station";

export { stopNames } from "./stops";

export const sheets = [
  { key: "1", id: "site", name: "Site" },
  { key: "2", id: "tank", name: "Tank" },
  { key: "3", id: "flow", name: "Flow" },
  { key: "4", id: "incident", name: "Incident" },
  { key: "5", id: "containment", name: "Containment" },
  { key: "6", id: "ledger", name: "Ledger" },
  { key: "7", id: "checks", name: "Checks" },
  { key: "8", id: "kit", name: "Kit and calendar" },
  { key: "9", id: "lesson", name: "Lesson" },
  { key: "0", id: "reports", name: "Reports" },
] as const;
export type SheetId = (typeof sheets)[number]["id"];

const address = new URLSearchParams(location.search);
const isSheet = (id: string | null): id is SheetId => sheets.some((s) => s.id === id);
const asked = address.get("sheet");

export const sheet = signal<SheetId>(isSheet(asked) ? asked : "site");

/** The views of a sheet that has more than one, in order; they stand beside its title. */
export const viewsOf: Partial<Record<SheetId, readonly { id: string; name: string }[]>> = {
  tank: [
    { id: "depth", name: "Depth" },
    { id: "delivery", name: "Delivery" },
    { id: "vapor", name: "Vapor" },
    { id: "flotation", name: "Flotation" },
  ],
  ledger: [
    { id: "month", name: "Month" },
    { id: "line-tests", name: "Line tests" },
    { id: "meters", name: "Meters" },
  ],
};
const chosenViews = signal<Partial<Record<SheetId, string>>>(isSheet(asked) ? { [asked]: address.get("view") ?? "" } : {});
/** The view of a sheet: the chosen one, else its first. */
export function viewOf(id: SheetId): string {
  const views = viewsOf[id] ?? [];
  return views.find((v) => v.id === chosenViews.value[id])?.id ?? views[0]?.id ?? "";
}
export const setView = (id: SheetId, view: string) => (chosenViews.value = { ...chosenViews.value, [id]: view });
/** The next view of the sheet that is shown (1) or the one before (-1), around. */
export function turnView(way: 1 | -1) {
  const views = viewsOf[sheet.value] ?? [];
  const at = views.findIndex((v) => v.id === viewOf(sheet.value));
  const next = views[(at + way + views.length) % Math.max(views.length, 1)];
  if (next) setView(sheet.value, next.id);
}

const stored = (name: string) => address.get(name) ?? localStorage.getItem(name);
export const theme = signal<"light" | "dark">(
  stored("theme") === "dark" || (stored("theme") === null && matchMedia("(prefers-color-scheme: dark)").matches)
    ? "dark"
    : "light",
);
const chosenUnits = signal<Units | null>(
  stored("units") === "si" || stored("units") === "us" ? (stored("units") as Units) : null,
);
/** Units of the whole workbench; the station's own until chosen. */
export const units = computed<Units>(() => chosenUnits.value ?? station.value?.display ?? "us");
export const setUnits = (u: Units) => (chosenUnits.value = u);
/** Colors after the published color-symbol practice, an option. */
export const practiceColors = signal(localStorage.getItem("colors") === "practice");
/** Single-letter keys can be turned off. */
export const letterKeys = signal(localStorage.getItem("keys") !== "off");

const chosenProduct = signal<string | null>(address.get("product"));
export const product = computed(() => {
  const all = station.value?.products ?? [];
  return all.find((p) => p.id === chosenProduct.value)?.id ?? all[0]?.id ?? "";
});
export const setProduct = (id: string) => (chosenProduct.value = id);

/** One selection for all sheets: a stop of the course, and a part. */
export const selection = signal<{ stop: number; part: string | null }>({ stop: 3, part: null });
export const select = (stop: number, part: string | null = null) => (selection.value = { stop, part });


effect(() => {
  const root = document.documentElement;
  root.dataset["theme"] = theme.value;
  if (practiceColors.value) root.dataset["colors"] = "api";
  else delete root.dataset["colors"];
  localStorage.setItem("theme", theme.value);
  localStorage.setItem("colors", practiceColors.value ? "practice" : "");
  localStorage.setItem("keys", letterKeys.value ? "on" : "off");
  if (chosenUnits.value) localStorage.setItem("units", chosenUnits.value);
});
effect(() => {
  const query = new URLSearchParams(location.search);
  query.set("sheet", sheet.value);
  const view = viewOf(sheet.value);
  if (view) query.set("view", view);
  else query.delete("view");
  history.replaceState(null, "", `${location.pathname}?${query}${location.hash}`);
});
