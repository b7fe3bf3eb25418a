import { useEffect, useMemo, useState } from "preact/hooks";
import { decimalsOfStep } from "../../draw/curve_chart";
import { exceedancePlan } from "../../draw/curve_exceedance";
import { amount, digits, unitOf, valueIn } from "../../draw/numbers";
import { units } from "../../state/look";
import { longRun } from "../../state/runs";
import { station } from "../../state/station";
import { Seg } from "../parts/Seg";
import { want } from "./answer/choice";
import type { IncidentAnswer, MonteCarlo } from "./answer/documents";
import { useWidth } from "../replay/width";

const sizes = ["200", "1000", "5000"] as const;

/** How the loss is spread when every uncertain figure is drawn: a long run, counted, that can be stopped. */
export function Spread() {
  const run = useMemo(() => longRun<IncidentAnswer>(), []);
  const [size, setSize] = useState<(typeof sizes)[number]>("1000");
  const asked = want.value;
  useEffect(() => run.stop, [run]);
  const now = run.now.value;
  const of = Number(now.want?.["runs"] ?? size);
  const running = now.state === "running";
  const { runs: _, ...before } = now.want ?? {};
  const old = now.answer && (now.revision !== station.value?.revision || !sameWant(before, asked ?? {}));
  const problem = now.state === "failed" ? now.error : now.answer?.error;
  const found = now.answer?.document?.result.spread;
  return (
    <section class="part" aria-label="Spread of the loss">
      <h2>How the loss is spread</h2>
      <p class="cap">Every uncertain figure is drawn anew for each run. The same seed gives the same draws.</p>
      <div class="run-ctl">
        <Seg
          label="Runs"
          value={size}
          onChange={setSize}
          options={sizes.map((value) => ({ value, text: digits(Number(value), 0) }))}
        />
        {running ? (
          <button type="button" class="btn" onClick={run.stop}>
            Stop
          </button>
        ) : (
          <button
            type="button"
            class="btn"
            disabled={!asked}
            onClick={() => asked && run.start({ ...asked, runs: Number(size) })}
          >
            Draw {digits(Number(size), 0)} runs
          </button>
        )}
        {running && (
          <>
            <progress max="1" value={now.share} aria-label="Runs done" />
            <span>
              {digits(Math.floor(now.share * of), 0)} of {digits(of, 0)}
            </span>
          </>
        )}
        <span role="status">{now.state === "stopped" ? "Stopped; nothing was kept of it." : ""}</span>
      </div>
      {problem && <p class="wrong">{problem}</p>}
      {found && (
        <div class={old ? "old" : ""}>
          {old && <p class="flat">This was drawn for what was asked before. Draw again.</p>}
          <Found spread={found} />
        </div>
      )}
    </section>
  );
}

const sameWant = (a: object, b: object) => JSON.stringify(a) === JSON.stringify(b);

function Found({ spread }: { spread: MonteCarlo }) {
  const system = units.value;
  const unit = unitOf("volume", system);
  const tenth = spread.exceeded_m3[spread.exceedance.findIndex((s) => s <= 0.1 + 1e-9)];
  return (
    <>
      {spread.mainly_illustrative && (
        <p class="flat">
          <b>Most of the spread comes from illustrative figures: put your own in their place before you act on it.</b>
        </p>
      )}
      <Curve spread={spread} />
      {tenth !== undefined && (
        <p class="cap">
          In one run of ten more than {amount(system, tenth)} {unit} escapes; the mean is{" "}
          {amount(system, spread.mean_escaped_m3)} {unit}. {digits(spread.runs, 0)} runs, seed{" "}
          {spread.seed}
          {spread.failed ? `, ${spread.failed} failed` : ""}.
        </p>
      )}
      <div class="figures">
        <table class="tbl">
          <thead>
            <tr>
              <th scope="col">Of all runs</th>
              <th scope="col">Lost at most, {unit}</th>
              <th scope="col">Outside at most, {unit}</th>
            </tr>
          </thead>
          <tbody>
            {spread.quantiles.map((q) => (
              <tr>
                <th scope="row">{digits(100 * q.share_below, 0)} %</th>
                <td>{amount(system, q.escaped_m3)}</td>
                <td>{amount(system, q.to_environment_m3)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <table class="tbl words">
          <thead>
            <tr>
              <th scope="col">What moves it most</th>
              <th scope="col">Rank correlation</th>
              <th scope="col" class="l">Standing</th>
            </tr>
          </thead>
          <tbody>
            {spread.weights.slice(0, 6).map((w) => (
              <tr>
                <th scope="row">{w.input}</th>
                <td>{digits(w.rank_correlation, 2)}</td>
                <td class="l">{w.illustrative ? "illustrative" : "entered or published"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

const height = 180;

function Curve({ spread }: { spread: MonteCarlo }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const system = units.value;
  const amounts = spread.exceeded_m3.map((v) => valueIn("volume", system, v));
  const plan = exceedancePlan(amounts, spread.exceedance, width, height);
  return (
    <figure ref={box}>
      <figcaption>
        <b>How often more than this escapes</b>, share of runs over {unitOf("volume", system)}
      </figcaption>
      {width > 0 && (
        <svg
          class="chart"
          role="img"
          width={width}
          height={height}
          aria-label="Share of runs in which more than an amount escapes; the table below holds the numbers."
        >
          {plan.yTicks.map((t) => (
            <>
              <path class="grid" d={`M${plan.left} ${t.y}H${width - plan.right}`} />
              <text x={plan.left - 6} y={t.y + 4} text-anchor="end">
                {digits(100 * t.share, 0)} %
              </text>
            </>
          ))}
          {plan.xTicks.map((t) => (
            <text x={t.x} y={height - 5} text-anchor="middle">
              {digits(t.value, decimalsOfStep(plan.xTicks[1]?.value ?? 1))}
            </text>
          ))}
          <path class="line-a" d={plan.path} />
        </svg>
      )}
    </figure>
  );
}
