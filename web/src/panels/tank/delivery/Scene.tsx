import { useMemo } from "preact/hooks";
import { amount, figure, unitOf, withUnit } from "../../../draw/numbers";
import { capital } from "../../../draw/words";
import { units } from "../../../state/look";
import { time } from "../../../state/player";
import { station } from "../../../state/station";
import { useWidth } from "../../replay/width";
import type { Tank } from "../documents";
import { returnWords, ventWords } from "./band";
import { compartmentsOf, hosePath, layoutOf, surfaceOf, vaporPath, type SceneLayout, type SpacePlace, type TankPlace } from "./layout";
import { doingAt, hasVent, hoseAt, returnAt, ventAt, type HoseState } from "./state_at";
import { at, restingAt, spaceOf } from "./trace";
import type { DropSide, DropView } from "./view";

const toneOf = (product: string) => station.value?.products.find((p) => p.id === product)?.tone ?? "";

interface SceneProps {
  side: DropSide;
  view: DropView;
  /** Of the tank study, for what its levels are. */
  tanks: readonly Tank[];
}

interface Shown extends SceneProps {
  layout: SceneLayout;
  t: number;
}

/** Truck, hoses and tanks of a run as they stand at the playhead. */
export function Scene(props: SceneProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const { run } = props.side;
  const layout = useMemo(
    () => (width > 0 ? layoutOf(width, run.tanks.map((t) => t.tank), run.ullages.map((u) => u.tanks)) : null),
    [width, run],
  );
  return (
    <>
      <div class="dropscene" ref={box}>
        {layout && <Drawing {...props} layout={layout} t={time.value} />}
      </div>
      <Words {...props} />
    </>
  );
}

function Drawing(props: Shown) {
  const { layout, side, t } = props;
  const hoses = side.run.drops.map((drop) => hoseAt(drop, side.trace, t));
  return (
    <svg class="chart" width={layout.width} height={layout.height} aria-hidden="true">
      <Hatches of={side.letter} />
      <rect class="earthfill" x="0" y={layout.ground} width={layout.width} height={layout.height - layout.ground} />
      <path class="slabline" d={`M0 ${layout.ground}H${layout.width}`} />
      {layout.spaces.map((s) => (
        <Vapor key={s.space} {...props} place={s} />
      ))}
      {layout.tanks.map((place) => (
        <UnderGround key={place.tank} {...props} place={place} hoses={hoses.filter((h) => h.drop.tank === place.tank)} />
      ))}
      <Truck {...props} />
      {hoses.map((h) => {
        const place = layout.tanks.find((p) => p.tank === h.drop.tank);
        return place && h.joined && <Hose key={h.drop.compartment} layout={layout} hose={h} fill={place.fill} />;
      })}
    </svg>
  );
}

/** Premium is hatched slantwise, diesel level, so that they part without color too. */
const Hatches = (props: { of: "A" | "B" }) => (
  <defs>
    <pattern id={`premium-${props.of}`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path class="hatchline" d="M0 0V7" />
    </pattern>
    <pattern id={`diesel-${props.of}`} width="6" height="6" patternUnits="userSpaceOnUse">
      <path class="hatchline on-diesel" d="M0 3H6" />
    </pattern>
  </defs>
);

interface LiquidProps {
  tone: string;
  of: "A" | "B";
  x: number;
  y: number;
  width: number;
  foot: number;
}

function Liquid({ tone, of, x, y, width, foot }: LiquidProps) {
  const box = { x, y, width, height: Math.max(0, foot - y) };
  const hatched = tone === "premium" || tone === "diesel";
  return (
    <>
      <rect class={`liquid ${tone}`} {...box} />
      {hatched && <rect {...box} fill={`url(#${tone}-${of})`} />}
    </>
  );
}

/** The share of its height to which a tank is full, from the tank study where that knows the tank. */
function heightShare(tanks: readonly Tank[], side: DropSide, id: string, t: number): number | null {
  const full = tanks.find((one) => one.id === id)?.full_level_m;
  const depth = restingAt(side.trace, `depth ${id}`, t);
  return full && depth !== null ? depth / full : restingAt(side.trace, `full ${id}`, t);
}

function UnderGround({ layout, side, tanks, t, place, hoses }: Shown & { place: TankPlace; hoses: readonly HoseState[] }) {
  const { x, width, fill } = place;
  const { top, foot, ground } = layout;
  const share = heightShare(tanks, side, place.tank, t) ?? 0;
  const surface = surfaceOf(layout, share);
  const known = tanks.find((one) => one.id === place.tank);
  const clip = `tank-${side.letter}-${place.tank}`;
  const product = side.run.drops.find((d) => d.tank === place.tank)?.product ?? "";
  const shape = <rect x={x} y={top} width={width} height={foot - top} rx="9" />;
  const pours = hoses.some((h) => h.flows);
  return (
    <g>
      <clipPath id={clip}>{shape}</clipPath>
      <g class="inside">{shape}</g>
      <g clip-path={`url(#${clip})`}>
        <Liquid tone={toneOf(product)} of={side.letter} x={x} y={surface} width={width} foot={foot} />
      </g>
      {known?.full_level_m &&
        known.rooms.map((room) => (
          <path
            key={room.share}
            class={`sharemark${room.share > 0.92 ? " late" : ""}`}
            d={`M${x + 8} ${surfaceOf(layout, room.level_m / (known.full_level_m ?? 1))}H${x + width - 8}`}
          />
        ))}
      <path class="tube" d={`M${fill - 4} ${ground}V${foot - 7}M${fill + 4} ${ground}V${foot - 7}`} />
      {pours && <path class={`pours ${toneOf(product)}`} d={`M${fill} ${ground}V${foot - 7}`} />}
      <g class="shell">{shape}</g>
      <Plate side={side} place={place} layout={layout} t={t} />
    </g>
  );
}

function Plate({ side, place, layout, t }: { side: DropSide; place: TankPlace; layout: SceneLayout; t: number }) {
  const system = units.value;
  const { fill } = place;
  const right = place.x + place.width - 8;
  const width = Math.max(68, Math.min(112, right - fill - 12));
  const left = right - width;
  const y = layout.foot - 42;
  const full = figure("share", system, restingAt(side.trace, `full ${place.tank}`, t));
  const held = withUnit("volume", system, restingAt(side.trace, `volume ${place.tank}`, t), 0);
  return (
    <g>
      <rect class="plate" x={left} y={y} width={width} height="34" rx="2" />
      <text class="b" x={left + width / 2} y={y + 14} text-anchor="middle">
        {place.tank}, {full}&nbsp;%
      </text>
      <text x={left + width / 2} y={y + 28} text-anchor="middle">
        {held}
      </text>
    </g>
  );
}

/** Vapor pipes of the tanks that share a space, their vent, and the hose back to the truck. */
function Vapor({ layout, side, view, t, place }: Shown & { place: SpacePlace }) {
  const ullage = side.run.ullages.find((u) => spaceOf(u) === place.space);
  const first = place.tanks[0];
  const last = place.tanks.at(-1);
  if (!ullage || !first || !last) return null;
  const { header, ground, outlet, top } = layout;
  const vents = hasVent(view.document.result.runs, place.space);
  const state = t > side.trace.end ? "shut" : ventAt(ullage, vents, side.trace, t);
  const now = returnAt(side.run, ullage, side.trace, Math.min(t, side.trace.end));
  const joined = now === "on" || now === "at rest";
  const from = place.tanks.find((p) => side.run.drops.some((d) => d.tank === p.tank && hoseAt(d, side.trace, t).joined));
  const end = place.tanks.length > 1 ? first.riser : last.x + last.width - 14;
  const ventPipe = `M${end} ${top}V${header}H${place.vent}V${outlet + 8}`;
  const others = place.tanks.slice(1).map((p) => `M${p.riser} ${top}V${header}`).join("");
  return (
    <g>
      {vents && <path class="pipeedge" d={ventPipe + others} />}
      {vents && <path class="pipein" d={ventPipe + others} />}
      {vents && (state === "open" || state === "draws air") && <path class="vaporflow" d={ventPipe} />}
      {vents && <Vent x={place.vent} y={outlet} open={state === "open" || state === "draws air"} />}
      {vents && (
        <text x={place.vent + 8} y={outlet - 12} text-anchor="end">
          {t > side.trace.end ? "" : `vent ${state}`}
        </text>
      )}
      {place.tanks.map((p) => (
        <Riser key={p.tank} x={p.riser} layout={layout} capped={!(joined && p === from)} />
      ))}
      {joined && from && <path class={`vaporhose${now === "on" ? " on" : ""}`} d={vaporPath(layout, from.riser)} />}
      {!joined && (
        <text class="vaport" x={first.riser + 10} y={ground - 26}>
          {now === "off" ? "return off" : ""}
        </text>
      )}
    </g>
  );
}

const Vent = ({ x, y, open }: { x: number; y: number; open: boolean }) => (
  <path class={`ventcap${open ? " open" : ""}`} d={`M${x - 7} ${y + 9}L${x} ${y - 3}L${x + 7} ${y + 9}Z`} />
);

const Riser = ({ x, layout, capped }: { x: number; layout: SceneLayout; capped: boolean }) => (
  <>
    <path class="pipeedge" d={`M${x} ${layout.top}V${layout.ground - 12}`} />
    <path class="pipein" d={`M${x} ${layout.top}V${layout.ground - 12}`} />
    {capped && <path class="cap-line" d={`M${x - 6} ${layout.ground - 12}H${x + 6}`} />}
  </>
);

function Hose({ layout, hose, fill }: { layout: SceneLayout; hose: HoseState; fill: number }) {
  const path = hosePath(layout, fill);
  const tone = toneOf(hose.drop.product);
  return (
    <g>
      <path class="hoseedge" d={path} />
      <path class="hosein" d={path} />
      {hose.filled > 0.02 && <path class={`pours ${tone}`} style={{ opacity: 0.25 + 0.75 * hose.filled }} d={path} />}
    </g>
  );
}

function Truck({ layout, side, t }: Shown) {
  const { x, width, top, foot } = layout.truck;
  const vessel = <rect x={x + 36} y={top} width={width - 36} height={foot - top} rx="14" />;
  const clip = `truck-${side.letter}`;
  const places = compartmentsOf(layout, side.run.drops.map((d) => d.brought_m3));
  const wheels = [x + 18, x + width - 52, x + width - 24];
  return (
    <g>
      <path class="steel" d={`M${x + 2} ${layout.ground - 14}V84q0-12 10-16h20v46zM${x + 30} 110H${x + width}`} />
      <clipPath id={clip}>{vessel}</clipPath>
      <g class="inside">{vessel}</g>
      {side.run.drops.map((drop, i) => {
        const place = places[i];
        const share = (restingAt(side.trace, `left ${drop.compartment}`, t) ?? 0) / drop.brought_m3;
        if (!place) return null;
        const y = foot - share * (foot - top - 6);
        return (
          <g key={drop.compartment} clip-path={`url(#${clip})`}>
            <Liquid tone={toneOf(drop.product)} of={side.letter} x={place.x} y={y} width={place.width} foot={foot} />
            {i > 0 && <path class="wall" d={`M${place.x} ${top}V${foot}`} />}
          </g>
        );
      })}
      <g class="shell">{vessel}</g>
      {wheels.map((at) => (
        <circle key={at} class="wheel" cx={at} cy={layout.ground - 10} r="10" />
      ))}
      <Left layout={layout} side={side} t={t} />
    </g>
  );
}

function Left({ layout, side, t }: { layout: SceneLayout; side: DropSide; t: number }) {
  const system = units.value;
  return (
    <text class="b" x={layout.truck.x} y={layout.truck.top - 14}>
      {withUnit("volume", system, restingAt(side.trace, "left", t), 0)} left
    </text>
  );
}

/** What is seen, in words. */
function Words({ side, view }: SceneProps) {
  const [t, system] = [time.value, units.value];
  const { trace, run } = side;
  const doing = doingAt(run, trace, t);
  const rate = at(trace, "rate", t);
  const flows = rate !== null && rate > 0 && figure("flow", system, rate, 0) !== "0";
  const spaces = run.ullages.map(spaceOf);
  const vented = at(trace, "vented", t);
  const parts = [
    flows ? `${doing} at ${withUnit("flow", system, rate, 0)}` : doing,
    ...(t > trace.end
      ? []
      : spaces.flatMap((s) => [
          `vent ${ventWords(view, side, s, t, system)}`,
          `vapor return ${returnWords(side, s, t, system)}`,
        ])),
    ...(vented !== null && vented > 0 ? [`${amount(system, vented)}\u00A0${unitOf("volume", system)} of vapor out so far`] : []),
  ];
  return <p class="scene-words">{capital(parts.join(" · "))}</p>;
}
