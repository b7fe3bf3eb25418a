import { useEffect, useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import { selection, select, stopNames } from "../../state/look";

/** A drawing that the engine made, put in as it is; its stops and parts can be chosen by click and by keyboard. */
export function Drawing(props: {
  answer: DrawingAnswer | ErrorAnswer | undefined;
  age?: 0 | 1 | 2;
  label: string;
  wide?: boolean;
}) {
  const box = useRef<HTMLDivElement>(null);
  const svg = props.answer && "svg" in props.answer ? props.answer.svg : "";
  useEffect(() => {
    if (!box.current) return;
    const focused = document.activeElement;
    const at = box.current.contains(focused) ? focused?.closest("[data-stop]")?.getAttribute("data-stop") : null;
    box.current.innerHTML = svg;
    makeStopsButtons(box.current);
    if (at) box.current.querySelector<SVGElement>(`[data-stop="${at}"][tabindex]`)?.focus({ preventScroll: true });
  }, [svg]);
  useEffect(() => {
    for (const g of box.current?.querySelectorAll("[data-stop]") ?? []) {
      const on = Number(g.getAttribute("data-stop")) === selection.value.stop;
      g.classList.toggle("chosen", on);
      if (g.hasAttribute("tabindex")) g.setAttribute("aria-pressed", String(on));
    }
  }, [svg, selection.value.stop]);
  if (!props.answer) return <div class="skel-box" aria-hidden="true" />;
  if ("error" in props.answer) return <NoDrawing answer={props.answer} />;
  return (
    <div
      ref={box}
      class={`drawing${props.age === 2 ? " old" : ""}${props.wide ? " wide" : ""}`}
      role="group"
      aria-label={props.label}
      onClick={(e) => choose(e.target)}
      onKeyDown={(e) => {
        if (e.key === "Enter" || e.key === " ") if (choose(e.target)) e.preventDefault();
      }}
    />
  );
}

export const NoDrawing = (props: { answer: ErrorAnswer }) => (
  <p class="drawing-none">
    {props.answer.error}. {props.answer.hint}
  </p>
);

function choose(target: EventTarget | null): boolean {
  const g = target instanceof Element ? target.closest("[data-stop]") : null;
  if (!g) return false;
  select(Number(g.getAttribute("data-stop")), g.getAttribute("data-part"));
  return true;
}

/** One tab stop for each of the eleven: the cells of the band where there are any, else the first mark of each. */
function makeStopsButtons(root: Element) {
  const seen = new Set<string>();
  const all = [...root.querySelectorAll("[data-stop]")];
  if (all.length) root.querySelector("svg")?.setAttribute("role", "group");
  const cells = all.filter((g) => g.classList.contains("cell"));
  for (const g of [...cells, ...all]) {
    const stop = g.getAttribute("data-stop") ?? "";
    if (seen.has(stop)) continue;
    seen.add(stop);
    g.setAttribute("tabindex", "0");
    g.setAttribute("role", "button");
    if (!g.hasAttribute("aria-label")) {
      const words = [...g.querySelectorAll("text")].map((t) => t.textContent?.trim()).filter(Boolean).join(" ");
      g.setAttribute("aria-label", `${stopNames[Number(stop) - 1] ?? "Stop"}: ${words}`);
    }
  }
}
