import type { ComponentChildren, RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

interface ScrollProps {
  label: string;
  class?: string;
  /** What is to stay in sight when it changes place, as a selector. */
  follow?: string;
  children: ComponentChildren;
}

/** Scrolls in a box of its own; the keyboard stops at it only while there is something to scroll. What is out of sight
 * to a side is told by an edge there that brings it in. */
export function Scroll(props: ScrollProps) {
  const box = useRef<HTMLDivElement>(null);
  const [over, setOver] = useState(false);
  const [more, setMore] = useState({ left: false, right: false });
  const look = () => {
    const at = box.current;
    if (!at) return;
    setOver(at.scrollWidth > at.clientWidth + 1 || at.scrollHeight > at.clientHeight + 1);
    const left = at.scrollLeft > 8;
    const right = at.scrollLeft + at.clientWidth < at.scrollWidth - 8;
    setMore((now) => (now.left === left && now.right === right ? now : { left, right }));
  };
  useEffect(() => {
    const at = box.current;
    if (!at) return undefined;
    const watch = new ResizeObserver(look);
    watch.observe(at);
    if (at.firstElementChild) watch.observe(at.firstElementChild);
    return () => watch.disconnect();
  }, []);
  useFollow(box, props.follow);
  const go = (way: -1 | 1) => box.current?.scrollBy({ left: way * box.current.clientWidth * 0.7, behavior: "smooth" });
  return (
    <div class={`scrollframe${more.left ? " more-left" : ""}${more.right ? " more-right" : ""}`}>
      <div
        ref={box}
        class={props.class ?? "scroll"}
        role="group"
        aria-label={props.label}
        tabIndex={over ? 0 : undefined}
        onScroll={look}
      >
        {props.children}
      </div>
      {more.left && <Edge side="left" onGo={() => go(-1)} />}
      {more.right && <Edge side="right" onGo={() => go(1)} />}
    </div>
  );
}

/** Keeps what is followed in sight. On its own, so that what lives on between renders does not hold what one of them saw. */
function useFollow(box: RefObject<HTMLDivElement | null>, follow: string | undefined) {
  useEffect(() => {
    const at = box.current;
    if (!at || !follow) return undefined;
    const bring = () => bringIn(at, follow);
    bring();
    const watch = new MutationObserver(bring);
    watch.observe(at, { subtree: true, childList: true, attributes: true, attributeFilter: ["class"] });
    return () => watch.disconnect();
  }, [follow]);
}

/** For the pointer; the keyboard scrolls the box itself. */
function Edge(props: { side: "left" | "right"; onGo: () => void }) {
  return (
    <button type="button" class={`edge ${props.side}`} tabIndex={-1} aria-hidden="true" onClick={props.onGo}>
      <svg viewBox="0 0 16 16">
        <path d={props.side === "left" ? "M10 3L5 8l5 5" : "M6 3l5 5-5 5"} />
      </svg>
    </button>
  );
}

const shown = new WeakMap<Element, string>();

/** Scrolls sideways to what is followed, once for each place that it comes to. */
function bringIn(box: HTMLElement, selector: string) {
  const it = box.querySelector(selector);
  const which = it?.getAttribute("data-stop") ?? "";
  if (!it || shown.get(box) === which) return;
  shown.set(box, which);
  const [own, around] = [it.getBoundingClientRect(), box.getBoundingClientRect()];
  const beyond = Math.max(0, own.right - around.right + 24) - Math.max(0, around.left - own.left + 24);
  if (beyond) box.scrollBy({ left: beyond });
}
