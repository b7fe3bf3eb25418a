import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

/** Scrolls in a box of its own; the keyboard stops at it only while there is something to scroll. */
export function Scroll(props: { label: string; class?: string; children: ComponentChildren }) {
  const box = useRef<HTMLDivElement>(null);
  const [over, setOver] = useState(false);
  useEffect(() => {
    const at = box.current;
    if (!at) return undefined;
    const watch = new ResizeObserver(() =>
      setOver(at.scrollWidth > at.clientWidth + 1 || at.scrollHeight > at.clientHeight + 1),
    );
    watch.observe(at);
    if (at.firstElementChild) watch.observe(at.firstElementChild);
    return () => watch.disconnect();
  }, []);
  return (
    <div
      ref={box}
      class={props.class ?? "scroll"}
      role="group"
      aria-label={props.label}
      tabIndex={over ? 0 : undefined}
    >
      {props.children}
    </div>
  );
}
