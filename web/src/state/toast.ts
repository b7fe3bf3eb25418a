import { signal } from "@preact/signals";

export const toastText = signal("");
let timer: ReturnType<typeof setTimeout> | undefined;

/** A short line at the foot of the page. */
export function toast(text: string) {
  toastText.value = text;
  clearTimeout(timer);
  timer = setTimeout(() => (toastText.value = ""), 6000);
}
