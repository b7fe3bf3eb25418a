import { signal, type ReadonlySignal } from "@preact/signals";
import { api, Refused } from "../api/client";
import type { Edit, Want } from "../api/types";
import { alive, onRun, station } from "./station";

type RunState = "none" | "running" | "done" | "stopped" | "failed";

/** A long run as it stands. */
interface LongRun<A> {
  state: RunState;
  /** Of the work that is done, from 0 to 1. */
  share: number;
  answer: A | null;
  /** What the answer belongs to. */
  revision: number;
  want: Want | null;
  error: string;
}

const idle = { state: "none", share: 0, answer: null, revision: 0, want: null, error: "" } as const;

/** A run in the server that takes longer than a look; one at a time. */
export function longRun<A>(): {
  now: ReadonlySignal<LongRun<A>>;
  start(want: Want, edits?: Edit[]): void;
  stop(): void;
} {
  const now = signal<LongRun<A>>(idle);
  let id: number | null = null;
  let asked = 0;

  const end = (with_: Partial<LongRun<A>>) => {
    id = null;
    now.value = { ...now.value, ...with_ };
  };
  const fail = (error: unknown) => {
    if (!(error instanceof Refused)) alive.value = false;
    end({ state: "failed", error: error instanceof Error ? error.message : String(error) });
  };

  /** Looks how far it is; events come sooner, this is for those that are lost. */
  const look = async (run: number) => {
    try {
      const told = await api.run<A>(run);
      if (id !== run) return;
      if (told.done || told.cancelled) {
        end({ state: told.cancelled ? "stopped" : "done", share: told.share, answer: told.answer ?? null });
      } else {
        now.value = { ...now.value, share: told.share };
        setTimeout(() => void look(run), 1000);
      }
    } catch (error) {
      if (id === run) fail(error);
    }
  };

  onRun.push((data) => {
    if (id === null || Number(data["run"]) !== id) return;
    if (data["done"]) void look(id);
    else now.value = { ...now.value, share: Number(data["share"]) };
  });

  return {
    now,
    start(want, edits = []) {
      const turn = ++asked;
      if (id !== null) void api.stopRun(id).catch(() => undefined);
      id = null;
      const revision = station.value?.revision ?? 0;
      now.value = { ...idle, state: "running", want, revision };
      api
        .startRun(revision, want, edits)
        .then(({ run }) => {
          if (turn !== asked) return void api.stopRun(run).catch(() => undefined);
          id = run;
          return look(run);
        })
        .catch((error: unknown) => turn === asked && fail(error));
    },
    stop() {
      ++asked;
      const run = id;
      end({ state: "stopped" });
      if (run !== null) void api.stopRun(run).catch(() => undefined);
    },
  };
}
