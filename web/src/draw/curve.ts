/** Something that changes over time, between its points in a straight line. */
export interface Course {
  /** Never falls; the same time twice is a step, s. */
  time: readonly number[];
  /** Not a number: there is none at that point. */
  value: readonly number[];
}

/** Place of the last point at or before a time; -1: there is none. */
function lastAt(time: readonly number[], t: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time[middle] ?? Infinity) <= t) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

const orNull = (value: number) => (Number.isNaN(value) ? null : value);

/** The value at a time, at a step the one after it; null where the course has not begun or has ended, and beside points
 * that have none.
 *
 * Everything that is shown of an incident goes through here, so that scene, clock, table and charts agree. */
export function valueAt(course: Course, t: number): number | null {
  const at = lastAt(course.time, t);
  const [t0, v0] = [course.time[at], course.value[at]];
  if (t0 === undefined || v0 === undefined) return null;
  if (t === t0) return orNull(v0);
  const [t1, v1] = [course.time[at + 1], course.value[at + 1]];
  return t1 === undefined || v1 === undefined ? null : orNull(v0 + ((v1 - v0) * (t - t0)) / (t1 - t0));
}

/** The value at the end. */
export const finalOf = (course: Course): number | null => orNull(course.value.at(-1) ?? NaN);

const told = (course: Course) => course.value.filter((v) => !Number.isNaN(v));
export const leastOf = (course: Course) => told(course).reduce((a, b) => Math.min(a, b), Infinity);
export const mostOf = (course: Course) => told(course).reduce((a, b) => Math.max(a, b), -Infinity);

/** True if the course never leaves one value. */
export const isFlat = (course: Course) =>
  mostOf(course) - leastOf(course) <= 1e-9 * Math.max(Math.abs(mostOf(course)), 1e-9);

/** True if both have the same value at every time of either, within a share of the greatest. */
export function same(a: Course, b: Course, within = 1e-9): boolean {
  if (a === b) return true;
  const size = Math.max(mostOf(a), -leastOf(a), mostOf(b), -leastOf(b), 1e-12);
  if (a.time[0] !== b.time[0] || a.time.at(-1) !== b.time.at(-1)) return false;
  return [...a.time, ...b.time].every((t) => {
    const [va, vb] = [valueAt(a, t), valueAt(b, t)];
    return va === vb || (va !== null && vb !== null && Math.abs(va - vb) <= within * size);
  });
}

/** Points to draw a course on a scale that is not even: its own, and more where they lie far apart, so that the line
 * runs where `valueAt` says. */
export function pointsOn(course: Course, placeOf: (t: number) => number, timeOf: (place: number) => number) {
  const widest = 1 / 200;
  const out: { time: number; value: number }[] = [];
  course.time.forEach((time, i) => {
    const before = course.time[i - 1];
    if (before !== undefined) {
      const [from, to] = [placeOf(before), placeOf(time)];
      const parts = Math.ceil((to - from) / widest);
      for (let k = 1; k < parts; ++k) {
        const between = timeOf(from + ((to - from) * k) / parts);
        const value = valueAt(course, between);
        if (value !== null && between > before && between < time) out.push({ time: between, value });
      }
    }
    out.push({ time, value: course.value[i] ?? NaN });
  });
  return out;
}
