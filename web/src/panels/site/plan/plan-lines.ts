import type { Part } from "../../../api/types";
import type { Point } from "../../../draw/plan";
import { siteOf } from "../../../state/drag";
import { station } from "../../../state/station";

const valueOf = (part: Part, key: string) => part.fields.find((f) => f.key === key)?.text?.slice(1, -1) ?? "";

/** Ids of the places that move with a part: a pump or branch itself, the inlets of a dispenser. */
function placesOf(path: string): string[] {
  const all = station.value?.parts ?? [];
  const own = all.find((p) => p.path === path);
  const isOnTank = (p: Part) => p.kind === "pump" && !p.position && valueOf(p, "tank") === own?.id;
  if (own?.kind === "tank") return all.filter(isOnTank).map((p) => p.id);
  return all.filter((p) => p.path === path || (p.kind === "inlet" && p.of === path)).map((p) => p.id);
}

const ends = (line: Part) => [valueOf(line, "from"), valueOf(line, "to")];
const linesThere = (path: string) => {
  const places = placesOf(path);
  return (station.value?.parts ?? []).filter((p) => p.kind === "line" && ends(p).some((e) => places.includes(e)));
};
export const linesOf = (path: string) => linesThere(path).map((l) => l.path);

/** Where the other ends of its lines are. */
export function farEnds(path: string, parts: readonly Part[]): Point[] {
  const places = placesOf(path);
  return linesThere(path).flatMap((line) => {
    const far = ends(line).find((e) => !places.includes(e)) ?? "";
    const at = parts.find((p) => p.path !== path && placesOf(p.path).includes(far));
    return (at && siteOf(at)) ?? [];
  });
}

/** A line drawn straight from end to end. */
export interface Run {
  path: string;
  tone: string;
  /** Lines of several products between the same places lie side by side: −1, 0, 1, ... */
  lane: number;
  from: Point;
  to: Point;
}

/** Every line whose two ends stand on the plan. */
export function straightRuns(parts: readonly Part[]): Run[] {
  const all = station.value?.parts ?? [];
  const places = new Map(parts.flatMap((p) => placesOf(p.path).map((id) => [id, siteOf(p)] as const)));
  const products = station.value?.products ?? [];
  return all.flatMap((line) => {
    if (line.kind !== "line") return [];
    const [from, to] = ends(line).map((id) => places.get(id) ?? null);
    const index = products.findIndex((p) => p.id === line.product);
    const lane = index < 0 ? 0 : index - Math.floor(products.length / 2);
    return from && to ? [{ path: line.path, tone: products[index]?.tone ?? "", lane, from, to }] : [];
  });
}
