import type { ComponentChildren } from "preact";
import { byArrows } from "./arrows";

/** A segmented choice: one of a few, all in sight. Arrow keys move it. */
export function Seg<T extends string>(props: {
  label: string;
  value: T;
  options: readonly { value: T; text: ComponentChildren; title?: string }[];
  onChange: (value: T) => void;
  class?: string;
}) {
  const move = byArrows(props.options.map((o) => o.value), props.value, props.onChange);
  return (
    <div class={`seg ${props.class ?? ""}`} role="radiogroup" aria-label={props.label} onKeyDown={move}>
      {props.options.map((o) => (
        <button
          type="button"
          role="radio"
          key={o.value}
          aria-checked={o.value === props.value}
          tabIndex={o.value === props.value ? 0 : -1}
          title={o.title}
          onClick={() => props.onChange(o.value)}
        >
          {o.text}
        </button>
      ))}
    </div>
  );
}
