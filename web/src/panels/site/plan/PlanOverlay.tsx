import { useRef } from "preact/hooks";
import type { Part } from "../../../api/types";
import { dimensions, drawn, lengthText, type Dimension, type PlanFrame, type Point } from "../../../draw/plan";
import { moving, siteOf } from "../../../state/drag";
import { selection, units } from "../../../state/look";
import type { DrawnPlan } from "./marks";
import { farEnds } from "./plan-lines";
import { Handle } from "./PlanHandle";

interface OverlayProps {
  frame: PlanFrame;
  plan: DrawnPlan | null;
  width: number;
  height: number;
  parts: readonly Part[];
}

/** Handles to choose and move parts by, and the dimensions of the chosen one. */
export function Overlay(props: OverlayProps) {
  const { frame, width, height, parts } = props;
  const svg = useRef<SVGSVGElement>(null);
  const now = moving.value;
  const at = (p: Part) => (now?.path === p.path ? now.at : (siteOf(p) as Point));
  const chosen = parts.find((p) => p.path === (now?.path ?? selection.value.part));
  const rest = parts.filter((p) => p !== chosen).map((p) => siteOf(p) as Point);
  return (
    <svg class="plan-over" ref={svg} viewBox={`0 0 ${width} ${height}`} role="group" aria-label="Parts on the plan">
      {now?.x != null && <path class="guide" d={`M${drawn(frame, { x: now.x, y: 0 }).x} 0V${height}`} />}
      {now?.y != null && <path class="guide" d={`M0 ${drawn(frame, { x: 0, y: now.y }).y}H${width}`} />}
      {now && farEnds(now.path, parts).map((far, i) => <Straight key={i} frame={frame} from={now.at} to={far} />)}
      {chosen && dimensions(at(chosen), rest).map((d, i) => <Dimensioned key={i} frame={frame} dimension={d} />)}
      {parts.map((p) => (
        <Handle
          key={p.path}
          part={p}
          frame={frame}
          at={at(p)}
          svg={svg}
          marked={props.plan?.marked.has(p.path) ?? false}
        />
      ))}
    </svg>
  );
}

function Straight(props: { frame: PlanFrame; from: Point; to: Point }) {
  const [a, b] = [drawn(props.frame, props.from), drawn(props.frame, props.to)];
  return <path class="follow" d={`M${a.x} ${a.y}L${b.x} ${b.y}`} />;
}

function Dimensioned(props: { frame: PlanFrame; dimension: Dimension }) {
  const { frame, dimension } = props;
  const [a, b] = [drawn(frame, dimension.from), drawn(frame, dimension.to)];
  const level = a.y === b.y;
  const tick = (p: Point) => (level ? `M${p.x} ${p.y - 5}v10` : `M${p.x - 5} ${p.y}h10`);
  const text = lengthText(dimension.length, units.value);
  // Where the line is too short for its number, the number stands behind its end.
  const short = level ? Math.abs(b.x - a.x) < 72 : Math.abs(b.y - a.y) < 48;
  const right = level && b.x > a.x;
  const at = level
    ? { x: short ? b.x + (right ? 22 : -22) : (a.x + b.x) / 2, y: short ? b.y + 4 : b.y - 7 }
    : { x: b.x + 8, y: short ? b.y + (b.y > a.y ? 34 : -26) : (a.y + b.y) / 2 + 4 };
  const anchor = level ? (short ? (right ? "start" : "end") : "middle") : "start";
  return (
    <g class="dim-own">
      <path d={`M${a.x} ${a.y}L${b.x} ${b.y}${tick(b)}`} />
      <text x={at.x} y={at.y} text-anchor={anchor}>
        {text}
      </text>
    </g>
  );
}
