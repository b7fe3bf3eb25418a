import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

interface MenuItem {
  text: ComponentChildren;
  onChoose: () => void;
  disabled?: boolean;
  /** A line above it. */
  apart?: boolean;
}

/** A button with a list under it. Arrow keys move in it, Esc shuts it. */
export function Menu(props: { name: ComponentChildren; items: readonly MenuItem[]; class?: string; button?: string }) {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const focusAt = (index: number) => {
    const all = [...(box.current?.querySelectorAll<HTMLElement>("[role=menuitem]:not([disabled])") ?? [])];
    all[(index + all.length) % all.length]?.focus();
  };
  const shut = (back: boolean) => {
    setOpen(false);
    if (back) box.current?.querySelector<HTMLElement>("[aria-haspopup]")?.focus();
  };
  useEffect(() => {
    if (!open) return;
    focusAt(0);
    const outside = (e: PointerEvent) => {
      if (!box.current?.contains(e.target as Node)) setOpen(false);
    };
    addEventListener("pointerdown", outside);
    return () => removeEventListener("pointerdown", outside);
  }, [open]);
  const move = (event: KeyboardEvent) => {
    const all = [...(box.current?.querySelectorAll<HTMLElement>("[role=menuitem]:not([disabled])") ?? [])];
    const at = all.indexOf(document.activeElement as HTMLElement);
    const steps: Record<string, number> = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 };
    const to = steps[event.key];
    if (event.key === "Tab") setOpen(false);
    if (event.key === "Escape") shut(true);
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    focusAt(to);
  };
  return (
    <div class={`menubox ${props.class ?? ""}`} ref={box}>
      <button
        type="button"
        class={`btn ${props.button ?? ""}`}
        aria-haspopup="menu"
        aria-expanded={open}
        onClick={() => setOpen(!open)}
        onKeyDown={(e) => {
          if (e.key !== "ArrowDown") return;
          e.preventDefault();
          setOpen(true);
        }}
      >
        {props.name}
      </button>
      {open && (
        <div class="menu" role="menu" onKeyDown={move}>
          {props.items.map((item, i) => (
            <button
              key={i}
              type="button"
              role="menuitem"
              tabIndex={i === 0 ? 0 : -1}
              class={item.apart ? "apart" : ""}
              disabled={item.disabled}
              onClick={() => {
                shut(true);
                item.onChoose();
              }}
            >
              {item.text}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}
