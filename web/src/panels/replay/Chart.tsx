import { useMemo } from "preact/hooks";
import { ticksOf, tickText, type Clock } from "../../draw/clock";
import type { Course } from "../../draw/curve";
import { areaOf, dotOf, lineOf, planOf, type ChartPlan } from "../../draw/curve_chart";
import type { Band } from "../../draw/curve_trace";
import { digits, unitOf, valueIn, type Quantity } from "../../draw/numbers";
import { units } from "../../state/look";
import { seek, time } from "../../state/player";
import type { PlayView } from "./view";
import { useWidth } from "./width";

const nearNames = 12;

/** What a chart draws: a thing over time, of one choice or of both. */
export interface Drawn {
  label: string;
  what: Quantity;
  courses: readonly { letter: "A" | "B"; course: Course; band?: Band }[];
  /** Named lines across it, SI. */
  limits?: readonly Limit[];
}

export interface Limit {
  at: number;
  words: string;
}

interface ChartProps {
  told: Drawn;
  view: PlayView;
  /** The courses in words, for those who do not see them. */
  words: string;
  height: number;
  whole?: boolean;
}

/** A course of both choices over the time scale of the player. */
export function Chart(props: ChartProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const { told, view, height } = props;
  const system = units.value;
  const shown = (si: number) => valueIn(told.what, system, si);
  const plan = useMemo(
    () => planOf(drawnOf(told), view.clock, { width, height }, shown, told.what !== "temperature"),
    [told, view, width, height, system],
  );
  const lines = useMemo(
    () =>
      told.courses.map(({ letter, course, band }) => ({
        letter,
        d: lineOf(course, plan, view.clock, shown),
        area: band && areaOf(band, plan, shown),
      })),
    [plan],
  );
  return (
    <figure class={props.whole ? "whole" : ""} ref={box}>
      <figcaption>
        <b>{told.label}</b>, {unitOf(told.what, system)}
      </figcaption>
      {width > 0 && (
        <svg
          class="chart"
          role="img"
          aria-label={props.words}
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          onPointerDown={(e) => seekTo(e, plan, view.clock)}
        >
          <Axes plan={plan} clock={view.clock} />
          <Limits limits={told.limits ?? []} plan={plan} shown={shown} />
          {lines.map(({ letter, area }) => area && <path class={letter === "A" ? "area-a" : "area-b"} d={area} />)}
          {lines.map(({ letter, d }) => (
            <path class={letter === "A" ? "line-a" : "line-b"} d={d} />
          ))}
          <Names told={told} plan={plan} shown={shown} />
          <Playhead told={told} plan={plan} shown={shown} />
        </svg>
      )}
    </figure>
  );
}

/** All that must fit on the axis. */
const drawnOf = (told: Drawn): Course[] => [
  ...told.courses.flatMap((c) => (c.band ? [c.course, c.band.low, c.band.high] : [c.course])),
  ...(told.limits ?? []).map(({ at }) => ({ time: [0], value: [at] })),
];

function seekTo(event: PointerEvent, plan: ChartPlan, clock: Clock) {
  const at = event.offsetX - plan.left;
  seek(clock.timeOf(at / (plan.width - plan.left - plan.right)));
}

function Axes({ plan, clock }: { plan: ChartPlan; clock: Clock }) {
  const room = plan.width - plan.left - plan.right;
  return (
    <>
      {plan.ticks.map((value) => (
        <>
          <path class="grid" d={`M${plan.left} ${plan.y(value)}H${plan.width - plan.right}`} />
          <text x={plan.left - 6} y={plan.y(value) + 4} text-anchor="end">
            {digits(value, plan.decimals)}
          </text>
        </>
      ))}
      {ticksOf(clock, 46 / Math.max(room, 46)).map((t) => (
        <text x={plan.x(t)} y={plan.height - 5} text-anchor="middle">
          {tickText(t)}
        </text>
      ))}
    </>
  );
}

interface LimitsProps {
  limits: readonly Limit[];
  plan: ChartPlan;
  shown: (si: number) => number;
}

/** The lines of limits, their names above them at the left; below where another line is near above. */
function Limits({ limits, plan, shown }: LimitsProps) {
  const lines = limits.map(({ at, words }) => ({ words, y: plan.y(shown(at)) }));
  const crowded = (y: number) => lines.some((other) => other.y < y && y - other.y < nearNames + 2);
  return (
    <>
      {lines.map(({ words, y }) => (
        <g class="limit" key={words}>
          <path d={`M${plan.left} ${y}H${plan.width - plan.right}`} />
          <text x={plan.left + 6} y={crowded(y) ? y + 12 : y - 4}>
            {words}
          </text>
        </g>
      ))}
    </>
  );
}

interface Marked {
  told: Drawn;
  plan: ChartPlan;
  shown: (si: number) => number;
}

/** The letters at the ends of the lines. */
function Names({ told, plan, shown }: Marked) {
  const ends = told.courses.flatMap(({ letter, course }) => {
    const [t, value] = [course.time.at(-1), course.value.at(-1)];
    return t === undefined || value === undefined ? [] : [{ letter, x: plan.x(t), y: plan.y(shown(value)) }];
  });
  const [a, b] = ends;
  if (a && b && Math.abs(a.y - b.y) < nearNames && Math.abs(a.x - b.x) < nearNames) {
    return (
      <text x={a.x + 4} y={(a.y + b.y) / 2 + 4}>
        <tspan class="name-a">A</tspan>
        <tspan class="name-b">B</tspan>
      </text>
    );
  }
  return (
    <>
      {ends.map((e) => (
        <text x={e.x + 5} y={e.y + 4} class={e.letter === "A" ? "name-a" : "name-b"}>
          {e.letter}
        </text>
      ))}
    </>
  );
}

function Playhead({ told, plan, shown }: Marked) {
  const t = time.value;
  const x = plan.x(t);
  return (
    <>
      <path class="playhead" d={`M${x} ${plan.top - 4}V${plan.height - plan.foot}`} />
      {told.courses.map(({ letter, course }) => {
        const dot = dotOf(course, plan, shown, t);
        if (!dot) return null;
        return letter === "A" ? (
          <rect class="mark-a" x={dot.x - 4} y={dot.y - 4} width="8" height="8" />
        ) : (
          <circle class="mark-b" cx={dot.x} cy={dot.y} r="4" />
        );
      })}
    </>
  );
}
