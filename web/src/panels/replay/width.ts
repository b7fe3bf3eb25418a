import { useEffect, useRef, useState } from "preact/hooks";

/** The width of a box as it is laid out [px]; 0 before it is. */
export function useWidth<E extends HTMLElement>() {
  const box = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    if (!box.current) return;
    const watch = new ResizeObserver((seen) => setWidth(Math.floor(seen[0]?.contentRect.width ?? 0)));
    watch.observe(box.current);
    return () => watch.disconnect();
  }, []);
  return [box, width] as const;
}
