import { dateOf, dayWords } from "../../draw/days";
import { digits } from "../../draw/numbers";
import type { ControlChart, ControlPoint } from "./documents";
import { axisOf } from "./rows";
import { Outside } from "./Running";

const box = { height: 170, left: 34, right: 62, top: 8, foot: 22 };

interface Line {
  name: string;
  of: (point: ControlPoint) => number;
  class: string;
}
interface ControlProps {
  points: readonly ControlPoint[];
  lines: readonly Line[];
  limit: (point: ControlPoint) => number;
  signals: (point: ControlPoint) => boolean;
  /** Where a signal is marked. */
  at: (point: ControlPoint) => number;
  /** Each day's own value as a dot. */
  dots?: boolean;
  label: string;
  width: number;
}

function Control(props: ControlProps) {
  const { points, width } = props;
  if (width <= 0 || points.length === 0) return null;
  const all = points.flatMap((p) => [props.limit(p), -props.limit(p), ...props.lines.map((l) => l.of(p)), ...(props.dots ? [p.value] : [])]);
  const steps = axisOf(Math.min(...all), Math.max(...all), 4);
  const [low, high] = [steps[0] ?? -1, steps.at(-1) ?? 1];
  const [right, foot] = [width - box.right, box.height - box.foot];
  const x = (i: number) => box.left + ((i + 0.5) / points.length) * (right - box.left);
  const y = (value: number) => box.top + ((high - value) / (high - low)) * (foot - box.top);
  const line = (of: (p: ControlPoint) => number) =>
    points.map((p, i) => `${i ? "L" : "M"}${x(i).toFixed(1)} ${y(of(p)).toFixed(1)}`).join("");
  const every = Math.max(1, Math.ceil(points.length / Math.max(2, Math.floor((right - box.left) / 42))));
  const last = points.at(-1) as ControlPoint;
  // Names at the ends keep clear of each other: the limit is named on the side where the lines do not end.
  const limitSide = props.lines.some((l) => l.of(last) > props.limit(last) / 2) ? -1 : 1;
  const crowded = props.lines.length === 2 && Math.abs(y(props.lines[0]?.of(last) ?? 0) - y(props.lines[1]?.of(last) ?? 0)) < 13;
  const limitAt = y(limitSide * props.limit(last));
  const room = props.lines.every((l) => Math.abs(y(l.of(last)) - limitAt) >= 13);
  const signalled = points.filter(props.signals);
  const said = signalled.length
    ? `signals first on ${dayWords(signalled[0]?.day ?? "")}`
    : "no signal";
  return (
    <svg class="chart ledgerchart" width={width} height={box.height} role="img" aria-label={`${props.label}: ${said}.`}>
      {steps.map((value) => (
        <g key={value}>
          <path class={value === 0 ? "zero" : "grid"} d={`M${box.left} ${y(value)}H${right}`} />
          <text x={box.left - 6} y={y(value) + 4} text-anchor="end">
            {digits(value, Number.isInteger(steps[1] ?? 1) ? 0 : 1)}
          </text>
        </g>
      ))}
      <path class="rulelimit" d={line(props.limit)} />
      <path class="rulelimit" d={line((p) => -props.limit(p))} />
      {room && (
        <text class="limitname" x={right + 6} y={limitAt + 4}>
          limit
        </text>
      )}
      {props.dots && points.map((p, i) => <circle key={p.day} class="daydot" cx={x(i)} cy={y(p.value)} r="2.5" />)}
      {props.lines.map((l, i) => (
        <g key={l.name}>
          <path class={`control ${l.class}`} d={line(l.of)} />
          <text class="endname" x={right + 6} y={y(l.of(last)) + 4 + (crowded ? (i ? 7 : -7) : 0)}>
            {l.name}
          </text>
        </g>
      ))}
      {points.map((p, i) => props.signals(p) && <Outside key={p.day} x={x(i)} y={y(props.at(p))} />)}
      {points.map((p, i) => i % every === 0 && (
        <text key={p.day} x={x(i)} y={box.height - 6} text-anchor="middle">
          {dateOf(p.day)}
        </text>
      ))}
    </svg>
  );
}

const runs = (length: number) => digits(length, 0);

/** The two control charts, in standard deviations, with how often each signals though nothing is wrong. */
export function Controls({ chart, width }: { chart: ControlChart; width: number }) {
  return (
    <>
      <h2>
        Sums of the days (CUSUM) <span class="dim n">standard deviations. One false alarm in {runs(chart.cusum_run_length)} readings</span>
      </h2>
      <Control
        points={chart.points}
        width={width}
        label="Sums of what exceeds the reference, over and short"
        limit={() => chart.cusum_limit}
        lines={[
          { name: "over", of: (p) => p.cusum_upper, class: "upper" },
          { name: "short", of: (p) => -p.cusum_lower, class: "lower" },
        ]}
        signals={(p) => p.cusum_signals}
        at={(p) => (p.cusum_upper > p.cusum_lower ? p.cusum_upper : -p.cusum_lower)}
      />
      <h2 class="second">
        Day by day and its average (EWMA) <span class="dim n">causes taken out. One false alarm in {runs(chart.ewma_run_length)} readings</span>
      </h2>
      <Control
        points={chart.points}
        width={width}
        label="Average that forgets, with each day as a dot"
        limit={(p) => p.ewma_limit}
        lines={[{ name: "average", of: (p) => p.ewma, class: "average" }]}
        signals={(p) => p.ewma_signals}
        at={(p) => p.ewma}
        dots
      />
    </>
  );
}
