import { ticks } from "./numbers";

/** Slowest flow by the number of hoses open, in the unit shown; null: not known. */
type LadderSeries = readonly (number | null)[];
export interface Mark {
  x: number;
  y: number;
}
export interface LadderLayout {
  width: number;
  height: number;
  plot: { left: number; right: number; top: number; foot: number };
  rows: { y: number; value: number }[];
  columns: { x: number; open: number }[];
  a: { path: string; marks: Mark[] };
  b: { path: string; marks: Mark[] };
  /** Where each name stands, parted so that they do not touch. */
  names: { a: Mark; b: Mark } | null;
  /** The number of hoses from which B is worth it. */
  from: number | null;
  keep: number | null;
  /** Its name stands under it at the left, where both lines begin above it. */
  keepUnder: boolean;
}

const margin = { left: 44, right: 34, top: 30, foot: 40 };
const plotHeight = 190;
const nameHeight = 14;

/** Lines of two choices over the number of hoses open, parted where a flow is not known. */
export function ladderLayout(
  a: LadderSeries,
  b: LadderSeries,
  options: { width: number; keep: number | null; from: number | null },
): LadderLayout {
  const steps = Math.max(a.length, b.length);
  const flows = [...a, ...b, options.keep].filter((v) => v !== null);
  const values = ticks(Math.max(...flows, 0));
  const most = values.at(-1) ?? 1;
  const [left, right, top] = [margin.left, options.width - margin.right, margin.top];
  const foot = top + plotHeight;
  const x = (open: number) => (steps < 2 ? (left + right) / 2 : left + ((right - left) * (open - 1)) / (steps - 1));
  const y = (value: number) => foot - (plotHeight * value) / most;
  const series = (all: LadderSeries) => {
    const marks: Mark[] = [];
    let path = "";
    all.forEach((value, i) => {
      if (value === null) return;
      const at = { x: x(i + 1), y: y(value) };
      marks.push(at);
      path += `${path && all[i - 1] !== null ? "L" : "M"}${at.x.toFixed(1)} ${at.y.toFixed(1)}`;
    });
    return { path, marks };
  };
  const [lineA, lineB] = [series(a), series(b)];
  const every = steps > 24 ? 5 : 1;
  return {
    width: options.width,
    height: foot + margin.foot,
    plot: { left, right, top, foot },
    rows: values.map((value) => ({ y: y(value), value })),
    columns: Array.from({ length: steps }, (_, i) => i + 1)
      .filter((open) => every === 1 || open === 1 || open % every === 0)
      .map((open) => ({ x: x(open), open })),
    a: lineA,
    b: lineB,
    names: namesAt(lineA.marks.at(-1), lineB.marks.at(-1)),
    from: options.from === null ? null : x(options.from),
    keep: options.keep === null ? null : y(options.keep),
    keepUnder: [a[0], b[0]].every((first) => (first ?? Infinity) >= (options.keep ?? 0)),
  };
}

function namesAt(a: Mark | undefined, b: Mark | undefined): LadderLayout["names"] {
  if (!a || !b) return null;
  const short = nameHeight - Math.abs(a.y - b.y);
  const push = short > 0 ? short / 2 : 0;
  const sign = a.y <= b.y ? -1 : 1;
  return { a: { x: a.x + 10, y: a.y + 4 + sign * push }, b: { x: b.x + 10, y: b.y + 4 - sign * push } };
}
