import { signal } from "@preact/signals";

/** What is played: a time scale, and the times at which something happens. */
interface Stage {
  /** s */
  end: number;
  /** In order, s. */
  marks: readonly number[];
  /** Place along the scale from 0 to 1. */
  placeOf(time: number): number;
  timeOf(place: number): number;
}

export const speeds = ["0.1", "1", "10"] as const;
export type Speed = (typeof speeds)[number];

/** The one playhead: everything that moves is a function of it, s. */
export const time = signal(0);
export const playing = signal(false);
export const speed = signal<Speed>("1");

/** Share of the scale that play walks in a second; the same everywhere, as the scale is what is stretched. */
const pace = 0.06;
/** With little motion asked for, each event stands for this long, s. */
const rest = 1.5;

let stage: Stage | null = null;
const little = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** A new scale; the playhead stays where it is while it can. */
export function setStage(next: Stage | null) {
  stage = next;
  if (!next) pause();
  else if (time.value > next.end) time.value = next.end;
}

function pause() {
  playing.value = false;
}

/** To a time; stops play. */
export function seek(to: number) {
  pause();
  if (stage) time.value = Math.min(Math.max(to, 0), stage.end);
}

const next = (now: number) => stage?.marks.find((t) => t > now) ?? stage?.end ?? now;
const previous = (now: number) => stage?.marks.findLast((t) => t < now) ?? 0;

/** To the next event (1) or the one before (-1). */
export const step = (way: 1 | -1) => seek(way > 0 ? next(time.value) : previous(time.value));

/** Moves the playhead by what `seconds` of play walk; true while there is more. */
export function walk(seconds: number): boolean {
  if (!stage) return false;
  const place = stage.placeOf(time.value) + pace * Number(speed.value) * seconds;
  time.value = place >= 1 ? stage.end : stage.timeOf(place);
  return place < 1;
}

function run(last: number) {
  requestAnimationFrame((now) => {
    if (!playing.value) return;
    if (walk(Math.min(0.1, Math.max(0, (now - last) / 1000)))) run(now);
    else pause();
  });
}

function stepOn() {
  setTimeout(
    () => {
      if (!playing.value || !stage) return;
      time.value = next(time.value);
      if (time.value < stage.end) stepOn();
      else pause();
    },
    (1000 * rest) / Math.min(1, Number(speed.value)),
  );
}

export function play() {
  if (!stage || playing.value) return;
  if (time.value >= stage.end) time.value = 0;
  playing.value = true;
  if (little()) stepOn();
  else run(performance.now());
}

export const toggle = () => (playing.value ? pause() : play());
