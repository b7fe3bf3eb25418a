import type { Part } from "../../../api/types";
import { decimalsApart, decimalsOf, valueIn, withUnit, type UnitSystem } from "../../../draw/numbers";
import type { HoseTold, StateTold } from "./documents";

/** A hose as the table shows it. */
export interface HoseRow {
  id: string;
  dispenser: string;
  /** First of its dispenser. */
  first: boolean;
  products: string[];
  told: HoseTold | null;
  /** Why its flow is not known. */
  reason: string | null;
}

const dispenserOf = (hose: Part) => hose.of?.split(".").at(-1) ?? "";

/** Every hose of the station with what the state says of it; a blended one stands in several systems. */
export function hoseRows(hoses: readonly Part[], state: StateTold | null): HoseRow[] {
  let before = "";
  return hoses.map((part) => {
    const fed = state?.systems.filter((s) => s.hoses.some((h) => h.id === part.id)) ?? [];
    const told = fed.flatMap((s) => s.hoses).find((h) => h.id === part.id) ?? null;
    const dispenser = told?.dispenser ?? dispenserOf(part);
    const products = fed.map((s) => s.product).filter((p) => p !== null);
    const row: HoseRow = {
      id: part.id,
      dispenser,
      first: dispenser !== before,
      products: products.length ? products : part.product ? [part.product] : [],
      told,
      reason: fed.map((s) => s.reason).find((r) => r !== null) ?? null,
    };
    before = dispenser;
    return row;
  });
}

/** Decimals of the column of flows: as many as tell each apart from what it misses. */
export function flowDecimals(rows: readonly HoseRow[], keep: number | null, units: UnitSystem): number {
  const apart = rows.flatMap(({ told }) => {
    const flow = told?.hose_flow_m3_per_s ?? null;
    if (!told?.open || flow === null) return [];
    const missed = [told.below_keep_flow ? keep : null, told.above_rule_cap ? told.rule_cap_m3_per_s : null];
    return missed.filter((m) => m !== null).map((m) => decimalsApart("flow", units, flow, m));
  });
  return Math.max(decimalsOf("flow", units), ...apart);
}

/** What is to be said of an open hose beside its flow. */
export function hoseNotes(hose: HoseTold, keep: number | null, units: UnitSystem): string[] {
  const out: string[] = [];
  const flow = (si: number | null) => withUnit("flow", units, si);
  if (hose.at_limit) out.push(`held by its limiter, ${flow(hose.limit_m3_per_s)}`);
  if (hose.above_rule_cap) {
    out.push(`over the cap of ${flow(hose.rule_cap_m3_per_s)}${hose.rule_clause ? `, ${hose.rule_clause}` : ""}`);
  }
  if (hose.below_keep_flow) out.push(`below ${flow(keep)}`);
  if (!hose.ratio_met) out.push("its blend is not met");
  return out;
}

/** Right end of the bars: the most that any hose gives, or is asked to. In the unit shown. */
export function barEnd(rows: readonly HoseRow[], keep: number | null, units: UnitSystem): number {
  const all = rows.flatMap(({ told }) => [told?.hose_flow_m3_per_s ?? 0, told?.hose_flow_high_m3_per_s ?? 0]);
  return valueIn("flow", units, Math.max(...all, keep ?? 0, 0)) || 1;
}
