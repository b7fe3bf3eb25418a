import { digits, unitOf } from "../../draw/numbers";
import { capital, sentence } from "../../draw/words";
import { units } from "../../state/look";
import type { Explained } from "./documents";
import { axisOf, fallsOf, notKnown, type Fall } from "./rows";

const [rowHeight, barHeight, top, foot] = [28, 14, 6, 24];

/** What makes the sum, one cause behind the other, each with its standard error. */
export function Terms(props: { explained: Explained; deviation_m3: number | null; width: number }) {
  const { explained, width } = props;
  const falls = fallsOf(explained, props.deviation_m3, units.value);
  if (width <= 0) return null;
  const narrow = width < 420;
  const [left, right] = [narrow ? 148 : 164, narrow ? 66 : 84];
  const ends = falls.flatMap((f) => [f.from, f.to - (f.error ?? 0), f.to + (f.error ?? 0)]);
  const steps = axisOf(Math.min(...ends), Math.max(...ends), narrow ? 2 : 4);
  const [low, high] = [steps[0] ?? -1, steps.at(-1) ?? 1];
  const x = (value: number) => left + ((value - low) / (high - low)) * (width - left - right);
  const height = top + falls.length * rowHeight + foot;
  const unknown = notKnown(explained);
  const said = falls.map((f) => `${f.name} ${f.words}`).join(", ");
  return (
    <>
      <svg class="chart ledgerchart" width={width} height={height} role="img" aria-label={`What makes it, ${unitOf("volume", units.value)}: ${said}.`}>
        <defs>
          <pattern id="ledger-rest" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect class="resthatch" width="6" height="6" />
            <path class="restline" d="M0 0V6" />
          </pattern>
        </defs>
        {steps.map((value) => (
          <g key={value}>
            <path class={value === 0 ? "zero" : "grid"} d={`M${x(value)} ${top}V${height - foot}`} />
            <text x={x(value)} y={height - 6} text-anchor="middle">
              {digits(value, 0)}
            </text>
          </g>
        ))}
        {falls.map((fall, i) => (
          <Bar key={fall.name} fall={fall} y={top + i * rowHeight} next={i + 1 < falls.length} x={x} left={left} width={width} />
        ))}
      </svg>
      {unknown.length > 0 && (
        <ul class="notknown">
          {unknown.map((term) => (
            <li key={term.cause}>
              <b>{capital(term.cause)}</b>, not known: {sentence(term.words)}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Bar(props: { fall: Fall; y: number; next: boolean; x: (value: number) => number; left: number; width: number }) {
  const { fall, x, y } = props;
  const middle = y + rowHeight / 2;
  const [a, b] = [x(Math.min(fall.from, fall.to)), x(Math.max(fall.from, fall.to))];
  const whisker = fall.error === null ? null : [x(fall.to - fall.error), x(fall.to + fall.error)];
  const strong = fall.kind === "term" ? "" : "strong";
  return (
    <g>
      <text class={`fallname ${strong}`} x={props.left - 10} y={middle + 4} text-anchor="end">
        {capital(fall.name)}
      </text>
      <rect class={`fall ${fall.kind}`} x={a} y={middle - barHeight / 2} width={Math.max(b - a, 1)} height={barHeight} />
      {props.next && fall.kind !== "sum" && <path class="grid" d={`M${x(fall.to)} ${middle + barHeight / 2}V${middle + rowHeight - barHeight / 2}`} />}
      {whisker && (
        <path class={`whisker ${fall.kind}`} d={`M${whisker[0]} ${middle}H${whisker[1]}M${whisker[0]} ${middle - 5}v10M${whisker[1]} ${middle - 5}v10`} />
      )}
      <text class={`fallname ${strong}`} x={props.width} y={middle + 4} text-anchor="end">
        {fall.words}
      </text>
    </g>
  );
}
