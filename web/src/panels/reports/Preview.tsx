import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** The report as it goes on paper. It has no script and may run none; the place that was read stays in sight when it is
 * made anew. */
export function Preview(props: { html: string; old: boolean; frame: RefObject<HTMLIFrameElement | null> }) {
  const at = useRef(0);
  useEffect(() => {
    const frame = props.frame.current;
    if (!frame) return;
    at.current = frame.contentWindow?.scrollY ?? at.current;
    frame.srcdoc = props.html;
  }, [props.html]);
  return (
    <div class={`paper${props.old ? " old" : ""}`}>
      <iframe
        ref={props.frame}
        title="Preview of the report"
        sandbox="allow-same-origin"
        onLoad={(e) => e.currentTarget.contentWindow?.scrollTo(0, at.current)}
      />
    </div>
  );
}

/** Brings a section of the preview into sight. */
export function showSection(frame: HTMLIFrameElement | null, id: string) {
  frame?.contentDocument?.getElementById(id)?.scrollIntoView({ block: "start" });
}
