import { effect } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer } from "../../../api/types";
import {
  flowAt,
  jetAt,
  jointly,
  momentOf,
  poolAt,
  renamed,
  scalesIn,
  sumpAt,
  type Attributes,
  type SceneMoment,
  type SceneScales,
} from "../../../draw/scene";
import { span, unitOf, withUnit } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { time } from "../../../state/player";
import { decimalsFor, toldOf } from "../answer/rows";
import type { Side, View } from "../answer/view";

/** What the engine is asked for: the cut through island and sump, without words. */
export const sceneWidth = 400;
export type SceneAnswer = DrawingAnswer | ErrorAnswer;

const svgOf = (answer: SceneAnswer | undefined) => (answer && "svg" in answer ? answer.svg : "");

interface SceneProps {
  side: Side;
  view: View;
  answer: SceneAnswer | undefined;
  /** The drawing beside it, for the same scales. */
  beside: SceneAnswer | undefined;
}

/** The engine's drawing, moved by the playhead. */
export function Scene({ side, view, answer, beside }: SceneProps) {
  const box = useRef<HTMLDivElement>(null);
  const [svg, other] = [svgOf(answer), svgOf(beside)];
  const down = side.run.dispenser_over_at_s;
  useEffect(() => {
    if (!box.current) return;
    box.current.innerHTML = renamed(svg, `scene-${side.letter}`);
    const root = box.current.querySelector("svg");
    if (!root) return;
    const full = jointly(scalesIn(svg), scalesIn(other));
    return effect(() => move(root, momentOf(side.trace, time.value, down), full));
  }, [svg, other, side, down]);
  if (!answer || "error" in answer) return null;
  return (
    <>
      <div ref={box} class="scene-drawing" />
      <SceneWords side={side} view={view} down={down} />
    </>
  );
}

const set = (element: Element, attributes: Attributes) => {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
};

function move(root: SVGElement, now: SceneMoment, full: SceneScales) {
  for (const element of root.querySelectorAll("[data-move]")) {
    const of = (name: string) => Number(element.getAttribute(name));
    const what = element.getAttribute("data-move");
    if (what === "sump") set(element, sumpAt(now, full, of));
    else if (what === "pool") set(element, poolAt(now, full, of));
    else if (what === "flow") set(element, flowAt(now, full, of));
    else if (what === "dispenser") set(element, { display: now.stands ? "inline" : "none" });
    else if (what === "jet") {
      const lines = jetAt(now, full, of);
      set(element, { display: lines ? "inline" : "none" });
      lines?.forEach((one, i) => element.children[i] && set(element.children[i], one));
    }
  }
}

/** What is seen, in words. */
function SceneWords({ side, view, down }: { side: Side; view: View; down: number | null }) {
  const system = units.value;
  const now = momentOf(side.trace, time.value, down);
  const told = useMemo(() => toldOf(view), [view]);
  const say = (name: string, si: number | null, words: string) => {
    const one = told.find((o) => o.name === name);
    if (!one || si === null || !(si > 0)) return [];
    return [`${withUnit(one.what, system, si, decimalsFor(one, system, si))} ${words}`];
  };
  const { jetLow, jetHigh } = now;
  const jet =
    jetLow === null || jetHigh === null
      ? []
      : [`jet ${span("length", system, jetLow, jetHigh)}\u00A0${unitOf("length", system)}`];
  const parts = [
    ...say("escaping", now.escaping, "escaping"),
    ...say("slab", now.slab, "on the slab"),
    ...say("sump", now.sump, "in the sump"),
    ...jet,
  ];
  return <p class="scene-words">{parts.length ? parts.join(" · ") : "nothing escapes"}</p>;
}
