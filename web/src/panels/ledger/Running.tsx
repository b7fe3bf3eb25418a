import { dateOf, dayWords, daysIn, monthWords } from "../../draw/days";
import { digits, unitOf, valueIn } from "../../draw/numbers";
import { units } from "../../state/look";
import type { LedgerRow } from "./documents";
import { axisOf, limitAhead } from "./rows";

const box = { height: 250, left: 56, right: 56, top: 10, foot: 38 };

/** Running over and short as steps inside limits that open with throughput; dotted is ahead. */
export function Running(props: { rows: readonly LedgerRow[]; tone: string; width: number }) {
  const { rows, width } = props;
  const system = units.value;
  const last = rows.at(-1);
  if (!last || width <= 0) return null;
  const shown = (si: number) => valueIn("volume", system, si);
  const ahead = limitAhead(rows);
  const most = Math.max(ahead?.limit_m3 ?? 0, ...rows.map((r) => Math.max(r.limit_m3, Math.abs(r.running_m3))));
  const steps = axisOf(-shown(most), shown(most), 6);
  const [low, high] = [steps[0] ?? -1, steps.at(-1) ?? 1];
  const month = last.day.slice(0, 7);
  const days = daysIn(month);
  const plot = { right: width - box.right, foot: box.height - box.foot };
  const x = (date: number) => box.left + (date / days) * (plot.right - box.left);
  const y = (value: number) => box.top + ((high - value) / (high - low)) * (plot.foot - box.top);
  const at = (si: number) => y(shown(si)).toFixed(1);
  const inMonth = rows.filter((r) => r.day.startsWith(month));
  const first = inMonth[0] ?? last;
  const start = dateOf(first.day) - 1;
  const stairs = inMonth.map((r) => `V${at(r.running_m3)}H${x(dateOf(r.day)).toFixed(1)}`).join("");
  const limit = (sign: 1 | -1) => inMonth.map((r, i) => `${i ? "L" : "M"}${x(dateOf(r.day) - (i ? 0 : 1)).toFixed(1)} ${at(sign * r.limit_m3)}${i ? "" : `H${x(dateOf(r.day)).toFixed(1)}`}`).join("");
  const beyond = (sign: 1 | -1) => `${limit(sign)}V${sign > 0 ? box.top : plot.foot}H${x(start).toFixed(1)}Z`;
  const end = { x: x(dateOf(last.day)), y: y(shown(last.running_m3)) };
  return (
    <svg class="chart ledgerchart" width={width} height={box.height} role="img" aria-label={summary(rows)}>
      {steps.map((value) => (
        <g key={value}>
          <path class={value === 0 ? "zero" : "grid"} d={`M${box.left} ${y(value)}H${plot.right}`} />
          <text x={box.left - 6} y={y(value) + 4} text-anchor="end">
            {digits(value, 0)}
          </text>
        </g>
      ))}
      {([1, -1] as const).map((sign) => (
        <g key={sign}>
          <path class="beyond" d={beyond(sign)} />
          <path class="rulelimit" d={limit(sign)} />
          {ahead && (
            <path
              class="rulelimit ahead"
              d={`M${end.x} ${at(sign * last.limit_m3)}L${x(ahead.date)} ${at(sign * ahead.limit_m3)}`}
            />
          )}
        </g>
      ))}
      <text class="limitname" x={box.left + 8} y={box.top + 14}>
        limit, 1.0 % of sales + {system === "us" ? "130 gal" : "492 L"}
      </text>
      {inMonth.map((r) => r.deliveries > 0 && (
        <rect key={r.day} class={`delivery ${props.tone}`} x={x(dateOf(r.day) - 0.5) - 2} y={plot.foot - 9} width="4" height="9" />
      ))}
      <path class="stairs" d={`M${x(start)} ${y(0)}${stairs}`} />
      {inMonth.map((r) => r.outside && (
        <Outside key={r.day} x={x(dateOf(r.day))} y={y(shown(r.running_m3))} />
      ))}
      {!last.outside && <circle class="enddot" cx={end.x} cy={end.y} r="4.5" />}
      <text class="endname" x={end.x + 9} y={end.y + 4}>
        {digits(shown(last.running_m3), 0)}
      </text>
      {[1, 5, 10, 15, 20, 25, 30].filter((d) => d <= days).map((d) => (
        <text key={d} x={x(d)} y={plot.foot + 15} text-anchor="middle">
          {d}
        </text>
      ))}
      <text x={plot.right} y={box.height - 4} text-anchor="end">
        day of {monthWords(month)}, tick at each delivery
      </text>
    </svg>
  );
}

/** A day outside the limit: the octagon with a cross, as everywhere. */
export const Outside = (props: { x: number; y: number }) => (
  <g class="outside" transform={`translate(${props.x - 5.5} ${props.y - 5.5}) scale(.69)`}>
    <path class="fill" d="M5 1h6l4 4v6l-4 4H5l-4-4V5Z" />
    <path class="cut" d="M5.4 5.4l5.2 5.2M10.6 5.4l-5.2 5.2" />
  </g>
);

function summary(rows: readonly LedgerRow[]): string {
  const system = units.value;
  const last = rows.at(-1);
  const out = rows.filter((r) => r.outside).length;
  if (!last) return "";
  const said = (si: number) => `${digits(valueIn("volume", system, si), 0)} ${unitOf("volume", system)}`;
  return `Running over and short: ${said(last.running_m3)} on ${dayWords(last.day)}, the limit ${said(last.limit_m3)} either way, ${out} of ${rows.length} days outside. The table has each day.`;
}
