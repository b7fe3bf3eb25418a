import { computed, signal } from "@preact/signals";
import type { Edit, Want } from "../../../api/types";
import { keepForStation, readAs } from "../../../state/kept";
import { units } from "../../../state/look";
import { station } from "../../../state/station";
import { entriesOf, placesOf, type Ask, type Entry } from "./kinds";

/** What one of the two choices shows: a run of the asked incident; a barrier that is there and does not act; another
 * value of the station. */
export type Choice =
  | { is: "run"; name: string }
  | { is: "dead"; barrier: string; time: string }
  | { is: "edit"; path: string; value: string };

/** What is asked of an incident beyond what the file says; empty: as the file says. */
interface Asked {
  at: string;
  open: string[] | null;
  stop_at: string;
  for: string;
  open_area: string;
}
const nothing: Asked = { at: "", open: null, stop_at: "", for: "", open_area: "" };

export const entries = computed<Entry[]>(() => entriesOf(station.value?.parts ?? []));
const pickedKey = signal("");
export const entry = computed<Entry | undefined>(
  () => entries.value.find((e) => e.key === pickedKey.value) ?? entries.value.find((e) => e.said) ?? entries.value[0],
);
const askedOf = signal<Record<string, Asked>>({});
export const asked = computed<Asked>(() => askedOf.value[entry.value?.key ?? ""] ?? nothing);

/** Null: chosen by what shows most. */
export const choiceA = signal<Choice | null>(null);
export const choiceB = signal<Choice | null>(null);
/** Whether there is a second choice. */
export const twoChoices = signal(true);

export function pick(key: string) {
  if (key === entry.value?.key) return;
  pickedKey.value = key;
  choiceA.value = null;
  choiceB.value = null;
}

export function ask(change: Partial<Asked>) {
  const key = entry.value?.key ?? "";
  askedOf.value = { ...askedOf.value, [key]: { ...asked.value, ...change } };
}

/** Where it happens: as asked, as the file says, or the first place there is. */
export const place = computed<string>(() => {
  const e = entry.value;
  if (!e) return "";
  return asked.value.at || e.said?.["at"] || placesOf(e.kind, station.value?.parts ?? [])[0]?.id || "";
});

/** What is asked now, without what the second choice changes; null: nothing can be. */
export const want = computed<Want | null>(() => {
  const e = entry.value;
  if (!e) return null;
  const a = asked.value;
  const given = (key: Ask, value: string) => (e.kind.asks.includes(key) && value ? { [key]: value } : {});
  return {
    study: "incident",
    kind: e.kind.id,
    units: units.value,
    ...(e.said?.["id"] ? { id: e.said["id"] } : {}),
    ...(a.at || !e.said?.["at"] ? { at: place.value } : {}),
    ...(a.open && e.kind.asks.includes("open") ? { open: a.open } : {}),
    ...given("stop_at", a.stop_at),
    ...given("for", a.for),
    ...given("open_area", a.open_area),
  };
});

/** What the second choice asks on its own; null: it is a run of the first, or not complete. */
export const secondAsk = computed<{ want: Want; edits: Edit[] } | null>(() => {
  const [b, w] = [choiceB.value, want.value];
  if (!b || !w || !twoChoices.value) return null;
  if (b.is === "dead" && b.barrier) {
    return { want: { ...w, dead: [b.time ? `${b.barrier}=${b.time}` : b.barrier] }, edits: [] };
  }
  return b.is === "edit" && b.path && b.value ? { want: w, edits: [{ path: b.path, value: b.value }] } : null;
});

/** Kept for this tab, so that a reload shows the same. */
const now = () => ({
  key: pickedKey.value,
  asked: askedOf.value,
  a: choiceA.value,
  b: choiceB.value,
  two: twoChoices.value,
});
keepForStation("incident", sessionStorage, now, (text) => {
  const kept = readAs<ReturnType<typeof now>>(text);
  pickedKey.value = kept.key ?? "";
  askedOf.value = kept.asked ?? {};
  choiceA.value = kept.a ?? null;
  choiceB.value = kept.b ?? null;
  twoChoices.value = kept.two ?? true;
});
