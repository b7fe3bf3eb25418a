import { dayWords } from "../../../draw/days";
import { figure, unitOf } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { StatusShape, stateWords } from "../../parts/status";
import type { Finding } from "../../parts/finding";
import { Wide } from "../../parts/Wide";
import type { BookMeters, Meter, MeterLimit } from "./documents";
import { isCorrected, lastOf, money, percent, standing, stateOf, worstAgainst, worstOf } from "./rows";
import { chosenMeter } from "./state";

const volume = (si: number | null) => figure("volume", units.value, si, 0);
const draw = (si: number | null | undefined) => figure("draw", units.value, si);

interface ListProps {
  meters: readonly Meter[];
  findings: readonly Finding[];
  limits: readonly MeterLimit[];
  chosen: string;
}

/** Every meter with its last proving; pressing one shows it. */
export function MeterList(props: ListProps) {
  const system = units.value;
  return (
    <Wide label="Meters, table">
      <table class="tbl">
        <thead>
          <tr>
            <th scope="col">Meter</th>
            <th scope="col" class="l">State</th>
            <th scope="col" class="l">Proved</th>
            <th scope="col">Error, %</th>
            <th scope="col">Standard error, %</th>
            <th scope="col">Worst draw, {unitOf("draw", system)}</th>
            <th scope="col">Worst draw, %</th>
            <th scope="col">In a year, {unitOf("volume", system)}</th>
            <th scope="col">Money in a year</th>
          </tr>
        </thead>
        <tbody>
          {props.meters.map((m) => {
            const last = lastOf(m);
            const worst = worstOf(last);
            const state = stateOf(m.hose, props.findings, props.limits);
            return (
              <tr key={m.hose} class={m.hose === props.chosen ? "chosenrow" : ""}>
                <th scope="row">
                  <button type="button" class="link" aria-pressed={m.hose === props.chosen} onClick={() => (chosenMeter.value = m.hose)}>
                    {m.hose}
                  </button>
                </th>
                <td class="l state">
                  <StatusShape state={state} /> {stateWords[state]}
                </td>
                <td class="l">{last ? dayWords(last.day) : "–"}</td>
                <td>{percent(m.error)}</td>
                <td>{percent(m.standard_error)}</td>
                <td>{draw(worst?.error_m3)}</td>
                <td>{percent(worst?.error ?? null)}</td>
                <td>{volume(m.year.error_m3)}</td>
                <td>{money(m.year) ?? "–"}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Wide>
  );
}

interface LimitsProps {
  meter: Meter;
  limits: readonly MeterLimit[];
  findings: readonly Finding[];
}

/** Each limit against its worst draw of the last proving, in both forms: they need not agree. */
export function Limits({ meter, limits, findings }: LimitsProps) {
  const unit = unitOf("draw", units.value);
  const against = worstAgainst(lastOf(meter));
  if (!against.length) return null;
  return (
    <Wide label={`Limits of the meter of ${meter.hose}, table`}>
      <table class="tbl">
        <thead>
          <tr>
            <th scope="col">Limit</th>
            <th scope="col">Allowed, {unit}</th>
            <th scope="col">Allowed, %</th>
            <th scope="col">Worst draw, {unit}</th>
            <th scope="col">Worst draw, %</th>
            <th scope="col" class="l">Stands</th>
            <th scope="col" class="l">How the limit is known</th>
          </tr>
        </thead>
        <tbody>
          {against.map(({ draw: worst, judged }) => {
            const limit = limits[judged.limit];
            if (!limit) return null;
            const { state, words } = standing({ hose: meter.hose, judged, limit, corrected: isCorrected(worst) }, findings);
            return (
              <tr key={judged.limit}>
                <th scope="row" class="words">{limit.name}</th>
                <td>{draw(judged.allowed_m3)}</td>
                <td>{percent(judged.allowed_share)}</td>
                <td>{draw(judged.error_m3)}</td>
                <td>{percent(judged.error)}</td>
                <td class="l state">
                  <StatusShape state={state} /> {words}
                </td>
                <td class="l words">
                  {limit.known}
                  {limit.clause ? `: ${limit.clause}` : ""}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Wide>
  );
}

export function Provings({ meter }: { meter: Meter }) {
  return (
    <>
      <h3>Provings, the last first</h3>
      <Wide label={`Provings of the meter of ${meter.hose}, table`}>
        <table class="tbl">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col" class="l">State</th>
              <th scope="col">Draws</th>
              <th scope="col">Fast, %</th>
              <th scope="col">Slow, %</th>
              <th scope="col">Standard error, %</th>
              <th scope="col">Largest less smallest, %</th>
            </tr>
          </thead>
          <tbody>
            {meter.provings.toReversed().map((p) => (
              <tr key={`${p.day} ${p.as_left}`}>
                <th scope="row">{dayWords(p.day)}</th>
                <td class="l">{p.as_left ? "as left" : "as found"}</td>
                <td>{p.all.draws}</td>
                <td>{percent((p.fast ?? p.all).mean)}</td>
                <td>{percent(p.slow?.mean ?? null)}</td>
                <td>{percent((p.fast ?? p.all).standard_error)}</td>
                <td>{percent((p.fast ?? p.all).repeatability)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </>
  );
}

/** Which meters explain the difference of a book; what one that is not proved would have to be off by. */
export function Book({ book }: { book: BookMeters }) {
  const unit = unitOf("volume", units.value);
  return (
    <section class="part bt" aria-label={`Meters of ${book.book}`}>
      <h2>
        Which meters explain {book.book} <span class="dim n">{book.product}</span>
      </h2>
      {book.answer.map((words) => (
        <p class="txt" key={words}>
          {words}
        </p>
      ))}
      <Wide label={`Which meters explain ${book.book}, table`}>
        <table class="tbl">
          <thead>
            <tr>
              <th scope="col">Meter</th>
              <th scope="col">Sold, {unit}</th>
              <th scope="col">Error, %</th>
              <th scope="col">Adds, {unit}</th>
              <th scope="col">Standard error, {unit}</th>
              <th scope="col">Would have to err by, %</th>
            </tr>
          </thead>
          <tbody>
            {book.meters.map((m) => (
              <tr key={m.hose ?? ""}>
                <th scope="row">{m.hose ?? "sold without a hose"}</th>
                <td>{volume(m.sold_m3)}</td>
                <td>{m.error === null ? "not proved" : percent(m.error)}</td>
                <td>{figure("volume", units.value, m.volume_m3, 1)}</td>
                <td>{figure("volume", units.value, m.standard_error_m3, 1)}</td>
                <td>{percent(m.alone_error)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </section>
  );
}
