import { ticks } from "../../../draw/numbers";
import { capital } from "../../../draw/words";
import { useWidth } from "../../replay/width";
import { hoursOrMinutes } from "./asks";
import type { Detection } from "./documents";

const box = { left: 4, right: 84, row: 22, bar: 12, top: 4, foot: 30 };
const hour = 3600;

interface QuietProps {
  quiet: readonly number[];
  by: string;
  detections: readonly Detection[];
}

/** The station's quiet times as bars, what each test of the detector needs as a named line. */
export function QuietTimes(props: QuietProps) {
  return props.quiet.length ? <Bars {...props} /> : <p class="txt">Quiet times of the lines: {props.by}.</p>;
}

function Bars(props: QuietProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const { quiet } = props;

  const needs = props.detections.flatMap((d) => (d.quiet_needed_s === null ? [] : [{ name: d.name, s: d.quiet_needed_s }]));
  const longest = Math.max(...quiet, ...needs.map((n) => n.s));
  const steps = ticks(longest / hour, Math.max(2, Math.min(6, Math.floor(width / 90))));
  const most = (steps.at(-1) ?? 1) * hour;
  const x = (s: number) => box.left + (s / most) * (width - box.left - box.right);
  const turned = (s: number) => x(s) > width - 190;
  const rows = quiet.length + needs.length;
  const foot = box.top + rows * box.row;
  const words = `${quiet.map(hoursOrMinutes).join(", ")} quiet in a day; ${needs.map((n) => `${n.name} needs ${hoursOrMinutes(n.s)}`).join(", ")}.`;
  return (
    <div ref={ref} class="quiet">
      <h3>
        Quiet times against what the tests need <span class="dim n">hours; {props.by}</span>
      </h3>
      {width > 0 && (
        <svg class="chart quietchart" width={width} height={foot + box.foot} role="img" aria-label={words}>
          {steps.map((h) => (
            <g key={h}>
              <path class="grid" d={`M${x(h * hour)} ${box.top}V${foot}`} />
              <text x={x(h * hour)} y={foot + 16} text-anchor={h === 0 ? "start" : "middle"}>
                {h}
              </text>
            </g>
          ))}
          {quiet.map((s, i) => (
              <rect key={i} class="quietbar" x={box.left} y={box.top + i * box.row + (box.row - box.bar) / 2} width={x(s) - box.left} height={box.bar} />
          ))}
          {needs.map((n) => (
            <path class="need" key={n.name} d={`M${x(n.s)} ${box.top}V${foot}`} />
          ))}
          {quiet.map((s, i) => (
            <text class="endname" key={i} x={x(s) + 6} y={box.top + i * box.row + box.row / 2 + 4}>
              quiet, {hoursOrMinutes(s)}
            </text>
          ))}
          {needs.map((n, i) => (
            <text
              class="endname"
              key={n.name}
              x={x(n.s) + (turned(n.s) ? -6 : 6)}
              y={box.top + (quiet.length + i) * box.row + box.row / 2 + 4}
              text-anchor={turned(n.s) ? "end" : "start"}
            >
              {capital(n.name)} needs {hoursOrMinutes(n.s)}
            </text>
          ))}
        </svg>
      )}
    </div>
  );
}
