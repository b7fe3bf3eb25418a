import { computed, signal } from "@preact/signals";
import type { Edit, Part } from "../api/types";
import { keepForStation, readAs } from "./kept";
import { product, setProduct } from "./look";
import { station } from "./station";

/** Every hose of the station, in the order of the file. */
export const hoses = computed<Part[]>(() => station.value?.parts.filter((p) => p.kind === "hose") ?? []);

export type OpenPreset = "all" | "each" | "none";
/** What was chosen: a preset follows the station, a list keeps to its hoses. */
export const openChoice = signal<OpenPreset | string[]>("all");
/** As typed, with its unit as the engine takes it: "8 gpm"; empty: none is asked for. */
export const keepFlow = signal("");
/** One value that is other in the second choice. */
export interface Change {
  path: string;
  value: string;
}
/** What the second choice changes; empty: there is none. */
export const secondChoice = signal<Change[]>([]);
export const secondEdits = computed<Edit[]>(() => secondChoice.value.map(({ path, value }) => ({ path, value })));

const chosen = signal<{ hose: string; product: string } | null>(null);
/** The hose whose course is shown; null: the slowest open one of the product. It is left when another product is. */
export const chosenHose = computed<string | null>(() =>
  chosen.value && chosen.value.product === product.value ? chosen.value.hose : null,
);
/** Shows the course of a product to a hose; null: to the slowest open one. */
export function chooseHose(hose: string | null, of = product.value) {
  setProduct(of);
  chosen.value = hose === null ? null : { hose, product: of };
}

/** What a hose gives: its product, or its blend as typed. */
const gives = (hose: Part) =>
  hose.fields.find((f) => f.key === "blend" && f.text !== null)?.text ??
  hose.fields
    .filter((f) => f.key.startsWith("blend") && f.text !== null)
    .map((f) => f.text)
    .join() ??
  "";

/** The first hose of each product at each dispenser. */
function oneAtEach(all: readonly Part[]): string[] {
  const seen = new Set<string>();
  return all
    .filter((h) => {
      const key = `${h.of ?? h.id} ${h.product ?? ""} ${gives(h)}`;
      return !seen.has(key) && seen.add(key);
    })
    .map((h) => h.id);
}

/** The hoses that are open, in the order of the file. */
export const openHoses = computed<string[]>(() => {
  const choice = openChoice.value;
  const all = hoses.value;
  if (choice === "none") return [];
  if (choice === "all") return all.map((h) => h.id);
  if (choice === "each") return oneAtEach(all);
  return all.map((h) => h.id).filter((id) => choice.includes(id));
});

export function toggleHose(id: string) {
  const open = openHoses.value;
  openChoice.value = open.includes(id) ? open.filter((h) => h !== id) : [...open, id];
}

/** The set as the engine takes it. */
export const openWanted = computed<string | string[]>(() =>
  openChoice.value === "all" || openChoice.value === "each"
    ? openChoice.value
    : openHoses.value.length
      ? openHoses.value
      : "none",
);

/** Kept for this tab, so that a reload shows the same. */
const now = () => ({ open: openChoice.value, keep: keepFlow.value, second: secondChoice.value });
keepForStation("flow", sessionStorage, now, (text) => {
  const kept = readAs<ReturnType<typeof now>>(text);
  openChoice.value = kept.open ?? "all";
  keepFlow.value = kept.keep ?? "";
  secondChoice.value = kept.second ?? [];
  chosen.value = null;
});
