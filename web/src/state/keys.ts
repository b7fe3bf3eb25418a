import { letterKeys, selection, select, setUnits, sheet, sheets, turnView, units } from "./look";
import { redo, undo } from "./station";
import { signal } from "@preact/signals";

export const keyListOpen = signal(false);
/** Keys of the sheet that is shown: name -> what it does; a sheet sets them while it is there. */
export const sheetKeys = new Map<string, () => void>();

const typing = (target: EventTarget | null) =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName)) &&
  (target as HTMLInputElement).type !== "range";

function onKey(event: KeyboardEvent) {
  const ctrl = event.ctrlKey || event.metaKey;
  if (ctrl && event.key.toLowerCase() === "z" && !typing(event.target)) {
    event.preventDefault();
    event.shiftKey ? redo() : undo();
    return;
  }
  if (ctrl || event.altKey || typing(event.target) || !letterKeys.value) return;
  const opened = sheets.find((s) => s.key === event.key);
  const own = sheetKeys.get(event.key);
  if (opened) sheet.value = opened.id;
  else if (own) {
    event.preventDefault();
    own();
  } else if (event.key === "[") select(Math.max(1, selection.value.stop - 1));
  else if (event.key === "]") select(Math.min(11, selection.value.stop + 1));
  else if (event.key === "v" || event.key === "V") turnView(event.shiftKey ? -1 : 1);
  else if (event.key === "w") sheet.value = "lesson";
  else if (event.key === "u") setUnits(units.value === "us" ? "si" : "us");
  else if (event.key === "?") keyListOpen.value = !keyListOpen.value;
}

export const listenToKeys = () => addEventListener("keydown", onKey);
