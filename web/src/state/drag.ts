/** A part on its way over the plan: shown and computed at once, saved as one undo step when it is put down. */
import { signal } from "@preact/signals";
import { positionText, snap, gridOf, type Point } from "../draw/plan";
import type { Part } from "../api/types";
import { preview } from "./ask";
import { units } from "./look";
import { edit, station } from "./station";

interface Moving {
  path: string;
  /** Where it stood, m. */
  from: Point;
  at: Point;
  /** Center lines of others that it stands on, m; null: none. */
  x: number | null;
  y: number | null;
}

/** The part that is being moved; null: none is. */
export const moving = signal<Moving | null>(null);

export const siteOf = (part: Part): Point | null =>
  part.position ? { x: part.position.x_m, y: part.position.y_m } : null;

/** Every part with a position of its own. */
export const placed = (parts: readonly Part[]) => parts.filter((p) => p.position !== null);

/** Every part that could have a position of its own and has none. */
export const unplaced = (parts: readonly Part[]) =>
  parts.filter((p) => p.position === null && p.fields.some((f) => f.key === "position" && f.text === null));

const others = (path: string): Point[] =>
  placed(station.value?.parts ?? []).flatMap((p) => (p.path === path ? [] : (siteOf(p) ?? [])));

function show(next: Moving) {
  const now = moving.value;
  const same = now?.path === next.path && now.at.x === next.at.x && now.at.y === next.at.y;
  moving.value = next;
  if (!same) preview.value = [{ path: `${next.path}.position`, value: positionText(next.at, units.value) }];
}

export function pickUp(part: Part) {
  const from = siteOf(part);
  if (from && !moving.value) moving.value = { path: part.path, from, at: from, x: null, y: null };
}

/** To where the pointer is, snapped. */
export function carry(to: Point, fine: boolean) {
  const now = moving.value;
  if (now) show({ ...now, ...snap(to, others(now.path), units.value, fine) });
}

/** By steps of the grid. */
export function step(right: number, up: number, fine: boolean) {
  const now = moving.value;
  if (!now) return;
  const size = gridOf(units.value, fine);
  show({ ...now, at: { x: now.at.x + right * size, y: now.at.y + up * size }, x: null, y: null });
}

/** Back to where it stood. */
export function putBack() {
  moving.value = null;
  preview.value = [];
}

/** Saves where it stands, as one undo step. */
export async function putDown() {
  const now = moving.value;
  if (!now) return;
  if (now.at.x !== now.from.x || now.at.y !== now.from.y) {
    const id = now.path.slice(now.path.indexOf(".") + 1);
    await edit(`move ${id}`, [{ path: `${now.path}.position`, value: positionText(now.at, units.value) }]);
  }
  if (moving.value === now) putBack();
}
