import { useEffect, useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import { select } from "../../state/look";
import { NoDrawing } from "../parts/Drawing";
import type { Sump } from "./documents";
import { pathOf, sumpAt, wordOf } from "./rows";

/** The engine's drawing of all sumps; each can be chosen by click and by keyboard. */
export function SumpDrawing(props: {
  answer: DrawingAnswer | ErrorAnswer | undefined;
  old: boolean;
  sumps: readonly Sump[];
  chosen: Sump | undefined;
}) {
  const box = useRef<HTMLDivElement>(null);
  const svg = props.answer && "svg" in props.answer ? props.answer.svg : "";
  const owner = (g: Element) => sumpAt(props.sumps, g.getAttribute("data-part"));
  useEffect(() => {
    if (!box.current) return;
    const at = document.activeElement?.closest?.("[data-part]")?.getAttribute("data-part");
    box.current.innerHTML = svg;
    box.current.querySelector("svg")?.setAttribute("role", "group"); // it holds buttons
    if (at) box.current.querySelector<SVGElement>(`[data-part="${CSS.escape(at)}"]`)?.focus({ preventScroll: true });
  }, [svg]);
  useEffect(() => {
    for (const g of box.current?.querySelectorAll("[data-part]") ?? []) {
      const sump = owner(g);
      if (!sump) continue;
      const on = props.chosen !== undefined && pathOf(sump) === pathOf(props.chosen);
      g.classList.toggle("chosen", on);
      g.setAttribute("tabindex", "0");
      g.setAttribute("role", "button");
      g.setAttribute("aria-pressed", String(on));
      g.setAttribute("aria-label", `Sump of ${sump.of} ${sump.owner}: ${wordOf[sump.holds].toLowerCase()}`);
    }
  }, [svg, props.sumps, props.chosen]);
  if (!props.answer) return <div class="skel-box" aria-hidden="true" />;
  if ("error" in props.answer) return <NoDrawing answer={props.answer} />;
  const choose = (target: EventTarget | null) => {
    const g = target instanceof Element ? target.closest("[data-part]") : null;
    const sump = g && owner(g);
    if (!sump) return false;
    select(6, pathOf(sump));
    return true;
  };
  return (
    <div
      ref={box}
      class={`drawing sumps${props.old ? " old" : ""}`}
      role="group"
      aria-label="Sumps to one scale"
      onClick={(e) => choose(e.target)}
      onKeyDown={(e) => {
        if ((e.key === "Enter" || e.key === " ") && choose(e.target)) e.preventDefault();
      }}
    />
  );
}
