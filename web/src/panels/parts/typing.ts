import { useEffect, useState } from "preact/hooks";
import type { TargetedEvent } from "preact";

/** Props of an input whose text is committed on Enter or when it is left; Esc puts back what stands. */
export function useTyped(value: string, onCommit: (text: string) => void, list: readonly string[] = []) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const commit = () => {
    if (text.trim() !== value) onCommit(text.trim());
  };
  return {
    value: text,
    autocomplete: "off",
    spellcheck: false,
    onInput: (e: TargetedEvent<HTMLInputElement>) => {
      setText(e.currentTarget.value);
      if (list.includes(e.currentTarget.value)) onCommit(e.currentTarget.value);
    },
    onBlur: commit,
    onKeyDown: (e: KeyboardEvent) => {
      if (e.key === "Enter") commit();
      if (e.key === "Escape") setText(value);
    },
  };
}
