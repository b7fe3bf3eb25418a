import { useEffect, useRef, useState } from "preact/hooks";

const lost = () => document.activeElement === null || document.activeElement === document.body;

/** Gives the focus back to what had it, when this goes. */
export function useReturnFocus() {
  const [before] = useState(() => document.activeElement);
  useEffect(() => {
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
}

/** When what had the focus in this box is gone, the focus goes to `to`, so that the keyboard stays in place. */
export function useKeepFocus<E extends HTMLElement>(to: string) {
  const box = useRef<E>(null);
  const inside = useRef(false);
  useEffect(() => {
    const watch = (e: Event) => {
      inside.current = e.target instanceof Node && (box.current?.contains(e.target) ?? false);
    };
    addEventListener("focusin", watch);
    addEventListener("pointerdown", watch);
    return () => {
      removeEventListener("focusin", watch);
      removeEventListener("pointerdown", watch);
    };
  }, []);
  useEffect(() => {
    if (inside.current && lost()) box.current?.querySelector<HTMLElement>(to)?.focus({ preventScroll: true });
  });
  return box;
}
