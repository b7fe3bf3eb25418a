import { station } from "../../../../state/station";

/** How a product is drawn. */
export const toneOf = (product: string) => station.value?.products.find((p) => p.id === product)?.tone ?? "";

/** Premium is hatched slantwise, diesel level, so that they part without color too. */
export const Hatches = (props: { of: "A" | "B" }) => (
  <defs>
    <pattern
      id={`premium-${props.of}`}
      width="7"
      height="7"
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
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

/** Liquid down to a foot. */
export function Liquid({ tone, of, x, y, width, foot }: LiquidProps) {
  const box = { x, y, width, height: Math.max(0, foot - y) };
  const hatched = tone === "premium" || tone === "diesel";
  return (
    <>
      <rect class={`liquid ${tone}`} {...box} />
      {hatched && <rect {...box} fill={`url(#${tone}-${of})`} />}
    </>
  );
}
