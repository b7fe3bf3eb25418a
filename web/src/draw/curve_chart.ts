import type { Clock } from "./clock";
import { leastOf, mostOf, pointsOn, valueAt, type Course } from "./curve";
import type { Band } from "./curve_trace";
import { ticks } from "./numbers";

/** Where a chart draws. */
export interface ChartPlan {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  foot: number;
  /** Named values of the axis, in the unit shown. */
  ticks: number[];
  decimals: number;
  x(time: number): number;
  /** Of a value in the unit shown. */
  y(value: number): number;
}

interface ChartBox {
  width: number;
  height: number;
}

/** The plan of a chart over the clock's time. `shown` brings values into the unit of the axis; nothing is always on it
 * but for scales with a zero of their own. */
export function planOf(
  courses: readonly Course[],
  clock: Clock,
  box: ChartBox,
  shown: (si: number) => number,
  fromZero = true,
): ChartPlan {
  const [left, right, top, foot] = [44, 26, 10, 22];
  const most = Math.max(...courses.map((c) => shown(mostOf(c))), fromZero ? 0 : -Infinity);
  const least = Math.min(...courses.map((c) => shown(leastOf(c))), fromZero ? 0 : Infinity);
  const steps = axis(least, most);
  const [low, high] = [steps[0] ?? 0, steps.at(-1) ?? 1];
  const step = (steps[1] ?? 1) - (steps[0] ?? 0);
  return {
    width: box.width,
    height: box.height,
    left,
    right,
    top,
    foot,
    ticks: steps,
    decimals: decimalsOfStep(step),
    x: (time) => left + clock.placeOf(time) * (box.width - left - right),
    y: (value) => top + (1 - (value - low) / (high - low)) * (box.height - top - foot),
  };
}

/** Few round values from below the least to above the most. */
function axis(least: number, most: number): number[] {
  if (!(most > least)) return ticks(most > 0 ? most : 1, 3);
  const step = ticks(most - least, 3)[1] ?? 1;
  const from = Math.floor(least / step + 1e-9);
  const to = Math.ceil(most / step - 1e-9);
  return Array.from({ length: to - from + 1 }, (_, i) => (from + i) * step);
}

/** Decimals that tell the steps of an axis apart. */
export const decimalsOfStep = (step: number) =>
  [0, 1, 2, 3, 4].find((d) => Math.abs(step - Number(step.toFixed(d))) < 1e-9) ?? 5;

/** The line of a course; it breaks where there is no value. */
export function lineOf(course: Course, plan: ChartPlan, clock: Clock, shown: (si: number) => number): string {
  let pen = "M";
  return pointsOn(course, clock.placeOf, clock.timeOf)
    .map(({ time, value }) => {
      if (Number.isNaN(value)) {
        pen = "M";
        return "";
      }
      const here = `${pen}${plan.x(time).toFixed(1)} ${plan.y(shown(value)).toFixed(1)}`;
      pen = "L";
      return here;
    })
    .join("");
}

/** The area of a band, step by step. */
export function areaOf({ low, high }: Band, plan: ChartPlan, shown: (si: number) => number): string {
  let out = "";
  for (let i = 1; i < low.time.length; i += 2) {
    const [from, to] = [plan.x(low.time[i - 1] ?? 0), plan.x(low.time[i] ?? 0)];
    const [least, most] = [plan.y(shown(low.value[i] ?? 0)), plan.y(shown(high.value[i] ?? 0))];
    out += `M${from.toFixed(1)} ${most.toFixed(1)}H${to.toFixed(1)}V${least.toFixed(1)}H${from.toFixed(1)}Z`;
  }
  return out;
}

/** Where the dot of a course stands at a time; null: the course has no value then. */
export function dotOf(course: Course, plan: ChartPlan, shown: (si: number) => number, t: number) {
  const value = valueAt(course, t);
  return value === null ? null : { x: plan.x(t), y: plan.y(shown(value)) };
}
