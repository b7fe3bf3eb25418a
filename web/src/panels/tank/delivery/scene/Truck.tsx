import { withUnit } from "../../../../draw/numbers";
import { units } from "../../../../state/look";
import type { HoseState } from "../state_at";
import { restingAt } from "../trace";
import { compartmentsOf, hosePath, type SceneLayout } from "./layout";
import { Liquid, toneOf } from "./Liquid";
import type { Shown } from "./shown";

/** The truck with what is left in its compartments. */
export function Truck({ layout, side, t }: Shown) {
  const { x, width, top, foot } = layout.truck;
  const vessel = <rect x={x + 36} y={top} width={width - 36} height={foot - top} rx="14" />;
  const clip = `truck-${side.letter}`;
  return (
    <g>
      <path class="steel" d={`M${x + 2} ${layout.ground - 14}V84q0-12 10-16h20v46zM${x + 30} 110H${x + width}`} />
      <clipPath id={clip}>{vessel}</clipPath>
      <g class="inside">{vessel}</g>
      <g clip-path={`url(#${clip})`}>
        <Compartments layout={layout} side={side} t={t} />
      </g>
      <g class="shell">{vessel}</g>
      {[x + 18, x + width - 52, x + width - 24].map((at) => (
        <circle key={at} class="wheel" cx={at} cy={layout.ground - 10} r="10" />
      ))}
      <text class="b" x={x} y={top - 14}>
        {withUnit("volume", units.value, restingAt(side.trace, "left", t), 0)} left
      </text>
    </g>
  );
}

function Compartments({ layout, side, t }: Pick<Shown, "layout" | "side" | "t">) {
  const { top, foot } = layout.truck;
  const { drops } = side.run;
  const places = compartmentsOf(
    layout,
    drops.map((d) => d.brought_m3),
  );
  return (
    <>
      {places.map(({ x, width }, i) => {
        const drop = drops[i];
        if (!drop) return null;
        const share = (restingAt(side.trace, `left ${drop.compartment}`, t) ?? 0) / drop.brought_m3;
        const y = foot - share * (foot - top - 6);
        return (
          <g key={drop.compartment}>
            <Liquid tone={toneOf(drop.product)} of={side.letter} x={x} y={y} width={width} foot={foot} />
            {i > 0 && <path class="wall" d={`M${x} ${top}V${foot}`} />}
          </g>
        );
      })}
    </>
  );
}

/** A delivery hose on a fill, with what is in it. */
export function Hose({ layout, hose, fill }: { layout: SceneLayout; hose: HoseState; fill: number }) {
  const path = hosePath(layout, fill);
  const shade = { opacity: 0.25 + 0.75 * hose.filled };
  return (
    <g>
      <path class="hoseedge" d={path} />
      <path class="hosein" d={path} />
      {hose.filled > 0.02 && <path class={`pours ${toneOf(hose.drop.product)}`} style={shade} d={path} />}
    </g>
  );
}
