import { effect } from "@preact/signals";
import { station } from "./station";

/** Keeps what is chosen on a sheet, for each station: `restore` gets what was kept when a station is opened, null where
 * nothing was, and `now` is kept with each change. */
export function keepForStation(sheet: string, store: Storage, now: () => object, restore: (kept: string | null) => void) {
  let keptFor = "";
  effect(() => {
    const file = station.value?.file;
    const chosen = JSON.stringify(now());
    if (!file) return;
    const key = `${sheet} ${file}`;
    if (file === keptFor) {
      store.setItem(key, chosen);
      return;
    }
    keptFor = file;
    restore(store.getItem(key));
  });
}

/** What was kept, as far as it can be read. */
export function readAs<K extends object>(kept: string | null): Partial<K> {
  try {
    return JSON.parse(kept ?? "{}") as Partial<K>;
  } catch {
    return {};
  }
}
