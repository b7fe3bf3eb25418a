import { beforeEach, expect, test, vi } from "vitest";
import { clockOf } from "../../src/draw/clock";
import * as player from "../../src/state/player";

const clock = clockOf(100);
let little = false;

beforeEach(() => {
  little = false;
  vi.stubGlobal("matchMedia", () => ({ matches: little }));
  vi.stubGlobal("requestAnimationFrame", () => 0);
  player.speed.value = "1";
  player.setStage({ ...clock, marks: [0, 0.1, 5, 100] });
  player.seek(0);
});

test("steps go from event to event and to the ends", () => {
  const seen: number[] = [];
  for (let i = 0; i < 4; ++i) {
    player.step(1);
    seen.push(player.time.value);
  }
  expect(seen).toEqual([0.1, 5, 100, 100]);
  player.seek(7);
  player.step(-1);
  expect(player.time.value).toBe(5);
});

test("play walks evenly along the stretched scale", () => {
  const places: number[] = [];
  for (let i = 0; i < 5; ++i) {
    player.walk(1);
    places.push(clock.placeOf(player.time.value));
  }
  places.slice(1).forEach((p, i) => expect(p - places[i]!).toBeCloseTo(places[0]!, 9));
  player.speed.value = "10";
  expect(player.walk(1)).toBe(true);
  expect(player.walk(1)).toBe(false);
  expect(player.time.value).toBe(100);
});

test("a seek stops play, and play at the end begins anew", () => {
  player.seek(100);
  player.toggle();
  expect(player.playing.value).toBe(true);
  expect(player.time.value).toBe(0);
  player.seek(3);
  expect(player.playing.value).toBe(false);
});

test("with little motion asked for, play goes from event to event", () => {
  little = true;
  vi.useFakeTimers();
  player.play();
  const seen: number[] = [];
  for (let i = 0; i < 3; ++i) {
    vi.advanceTimersByTime(1500);
    seen.push(player.time.value);
  }
  vi.useRealTimers();
  expect(seen).toEqual([0.1, 5, 100]);
  expect(player.playing.value).toBe(false);
});

test("a shorter scale takes the playhead along", () => {
  player.seek(80);
  player.setStage({ ...clockOf(60), marks: [0] });
  expect(player.time.value).toBe(60);
});
