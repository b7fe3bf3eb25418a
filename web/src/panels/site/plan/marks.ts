import type { PlanFrame } from "../../../draw/plan";

/** The engine's plan: its size, where meters stand in it, and what it draws. */
export interface DrawnPlan {
  svg: string;
  width: number;
  height: number;
  frame: PlanFrame;
  /** Paths of the parts that it draws. */
  marked: ReadonlySet<string>;
}

/** Reads a plan; null where it does not tell its scale. */
export function readPlan(svg: string): DrawnPlan | null {
  const root = new DOMParser().parseFromString(svg, "text/html").querySelector("svg");
  const [, , width = NaN, height = NaN] = root?.getAttribute("viewBox")?.split(/\s+/).map(Number) ?? [];
  const told = (name: string) => Number(root?.getAttribute(`data-${name}`) ?? NaN);
  const frame = { scale: told("px-per-m"), left: told("x0"), top: told("y0") };
  if (!root || ![width, height, ...Object.values(frame)].every(Number.isFinite)) return null;
  const marks = [...root.querySelectorAll("[data-part][data-x]")].map((g) => g.getAttribute("data-part") ?? "");
  return { svg, width, height, frame, marked: new Set(marks) };
}
