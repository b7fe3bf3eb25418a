import { hasVent, hoseAt, returnAt, ventAt } from "../state_at";
import { spaceOf } from "../trace";
import { vaporPath, type SceneLayout, type SpacePlace } from "./layout";
import type { Shown } from "./shown";

/** Vapor pipes of the tanks that share a space, their vent, and the hose back to the truck. */
export function VaporPipes({ layout, side, view, t, place }: Shown & { place: SpacePlace }) {
  const ullage = side.run.ullages.find((u) => spaceOf(u) === place.space);
  const [first] = place.tanks;
  if (!ullage || !first) return null;
  const now = returnAt(side.run, ullage, side.trace, Math.min(t, side.trace.end));
  const joined = now === "on" || now === "at rest";
  const filled = side.run.drops.filter((d) => hoseAt(d, side.trace, t).joined).map((d) => d.tank);
  const from = joined ? place.tanks.find((p) => filled.includes(p.tank)) : undefined;
  const vented = hasVent(view.document.result.runs, place.space);
  const state = t > side.trace.end ? null : ventAt(ullage, vented, side.trace, t);
  return (
    <g>
      {vented && <Stack layout={layout} place={place} state={state} />}
      {place.tanks.map((p) => (
        <Riser key={p.tank} x={p.riser} layout={layout} capped={p !== from} />
      ))}
      {from && <path class={`vaporhose${now === "on" ? " on" : ""}`} d={vaporPath(layout, from.riser)} />}
      {now === "off" && (
        <text class="vaport" x={first.riser + 10} y={layout.ground - 26}>
          return off
        </text>
      )}
    </g>
  );
}

interface StackProps {
  layout: SceneLayout;
  place: SpacePlace;
  /** Null: not known at that time. */
  state: string | null;
}

/** The vent with the pipes that lead to it. */
function Stack({ layout, place, state }: StackProps) {
  const [first, ...others] = place.tanks;
  if (!first) return null;
  const { header, outlet, top } = layout;
  const x = place.vent;
  const way = `M${first.riser} ${top}V${header}H${x}V${outlet + 8}`;
  const pipes = way + others.map((p) => `M${p.riser} ${top}V${header}`).join("");
  const open = state === "open" || state === "draws air";
  return (
    <>
      <path class="pipeedge" d={pipes} />
      <path class="pipein" d={pipes} />
      {open && <path class="vaporflow" d={way} />}
      <path
        class={`ventcap${open ? " open" : ""}`}
        d={`M${x - 7} ${outlet + 9}L${x} ${outlet - 3}L${x + 7} ${outlet + 9}Z`}
      />
      {state && (
        <text x={x + 8} y={outlet - 12} text-anchor="end">
          vent {state}
        </text>
      )}
    </>
  );
}

const Riser = ({ x, layout, capped }: { x: number; layout: SceneLayout; capped: boolean }) => (
  <>
    <path class="pipeedge" d={`M${x} ${layout.top}V${layout.ground - 12}`} />
    <path class="pipein" d={`M${x} ${layout.top}V${layout.ground - 12}`} />
    {capped && <path class="cap-line" d={`M${x - 6} ${layout.ground - 12}H${x + 6}`} />}
  </>
);
