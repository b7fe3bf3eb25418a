import { useMemo } from "preact/hooks";
import { amount, figure, unitOf, withUnit } from "../../../../draw/numbers";
import { capital } from "../../../../draw/words";
import { units } from "../../../../state/look";
import { time } from "../../../../state/player";
import { useWidth } from "../../../replay/width";
import { returnWords, ventWords } from "../band";
import { doingAt, hoseAt } from "../state_at";
import { at, spaceOf } from "../trace";
import { layoutOf } from "./layout";
import { Hatches } from "./Liquid";
import type { SceneProps, Shown } from "./shown";
import { Hose, Truck } from "./Truck";
import { UnderGround } from "./UnderGround";
import { VaporPipes } from "./VaporPipes";

/** Truck, hoses and tanks of a run as they stand at the playhead. */
export function Scene(props: SceneProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const { tanks, ullages } = props.side.run;
  const layout = useMemo(() => {
    const spaces = ullages.map((u) => u.tanks);
    return width > 0
      ? layoutOf(
          width,
          tanks.map((t) => t.tank),
          spaces,
        )
      : null;
  }, [width, tanks, ullages]);
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
  const { width, height, ground } = layout;
  const hoses = side.run.drops.map((drop) => hoseAt(drop, side.trace, t));
  const placeOf = (tank: string) => layout.tanks.find((p) => p.tank === tank);
  return (
    <svg class="chart" width={width} height={height} aria-hidden="true">
      <Hatches of={side.letter} />
      <rect class="earthfill" x="0" y={ground} width={width} height={height - ground} />
      <path class="slabline" d={`M0 ${ground}H${width}`} />
      {layout.spaces.map((s) => (
        <VaporPipes key={s.space} {...props} place={s} />
      ))}
      {layout.tanks.map((place) => (
        <UnderGround
          key={place.tank}
          {...props}
          place={place}
          hoses={hoses.filter((h) => h.drop.tank === place.tank)}
        />
      ))}
      <Truck {...props} />
      {hoses.map((hose) => {
        const fill = placeOf(hose.drop.tank)?.fill;
        return fill && hose.joined && <Hose key={hose.drop.compartment} layout={layout} hose={hose} fill={fill} />;
      })}
    </svg>
  );
}

/** What is seen, in words. */
function Words({ side, view }: SceneProps) {
  const [t, system] = [time.value, units.value];
  const { trace, run } = side;
  const doing = doingAt(run, trace, t);
  const rate = at(trace, "rate", t);
  const flows = rate !== null && figure("flow", system, rate, 0) !== "0";
  const vented = at(trace, "vented", t);
  const paths = run.ullages
    .map(spaceOf)
    .flatMap((s) => [`vent ${ventWords(view, side, s, t, system)}`, `vapor return ${returnWords(side, s, t, system)}`]);
  const parts = [
    flows ? `${doing} at ${withUnit("flow", system, rate, 0)}` : doing,
    ...(t > trace.end ? [] : paths),
    ...(vented !== null && vented > 0
      ? [`${amount(system, vented)}\u00A0${unitOf("volume", system)} of vapor out`]
      : []),
  ];
  return <p class="scene-words">{capital(parts.join(" · "))}</p>;
}
