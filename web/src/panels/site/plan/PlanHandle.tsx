import { useEffect, useRef } from "preact/hooks";
import type { Part } from "../../../api/types";
import { drawn, lengthText, onSite, type PlanFrame, type Point } from "../../../draw/plan";
import { markPath } from "../../../draw/plan_marks";
import { carry, moving, pickUp, putBack, putDown, siteOf, step } from "../../../state/drag";
import { select, selection, units } from "../../../state/look";
import { editable } from "../../../state/station";

/** Arrow keys put the part down when they have been still for this long, ms. */
const still = 700;

export const placeWords = (at: Point) =>
  `${lengthText(at.x, units.value)} to the right, ${lengthText(at.y, units.value)} upward`;

interface HandleProps {
  part: Part;
  frame: PlanFrame;
  at: Point;
  svg: { current: SVGSVGElement | null };
  /** The engine draws it. */
  marked: boolean;
}

/** What a part is chosen and moved by: with the pointer, or with the arrow keys while it has the focus. A finger on it
 * moves it and not the sheet. */
export function Handle(props: HandleProps) {
  const { part, frame } = props;
  const place = drawn(frame, props.at);
  const chosen = selection.value.part === part.path;
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const grip = useRef<Point | null>(null);
  const mine = () => moving.value?.path === part.path;

  const under = (e: PointerEvent): Point | null => {
    const matrix = props.svg.current?.getScreenCTM()?.inverse();
    return matrix ? onSite(frame, new DOMPoint(e.clientX, e.clientY).matrixTransform(matrix)) : null;
  };
  const down = (e: PointerEvent) => {
    if (e.button !== 0) return;
    select(part.stop ?? selection.value.stop, part.path);
    if (!editable.value) return;
    const point = under(e);
    const from = siteOf(part);
    if (!point || !from) return;
    (e.currentTarget as Element).setPointerCapture(e.pointerId);
    (e.currentTarget as SVGElement).focus({ preventScroll: true });
    grip.current = { x: point.x - from.x, y: point.y - from.y };
  };
  const move = (e: PointerEvent) => {
    const point = grip.current && under(e);
    if (!point || !grip.current) return;
    const to = { x: point.x - grip.current.x, y: point.y - grip.current.y };
    const from = siteOf(part) as Point;
    const hand = frame.scale * Math.hypot(to.x - from.x, to.y - from.y);
    if (!mine() && hand < 4) return; // a click, not a drag
    pickUp(part);
    carry(to, e.altKey);
  };
  const up = () => {
    const carried = grip.current !== null && mine();
    grip.current = null;
    if (carried) void putDown();
  };
  const cancel = () => {
    grip.current = null;
    clearTimeout(timer.current);
    if (mine()) putBack();
  };
  const settle = () => {
    clearTimeout(timer.current);
    if (mine() && !grip.current) void putDown();
  };
  const key = (e: KeyboardEvent) => {
    const arrow = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    if (e.key === "Escape") cancel();
    if (e.key === "Enter" || e.key === " ") {
      e.preventDefault();
      select(part.stop ?? selection.value.stop, part.path);
      settle();
    }
    if (!arrow || !editable.value || e.ctrlKey || e.metaKey) return;
    e.preventDefault();
    const times = e.shiftKey ? 5 : 1;
    if (!mine()) select(part.stop ?? selection.value.stop, part.path);
    pickUp(part);
    step((arrow[0] ?? 0) * times, (arrow[1] ?? 0) * times, e.altKey);
    clearTimeout(timer.current);
    timer.current = setTimeout(settle, still);
  };
  useEffect(() => () => clearTimeout(timer.current), []);

  return (
    <g
      class={`drag${mine() ? " moving" : ""}`}
      data-part={part.path}
      transform={`translate(${place.x} ${place.y})`}
      tabIndex={0}
      role="button"
      aria-pressed={chosen}
      aria-label={`${part.kind.replaceAll("_", " ")} ${part.id}: ${placeWords(props.at)}`}
      onTouchStart={(e) => editable.value && e.cancelable && e.preventDefault()}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={cancel}
      onLostPointerCapture={up}
      onKeyDown={key}
      onBlur={settle}
    >
      <rect class="hit" x="-18" y="-18" width="36" height="36" />
      {!props.marked && <OwnMark part={part} />}
      <rect class="body" x="-17" y="-17" width="34" height="34" rx="3" />
    </g>
  );
}

/** Where the engine draws nothing of a part. */
function OwnMark(props: { part: Part }) {
  return (
    <>
      <path class="own" d={markPath(props.part.kind)} />
      <text class="own-name" y="-22" text-anchor="middle">
        {props.part.id}
      </text>
    </>
  );
}
