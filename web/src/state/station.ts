import { computed, signal } from "@preact/signals";
import { api, hasKey, listen, Refused } from "../api/client";
import { newest } from "../api/station";
import type { Edit, Part, Station } from "../api/types";
import { capital } from "../draw/words";
import { toast } from "./toast";

/** The open station as the server last told it; null until it has. */
export const station = signal<Station | null>(null);
/** Whether the server answers. */
export const alive = signal(true);
/** True while an edit is on its way. */
export const saving = signal(false);

/** Whether this tab may change the file. Phones read only. */
export const narrow = signal(matchMedia("(max-width: 640px)").matches);
matchMedia("(max-width: 640px)").addEventListener("change", (e) => (narrow.value = e.matches));
export const editable = computed(() => hasKey && !narrow.value && (station.value?.editable ?? false));

export const partOf = (path: string): Part | undefined => station.value?.parts.find((p) => p.path === path);

let queue: Promise<unknown> = Promise.resolve();
/** Writes that are on their way or wait. */
let writing = 0;
/** The latest revision that the server told of. */
let heard = 0;
/** Writes one after the other, so that each knows the revision before it. Their answers bring the station along; what the
 * server tells meanwhile is looked at when the last has ended. */
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  ++writing;
  const next = queue.then(work, work).finally(() => {
    if (--writing === 0 && heard > (station.value?.revision ?? 0)) void fetchStation();
  });
  queue = next.catch(() => undefined);
  return next;
}

async function write(work: (revision: number) => Promise<Station>): Promise<boolean> {
  return inTurn(async () => {
    saving.value = true;
    try {
      station.value = await work(station.value?.revision ?? 0);
      return true;
    } catch (error) {
      if (error instanceof Refused) {
        const now = error.body["station"] as Station | undefined;
        if (now) station.value = now;
        toast(error.status === 409 ? `${error.message.replace(/\.?$/, ".")} Nothing of it was saved.` : error.message);
      } else {
        alive.value = false;
        toast("The server does not answer; the change was not saved.");
      }
      return false;
    } finally {
      saving.value = false;
    }
  });
}

/** One undo step; saved to the file before it resolves. Problems are told in a toast; false then. */
export async function edit(label: string, edits: Edit[]): Promise<boolean> {
  const good = await write((revision) => api.edit(revision, label, edits));
  if (good) toast(`${capital(label)}. Ctrl+Z undoes it.`);
  return good;
}

/** An edit whose problems are the caller's to show: resolves to the message, or null. */
export async function tryEdit(label: string, edits: Edit[]): Promise<string | null> {
  return inTurn(async () => {
    try {
      station.value = await api.edit(station.value?.revision ?? 0, label, edits);
      return null;
    } catch (error) {
      if (!(error instanceof Refused)) {
        alive.value = false;
        return "The server does not answer; the change was not saved.";
      }
      const now = error.body["station"] as Station | undefined;
      if (now) station.value = now;
      return error.first;
    }
  });
}

/** A step back or on. It waits for what is on its way, so that none is lost where keys are faster than answers. */
function step(which: "undo" | "redo", told: string) {
  if (!station.value) return;
  let label: string | null = null;
  void write(async (revision) => {
    label = station.value?.[which] ?? null;
    return label ? api[which](revision) : (station.value as Station);
  }).then((good) => good && label && toast(`${told}: ${label}.`));
}
export const undo = () => step("undo", "Undone");
export const redo = () => step("redo", "Done again");
export const setText = (label: string, text: string) => write((revision) => api.text(revision, label, text));
export const saveAs = (name: string) => write(() => api.saveAs(name));
export const openSite = (name: string) => write(() => api.open(name));
export const newSite = (name: string, template: string) => write(() => api.create(name, template));

async function fetchStation() {
  const shown = station.value;
  try {
    const now = await api.station();
    alive.value = true;
    // What a write brought along meanwhile, or will, is newer.
    if (writing === 0) station.value = newest(shown, station.value, now);
  } catch {
    alive.value = false;
    setTimeout(() => void fetchStation(), 1000);
  }
}

/** How often the records have changed since the page was opened. */
export const recordsRead = signal(0);

/** Hears of runs; see state/runs.ts. */
export const onRun: ((data: Record<string, unknown>) => void)[] = [];

/** Fetches the station and follows what happens to it. */
export function follow() {
  void fetchStation();
  listen(
    {
      station: (data) => {
        heard = Number(data["revision"]);
        if (data["why"] === "outside") toast("The file was changed outside; this is how it stands now.");
        if (writing === 0 && heard !== station.value?.revision) void fetchStation();
      },
      records: () => void ++recordsRead.value,
      run: (data) => onRun.forEach((f) => f(data)),
    },
    (up) => {
      if (up && !alive.value) void fetchStation();
      alive.value = up;
    },
  );
}
