import type { ComponentChildren } from "preact";

/** A segmented choice: one of a few, all in sight. Arrow keys move it. */
export function Seg<T extends string>(props: {
  label: string;
  value: T;
  options: readonly { value: T; text: ComponentChildren; title?: string; disabled?: boolean }[];
  onChange: (value: T) => void;
  class?: string;
}) {
  const move = (event: KeyboardEvent) => {
    const step = event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : event.key === "ArrowLeft" || event.key === "ArrowUp" ? -1 : 0;
    if (!step) return;
    event.preventDefault();
    const open = props.options.filter((o) => !o.disabled);
    const at = open.findIndex((o) => o.value === props.value);
    const next = open[(at + step + open.length) % open.length];
    if (!next) return;
    props.onChange(next.value);
    const box = event.currentTarget as HTMLElement;
    requestAnimationFrame(() => box.querySelector<HTMLElement>("[aria-checked=true]")?.focus());
  };
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
          disabled={o.disabled}
          onClick={() => props.onChange(o.value)}
        >
          {o.text}
        </button>
      ))}
    </div>
  );
}
