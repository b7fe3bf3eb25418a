import type { Clock } from "./clock";
import type { Happening, Played } from "./curve_trace";

/** Events of a run that lie so close on its track that they are one mark. */
interface TrackMark {
  x: number;
  /** Of its first event, s. */
  time: number;
  events: Happening[];
}

/** The marks of a run on a track from `left` to `right`. */
export function marksOf(trace: Played, clock: Clock, left: number, right: number, apart = 13): TrackMark[] {
  const out: TrackMark[] = [];
  for (const event of trace.events) {
    const x = left + clock.placeOf(event.time_s) * (right - left);
    const before = out.at(-1);
    if (before && x - before.x < apart) before.events.push(event);
    else out.push({ x, time: event.time_s, events: [event] });
  }
  return out;
}

/** An event of the list: who has it, and of which run it is told. */
interface ListedEvent {
  who: "A" | "B" | "both";
  event: Happening;
}

/** The events of both choices in one list; those that both have at the same time stand there once. */
export function listed(a: Played, b: Played | null): ListedEvent[] {
  const key = (e: Happening) => `${e.time_s} ${e.what}`;
  const inB = new Set(b?.events.map(key));
  const inA = new Set(a.events.map(key));
  const out: ListedEvent[] = a.events.map((event) => ({ who: !b || inB.has(key(event)) ? "both" : "A", event }));
  for (const event of b?.events ?? []) if (!inA.has(key(event))) out.push({ who: "B", event });
  return out.sort((x, y) => x.event.time_s - y.event.time_s);
}
