import { useEffect } from "preact/hooks";
import { keyMeaning, type KeyMeaning } from "../../state/lesson/keys";
import { failures, perform, question, shared } from "../../state/lesson/session";

const typing = (target: EventTarget | null) =>
  target instanceof HTMLElement && /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName);
/** What takes the Space and the Enter key for itself. */
const pressable = (target: EventTarget | null) => target instanceof Element && target.closest("button, a, summary") !== null;

function meaningOf(event: KeyboardEvent): KeyMeaning | null {
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  if ((event.key === " " || event.key === "Enter") && pressable(event.target)) return null;
  return keyMeaning(event.key, {
    place: shared.peek().place,
    failures: failures.peek(),
    form: question.peek()?.form ?? null,
    letters: shared.peek().letters,
  });
}

/** The keys of a lesson, which hold in both of its windows. No other keys work meanwhile. */
export function useLessonKeys(presenter: () => void) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (typing(event.target)) return;
      const meaning = meaningOf(event);
      if (!event.ctrlKey && !event.metaKey) event.stopImmediatePropagation();
      if (!meaning) return;
      event.preventDefault();
      if (meaning.of === "presenter") presenter();
      else perform(meaning);
    };
    addEventListener("keydown", onKey, true);
    return () => removeEventListener("keydown", onKey, true);
  }, [presenter]);
}
