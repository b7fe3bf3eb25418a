import { figure, withUnit } from "../../../../draw/numbers";
import { units } from "../../../../state/look";
import type { Tank } from "../../documents";
import type { HoseState } from "../state_at";
import { restingAt } from "../trace";
import type { DropSide } from "../view";
import { surfaceOf, type SceneLayout, type TankPlace } from "./layout";
import { Liquid, toneOf } from "./Liquid";
import type { Shown } from "./shown";

/** The share of its height to which a tank is full, from the tank study where that knows the tank. */
function heightShare(tanks: readonly Tank[], side: DropSide, id: string, t: number): number {
  const full = tanks.find((one) => one.id === id)?.full_level_m;
  const depth = restingAt(side.trace, `depth ${id}`, t);
  return (full && depth !== null ? depth / full : restingAt(side.trace, `full ${id}`, t)) ?? 0;
}

interface TankProps extends Shown {
  place: TankPlace;
  hoses: readonly HoseState[];
}

/** A tank with its drop tube. */
export function UnderGround(props: TankProps) {
  const { layout, side, tanks, t, place, hoses } = props;
  const { x, width, fill } = place;
  const { top, foot, ground } = layout;
  const clip = `tank-${side.letter}-${Math.round(x)}`;
  const tone = toneOf(side.run.drops.find((d) => d.tank === place.tank)?.product ?? "");
  const shape = <rect x={x} y={top} width={width} height={foot - top} rx="9" />;
  const surface = surfaceOf(layout, heightShare(tanks, side, place.tank, t));
  const end = foot - 7;
  return (
    <g>
      <clipPath id={clip}>{shape}</clipPath>
      <g class="inside">{shape}</g>
      <g clip-path={`url(#${clip})`}>
        <Liquid tone={tone} of={side.letter} x={x} y={surface} width={width} foot={foot} />
      </g>
      <ShareMarks tank={tanks.find((one) => one.id === place.tank)} place={place} layout={layout} />
      <path class="tube" d={`M${fill - 4} ${ground}V${end}M${fill + 4} ${ground}V${end}`} />
      {hoses.some((h) => h.flows) && <path class={`pours ${tone}`} d={`M${fill} ${ground}V${end}`} />}
      <g class="shell">{shape}</g>
      <Plate side={side} place={place} layout={layout} t={t} />
    </g>
  );
}

/** Where a tank is 90 and 95 % full. */
function ShareMarks({ tank, place, layout }: { tank: Tank | undefined; place: TankPlace; layout: SceneLayout }) {
  const full = tank?.full_level_m;
  if (!tank || !full) return null;
  return (
    <>
      {tank.rooms.map((room) => (
        <path
          key={room.share}
          class={`sharemark${room.share > 0.92 ? " late" : ""}`}
          d={`M${place.x + 8} ${surfaceOf(layout, room.level_m / full)}H${place.x + place.width - 8}`}
        />
      ))}
    </>
  );
}

function Plate({ side, place, layout, t }: { side: DropSide; place: TankPlace; layout: SceneLayout; t: number }) {
  const system = units.value;
  const right = place.x + place.width - 8;
  const width = Math.max(68, Math.min(112, right - place.fill - 12));
  const [left, middle, y] = [right - width, right - width / 2, layout.foot - 42];
  const full = figure("share", system, restingAt(side.trace, `full ${place.tank}`, t));
  return (
    <g>
      <rect class="plate" x={left} y={y} width={width} height="34" rx="2" />
      <text class="b" x={middle} y={y + 14} text-anchor="middle">
        {place.tank}, {full}&nbsp;%
      </text>
      <text x={middle} y={y + 28} text-anchor="middle">
        {withUnit("volume", system, restingAt(side.trace, `volume ${place.tank}`, t), 0)}
      </text>
    </g>
  );
}
