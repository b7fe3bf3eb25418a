import { units } from "../../state/look";
import { toneOf } from "../parts/status";
import { barOf, type Group, type Side } from "./findings";

const width = 190;

/** Value against limit: a bar from nothing, the limit as a tick, the forbidden side shaded. */
export function Bullet(props: { group: Group; side: Side | null }) {
  const bar = barOf(props.group, props.side, units.value);
  if (!bar) return null;
  const at = (share: number) => Math.max(1, Math.min(width - 1, share * width));
  const limit = at(bar.limit);
  return (
    <svg
      class={`bul ${toneOf(props.group.state)}`}
      viewBox={`0 0 ${width} 14`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path class="base" d={`M0 7H${width}`} />
      {bar.side === "at least" && <rect class="forbid" x="0" y="1" width={limit} height="12" />}
      {bar.side === "at most" && <rect class="forbid" x={limit} y="1" width={width - limit} height="12" />}
      <path class="value" d={`M0 7H${at(bar.value)}`} />
      {bar.value - bar.from > 0.02 && <path class="spread" d={`M${at(bar.from)} 7H${at(bar.value)}`} />}
      <path class="limit" d={`M${limit} 0V14`} />
    </svg>
  );
}
