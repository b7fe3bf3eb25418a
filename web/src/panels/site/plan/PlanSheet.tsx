import { useEffect, useMemo, useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer, Part } from "../../../api/types";
import { foot, ownFrame, type PlanFrame, type Point } from "../../../draw/plan";
import { gridPath } from "../../../draw/plan_marks";
import { useStanding } from "../../../state/ask";
import { moving, placed, siteOf, unplaced } from "../../../state/drag";
import { openWanted } from "../../../state/hoses";
import { select, selection, units } from "../../../state/look";
import { editable, station } from "../../../state/station";
import { Scroll } from "../../parts/Scroll";
import { adding } from "../adding";
import { readPlan, type DrawnPlan } from "./marks";
import { linesOf } from "./plan-lines";
import { placeWords } from "./PlanHandle";
import { Overlay } from "./PlanOverlay";
import { wantedField } from "../PartFields";

/** A sheet of its own where the engine has no plan yet. */
const blank = { width: 912, height: 300 };
/** The plan: drawn by the engine as it is saved; above it what moves. */
export function PlanSheet() {
  // While a part is held the drawing stays as it is; what is held moves above it.
  const now = useStanding<DrawingAnswer | ErrorAnswer>(() =>
    moving.value ? null : { wants: [{ drawing: "plan", open: openWanted.value, units: units.value }] },
  );
  const kept = useRef<DrawnPlan | null>(null);
  const s = station.value;
  const answer = now.answers?.[0];
  const parts = placed(s?.parts ?? []);
  // What was drawn of a try is not kept: a plan that shows it would stand in a scale of its own.
  const current = useMemo(() => {
    if (!answer || now.revision === null || now.revision !== s?.revision) return kept.current;
    return "svg" in answer ? readPlan(answer.svg) : null;
  }, [answer, now.revision, s?.revision]);
  kept.current = current;
  const size = current ?? blank;
  const frame = current?.frame ?? ownFrame(parts.map((p) => siteOf(p) as Point), blank.width, blank.height);
  const remarks = answer && "svg" in answer ? answer.remarks : [];
  const part = parts.find((p) => p.path === selection.value.part);
  const broken = current === null && (s?.diagnostics.some((d) => d.severity === "error") ?? false);
  return (
    <div class="planwrap">
      <div class="strip">
        <p>
          <b>Plan</b>
          {part && <span>{part.id} selected</span>}
          {broken && parts.length > 1 && <span>straight from end to end, without flows, until the file is mended</span>}
          {!broken && parts.length > 0 && editable.value && (
            <span class="faint">
              Drag, or use the arrow keys. Snaps to {units.value === "us" ? "1 ft" : "0.3 m"}; Alt{" "}
              {units.value === "us" ? "0.1 ft" : "0.03 m"}.
            </span>
          )}
        </p>
        <div class="tb hide-m">
          <div>
            <span>Grid</span>
            {units.value === "us" ? "5 and 25 ft" : "1.5 and 7.5 m"}
          </div>
          <div>
            <span>Counts from</span>the site's own origin
          </div>
        </div>
      </div>
      {parts.length === 0 ? (
        <p class="drawing-none">
          No part has a position yet. When two tanks, branches or dispensers have one, the plan appears here, and parts
          can be moved on it.
        </p>
      ) : (
        <Scroll class="planbox" label="Plan">
          <div class={`plan${now.age === 2 ? " old" : ""}`} style={{ "--w": size.width, "--h": size.height }}>
            <Grid frame={frame} width={size.width} height={size.height} />
            <Engine plan={current} />
            <Overlay frame={frame} plan={current} width={size.width} height={size.height} parts={parts} />
          </div>
        </Scroll>
      )}
      {editable.value && <Unplaced parts={unplaced(s?.parts ?? []).filter((p) => p.kind !== "pump")} />}
      {remarks.length > 0 && parts.length > 0 && <p class="remarks">{remarks.join(" ")}</p>}
      <span class="vh" role="status">
        {moving.value ? placeWords(moving.value.at) : ""}
      </span>
    </div>
  );
}

/** Parts that are not on the plan yet, each with the way to put it there. */
function Unplaced(props: { parts: readonly Part[] }) {
  if (!props.parts.length) return null;
  const ask = (part: Part) => {
    adding.value = null;
    select(part.stop ?? selection.value.stop, part.path);
    wantedField.value = `${part.path}.position`;
  };
  return (
    <p class="unplaced">
      <span class="dim">Not on the plan yet. Enter the position of</span>
      {props.parts.map((p) => (
        <button type="button" class="link" key={p.path} onClick={() => ask(p)}>
          {p.id}
        </button>
      ))}
    </p>
  );
}

function Grid(props: { frame: PlanFrame; width: number; height: number }) {
  const { frame, width, height } = props;
  const fine = units.value === "us" ? 5 * foot : 1.5;
  const visible = fine * frame.scale > 6;
  return (
    <svg class="plan-grid" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {visible && <path class="fine" d={gridPath(frame, width, height, fine)} />}
      <path class="coarse" d={gridPath(frame, width, height, 5 * fine)} />
    </svg>
  );
}

/** The engine's drawing; what moves in it goes along with the hand at once. */
function Engine(props: { plan: DrawnPlan | null }) {
  const box = useRef<HTMLDivElement>(null);
  const svg = props.plan?.svg ?? "";
  useEffect(() => {
    if (box.current) box.current.innerHTML = svg;
  }, [svg]);
  const now = moving.value;
  useEffect(() => {
    const root = box.current;
    if (!root || !now || !props.plan) return;
    const dx = props.plan.frame.scale * (now.at.x - now.from.x);
    const dy = -props.plan.frame.scale * (now.at.y - now.from.y);
    const path = CSS.escape(now.path);
    const marks = root.querySelectorAll<SVGElement>(`[data-part="${path}"],[data-part^="${path}."]`);
    const lines = linesOf(now.path).map((l) => `[data-part="${CSS.escape(l)}"]`);
    const runs = root.querySelectorAll<SVGElement>(lines.join() || "none");
    for (const mark of marks) mark.style.transform = `translate(${dx}px,${dy}px)`;
    for (const run of runs) run.style.opacity = "0.25";
    return () => {
      for (const mark of marks) mark.style.transform = "";
      for (const run of runs) run.style.opacity = "";
    };
  }, [now, svg]);
  return <div class="plan-engine" ref={box} aria-hidden="true" />;
}
