import { ladderLayout, type LadderLayout, type Mark } from "../../draw/ladder";
import { digits, figure, unitOf, valueIn } from "../../draw/numbers";
import { units } from "../../state/look";
import { drawWidth } from "./answers";
import type { WorthTold } from "./told/documents";

/** The slowest hose in A, solid and square, and in B, dashed and round, by the number of hoses open. */
export function WorthChart(props: { worth: WorthTold; keep: number | null }) {
  const u = units.value;
  const shown = (si: number | null) => (si === null ? null : valueIn("flow", u, si));
  const { steps, worth_it_from: from } = props.worth;
  const layout = ladderLayout(
    steps.map((s) => shown(s.slowest_a_m3_per_s)),
    steps.map((s) => shown(s.slowest_b_m3_per_s)),
    { width: drawWidth.value, keep: shown(props.keep), from },
  );
  const label = `Flow of the slowest hose in ${unitOf("flow", u)} by hoses open: ${steps
    .map((s) => `${s.open}: A ${figure("flow", u, s.slowest_a_m3_per_s)}, B ${figure("flow", u, s.slowest_b_m3_per_s)}`)
    .join("; ")}.`;
  return (
    <svg
      class="chart"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      width={layout.width}
      height={layout.height}
    >
      <text x="0" y="14" class="axis-title">
        slowest hose, {unitOf("flow", u)}
      </text>
      <Axes layout={layout} />
      {layout.keep !== null && (
        <g>
          <path class="limit" d={`M${layout.plot.left} ${layout.keep}H${layout.plot.right}`} />
          <text class="limit-right on-sheet" x={layout.plot.left + 8} y={layout.keep + (layout.keepUnder ? 15 : -5)}>
            to keep: {figure("flow", u, props.keep)}
          </text>
        </g>
      )}
      {layout.from !== null && (
        <g>
          <path class="worth-from" d={`M${layout.from} ${layout.plot.top}V${layout.plot.foot}`} />
          <text
            class="name on-sheet"
            x={layout.from}
            y={layout.plot.top - 6}
            text-anchor={layout.from > layout.width * 0.75 ? "end" : "start"}
          >
            worth it from {from}
          </text>
        </g>
      )}
      <path class="line-a" d={layout.a.path} />
      <path class="line-b" d={layout.b.path} />
      {layout.a.marks.map((m: Mark) => (
        <rect key={m.x} class="mark-a" x={m.x - 4.5} y={m.y - 4.5} width="9" height="9" />
      ))}
      {layout.b.marks.map((m: Mark) => (
        <circle key={m.x} class="mark-b" cx={m.x} cy={m.y} r="4" />
      ))}
      {layout.names && (
        <>
          <text class="name-a" x={layout.names.a.x} y={layout.names.a.y}>
            A
          </text>
          <text class="name-b" x={layout.names.b.x} y={layout.names.b.y}>
            B
          </text>
        </>
      )}
    </svg>
  );
}

function Axes(props: { layout: LadderLayout }) {
  const { plot, rows, columns } = props.layout;
  const decimals = rows.some((r) => r.value % 1) ? 1 : 0;
  return (
    <g>
      {rows.map((row) => (
        <g key={row.value}>
          <path class={row.value === 0 ? "zero" : "grid"} d={`M${plot.left} ${row.y}H${plot.right}`} />
          <text class="tick" x={plot.left - 8} y={row.y + 4}>
            {digits(row.value, decimals)}
          </text>
        </g>
      ))}
      {columns.map((c) => (
        <text key={c.open} class="tick-top" x={c.x} y={plot.foot + 18}>
          {c.open}
        </text>
      ))}
      <text class="axis-title" x={plot.left} y={plot.foot + 34}>
        hoses open
      </text>
    </g>
  );
}
