import { valueAt } from "../../draw/curve";
import { clockOf, evenClockOf, type Clock } from "../../draw/clock";
import type { ReplayTold, SceneTold } from "./told";

/** A replay on one scale of time. */
export interface Stage extends Clock {
  /** Times of the events of both scenes, s. */
  events: readonly number[];
}

const endOf = (scene: SceneTold) => scene.time_s.at(-1) ?? 0;
/** Over this many times its first event, a replay has a scale whose beginning is stretched. */
const longFor = 40;

/** The scale of time of a replay: stretched at its beginning where much happens there. */
export function stageOf(replay: ReplayTold): Stage {
  const end = Math.max(0, ...replay.scenes.map(endOf));
  const all = replay.scenes.flatMap((scene) => scene.events.map((e) => e.time_s));
  const events = [...new Set(all.filter((t) => t <= end))].sort((a, b) => a - b);
  const first = events.find((t) => t > 0) ?? end;
  return { ...(end > longFor * first ? clockOf(end) : evenClockOf(end)), events };
}

const missing = (values: readonly (number | null)[]) => values.map((v) => v ?? NaN);

/** The value of a course of a scene at a time; what has ended holds. */
export function sceneValue(scene: SceneTold, values: readonly (number | null)[], time: number): number | null {
  return valueAt({ time: scene.time_s, value: missing(values) }, Math.min(time, endOf(scene)));
}

/** What the picture of a scene is drawn from at a time; what has no value then is left out. */
export function sceneValues(scene: SceneTold, time: number): Record<string, number> {
  const told = Object.entries(scene.values).map(([name, values]) => [name, sceneValue(scene, values, time)] as const);
  return Object.fromEntries(told.filter((one): one is [string, number] => one[1] !== null));
}

/** What happened last in a scene. */
export const lastWords = (scene: SceneTold, time: number) =>
  scene.events.filter((e) => e.time_s <= time).at(-1)?.words ?? "";
