import { useRef } from "preact/hooks";
import type { Part } from "../../../api/types";
import { dimensions, drawn, type Dimension, type PlanFrame, type Point } from "../../../draw/plan";
import { dimensionMark, runPath } from "../../../draw/plan_marks";
import { moving, siteOf } from "../../../state/drag";
import { selection, units } from "../../../state/look";
import type { DrawnPlan } from "./marks";
import { farEnds, straightRuns } from "./plan-lines";
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
      {!props.plan && <OwnRuns frame={frame} parts={parts} />}
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

/** Where the engine draws no plan: each line straight from end to end, in the tone of its product. */
function OwnRuns(props: { frame: PlanFrame; parts: readonly Part[] }) {
  return (
    <>
      {straightRuns(props.parts).map((run) => (
        <path
          key={run.path}
          class={`own-run ${run.tone}`}
          d={runPath(props.frame, run.from, run.to)}
          transform={`translate(0 ${5 * run.lane})`}
        />
      ))}
    </>
  );
}

function Straight(props: { frame: PlanFrame; from: Point; to: Point }) {
  return <path class="follow" d={runPath(props.frame, props.from, props.to)} />;
}

function Dimensioned(props: { frame: PlanFrame; dimension: Dimension }) {
  const mark = dimensionMark(props.frame, props.dimension, units.value);
  return (
    <g class="dim-own">
      <path d={mark.path} />
      <text x={mark.x} y={mark.y} text-anchor={mark.anchor}>
        {mark.text}
      </text>
    </g>
  );
}
