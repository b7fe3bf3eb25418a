import { computed, signal } from "@preact/signals";
import type { DrawingAnswer, ErrorAnswer, Want } from "../../api/types";
import { useStanding, type Question, type Standing } from "../../state/ask";
import { chosenHose, keepFlow, openWanted, secondChoice, secondEdits } from "../../state/hoses";
import { product, units } from "../../state/look";
import type { CompareDocument, FlowDocument, HoseTold, StateTold, SystemTold, Told } from "./told/documents";
import { documentOf } from "./told/documents";

/** Room for a drawing [px]; the engine lays out for it. */
export const drawWidth = signal(920);

const asked = () => ({
  open: openWanted.value,
  ...(keepFlow.value ? { keep: keepFlow.value } : {}),
  units: units.value,
});

const flowWant = (parts: string[]): Want => ({ study: "flow", ...asked(), parts });

/** The least the engine lays out for [px]. */
const narrowest = 328;
const drawing = (name: string, width: number, of: "a" | "b" = "a"): Want => ({
  drawing: name,
  prefix: `${of}-${name}`, // ids stand once in a page
  product: product.value,
  ...(chosenHose.value && name !== "ladder" ? { hose: chosenHose.value } : {}),
  ...asked(),
  width: Math.max(narrowest, width),
});

export type Drawn = DrawingAnswer | ErrorAnswer;
export type Answer = Told<FlowDocument> | Drawn;

const withB = () => secondEdits.value.length > 0;
/** Beside B there is half the room, where there is room for two. */
export const beside = computed(() => withB() && drawWidth.value > 860);
const between = 36;
const courseWidth = computed(() => (beside.value ? Math.floor((drawWidth.value - between) / 2) : drawWidth.value));
/** On a narrow screen the pressures along a course would touch each other; the grade line scrolls in its box instead. */
const leastCourse = 600;
const gradeWidth = computed(() => (beside.value ? courseWidth.value : Math.max(leastCourse, courseWidth.value)));

const course = (of: "a" | "b"): Want[] => [
  flowWant(["systems", "states"]),
  drawing("grade-line", gradeWidth.value, of),
  drawing("budget", courseWidth.value, of),
];

export const useA = (): Standing<Answer> => useStanding(() => ({ wants: course("a") }));
export const useB = (): Standing<Answer> =>
  useStanding((): Question | null => (withB() ? { wants: course("b"), edits: secondEdits.value } : null));
export const useLong = (): Standing<Answer> =>
  useStanding(() => ({
    wants: [
      flowWant(["systems", "ladders", "worst_states", "spans", "lines_at_rest"]),
      drawing("ladder", drawWidth.value),
    ],
  }));
export const useCompared = (): Standing<Told<CompareDocument>> =>
  useStanding((): Question | null =>
    withB()
      ? { wants: [{ study: "compare", sets: secondChoice.value.map((c) => `${c.path}=${c.value}`), ...asked() }] }
      : null,
  );

/** The first state told: the set that was asked for. */
export const stateOf = (answer: unknown): StateTold | null =>
  documentOf<FlowDocument>(answer)?.result.states?.[0] ?? null;

/** The piping that a product stands in: its own, or one that it shares. */
export const ofProduct = <T>(all: readonly T[], id: (one: T) => string, product: string): T | null =>
  all.find((one) => id(one) === product) ?? all.find((one) => id(one).split(" + ").includes(product)) ?? null;

export const systemOf = (state: StateTold | null, id: string): SystemTold | null =>
  state?.systems.find((s) => s.product === id) ?? ofProduct(state?.systems ?? [], (s) => s.id, id);

/** Of those alike to a millionth, the first. */
export function slowestOf(system: SystemTold | null): HoseTold | null {
  let least: HoseTold | null = null;
  for (const hose of system?.hoses ?? []) {
    if (!hose.open || hose.hose_flow_m3_per_s === null) continue;
    if (!least || hose.hose_flow_m3_per_s < (least.hose_flow_m3_per_s ?? 0) * (1 - 1e-6)) least = hose;
  }
  return least;
}

/** The hose whose course is drawn. */
export const shownHose = (system: SystemTold | null, chosen: string | null): HoseTold | null =>
  chosen === null ? slowestOf(system) : (system?.hoses.find((h) => h.id === chosen) ?? null);
