import { digits, ticks } from "../../draw/numbers";
import { shownIn } from "../../state/lesson/session";
import { guessesOf, partsOfShown, rightGuesses, type Guesses, type Tally } from "../../state/lesson/tally";
import type { QuestionTold } from "../../state/lesson/told";
import { Shown } from "./Facts";

const guessesSaid = (n: number) => (n === 0 ? "No guess yet" : n === 1 ? "1 guess" : `${n} guesses`);

/** Guesses of a number, and the answer among them. */
export function Estimates({ q, tally, revealed }: { q: QuestionTold; tally: Tally; revealed: boolean }) {
  const text = shownIn(q.answer);
  const answer = partsOfShown(text);
  const tolerance = q.tolerance ?? 0;
  const guesses = guessesOf(tally.estimates, revealed && answer ? answer.number : null, tolerance);
  const any = tally.estimates.length > 0;
  return (
    <div class="les-estimates">
      <p class="les-form">
        Make a guess{answer?.unit ? `, in ${answer.unit}` : ""}. Within {Math.round(100 * tolerance)} % is right.
      </p>
      <div class="answer">
        {revealed && text !== null && (
          <p class="les-answer">
            <Shown text={text} />
          </p>
        )}
        <p class="typed">
          {tally.typed && <b>{tally.typed}</b>}
          <span>
            {guessesSaid(tally.estimates.length)}
            {revealed && any && `, ${rightGuesses(guesses)} right`}
          </span>
        </p>
      </div>
      {(any || revealed) && <Axis guesses={guesses} />}
    </div>
  );
}

const width = 960;
const [left, right] = [30, 930];
const base = 130;
const x = (place: number) => left + place * (right - left);
/** A stack of dots has this room over the axis. */
const room = 100;

function Axis({ guesses }: { guesses: Guesses }) {
  const { low, high, dots, answer } = guesses;
  const tallest = Math.max(1, ...dots.map((d) => d.over + 1));
  const rise = Math.min(22, room / tallest);
  const marks = ticks(high, 6).filter((t) => t >= low && t <= high);
  const step = (marks[1] ?? 1) - (marks[0] ?? 0);
  const decimals = step < 1 ? Math.ceil(-Math.log10(step) + 1e-9) : 0;
  const words = `${dots.map((d) => digits(d.value, decimals + 1)).join(", ")}${answer ? "; the answer is marked" : ""}`;
  return (
    <svg class="les-axis" viewBox={`0 0 ${width} 170`} role="img" aria-label={`Guesses: ${words}`}>
      {answer && <rect class="within" x={x(answer.from)} y="14" width={x(answer.to) - x(answer.from)} height={base - 14} />}
      {answer && <path class="answer" d={`M${x(answer.place)} 6V${base}`} />}
      <path class="axis" d={`M${left} ${base}H${right}`} />
      {marks.map((t) => (
        <g key={t}>
          <path class="axis" d={`M${x((t - low) / (high - low))} ${base}v8`} />
          <text x={x((t - low) / (high - low))} y={base + 30} text-anchor="middle">
            {digits(t, decimals)}
          </text>
        </g>
      ))}
      {dots.map((d, i) => (
        <circle key={i} class={d.right ? "right" : ""} cx={x(d.place)} cy={base - 12 - d.over * rise} r="9" />
      ))}
    </svg>
  );
}
