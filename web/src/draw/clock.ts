/** A time scale. */
export interface Clock {
  /** When counting ends, s. */
  end: number;
  /** Times that an axis may name, s. */
  marks: readonly number[];
  /** From 0 at the beginning to 1 at the end. */
  placeOf(time: number): number;
  timeOf(place: number): number;
}

const day = 86400;
const stretchedMarks = [0, 0.1, 1, 10, 60, 600, 3600, 6 * 3600, day, 7 * day, 30 * day, 365 * day];

/** Below this time the scale is nearly even, above it nearly logarithmic, s. */
const knee = 0.05;

/** The time scale of an incident: its first second is stretched, so that what happens in it can be seen. */
export function clockOf(end: number): Clock {
  const whole = Math.log1p(end / knee);
  return {
    end,
    marks: stretchedMarks,
    placeOf: (time) => (end > 0 ? Math.log1p(Math.min(Math.max(time, 0), end) / knee) / whole : 0),
    timeOf: (place) => Math.min(end, knee * Math.expm1(Math.min(Math.max(place, 0), 1) * whole)),
  };
}

const evenSteps = [1, 2, 5, 10, 20, 60, 120, 300, 600, 1200, 3600, 2 * 3600, 6 * 3600];
/** An axis of an even scale names no more times than this. */
const mostMarks = 8;

/** A time scale that runs evenly. */
export function evenClockOf(end: number): Clock {
  const step = evenSteps.find((s) => end / s <= mostMarks) ?? end / mostMarks;
  return {
    end,
    marks: Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, i) => i * step),
    placeOf: (time) => (end > 0 ? Math.min(Math.max(time, 0), end) / end : 0),
    timeOf: (place) => Math.min(Math.max(place, 0), 1) * end,
  };
}

/** Times that an axis names; those that would stand on the one before are left out. */
export function ticksOf(clock: Clock, least = 0.07): number[] {
  const out: number[] = [];
  for (const time of clock.marks) {
    const before = out.at(-1);
    if (time > clock.end) break;
    if (before === undefined || clock.placeOf(time) - clock.placeOf(before) >= least) out.push(time);
  }
  return out;
}

const nbsp = "\u00A0";

export function tickText(time: number): string {
  if (time === 0) return "0";
  if (time < 1) return `${Math.round(time * 1000)}${nbsp}ms`;
  if (time < 60 || (time < 3600 && time % 60)) return clockText(time).replace(/\.0(?=\D)/, "");
  if (time < 3600) return `${time / 60}${nbsp}min`;
  return time < day ? `${time / 3600}${nbsp}h` : `${time / day}${nbsp}d`;
}

/** A time as the clock shows it: "40 ms", "8.0 s", "1 min 05 s", "2.3 h", "4.5 d". */
export function clockText(time: number): string {
  if (time < 0.9995) return `${Math.round(time * 1000)}${nbsp}ms`;
  if (time < 9.95) return `${time.toFixed(1)}${nbsp}s`;
  if (time < 119.5) return `${Math.round(time)}${nbsp}s`;
  const seconds = Math.round(time);
  const rest = seconds % 60 ? ` ${String(seconds % 60).padStart(2, "0")}${nbsp}s` : "";
  if (seconds < 5400) return `${Math.floor(seconds / 60)}${nbsp}min${rest}`;
  return time < 2 * day ? `${(time / 3600).toFixed(1)}${nbsp}h` : `${(time / day).toFixed(1)}${nbsp}d`;
}

/** That the scale of a delivery is not that of an incident. */
export const evenText = "The time scale runs evenly.";

/** What the scale does to the first second, in words. */
export function stretchedText(clock: Clock): string {
  if (clock.end <= 1) return "The scale is stretched at its beginning.";
  const share = Math.round(100 * clock.placeOf(1));
  return `The first second is stretched: it takes ${share} % of the time scale.`;
}
