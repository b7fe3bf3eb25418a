import { figure, span, unitOf, withUnit } from "../../../draw/numbers";
import { capital, sentence } from "../../../draw/words";
import { units } from "../../../state/look";
import { StatusShape } from "../../parts/status";
import { Wide } from "../../parts/Wide";
import { asCalledHere } from "../../tank/answer";
import { hoursOrMinutes } from "./asks";
import type { Detector, KnownLine, LineTestDocument } from "./documents";
import { quietState } from "./quiet";
import { QuietTimes } from "./QuietTimes";

type Result = LineTestDocument["result"];

const dash = "–";
const time = (s: number | null) => (s === null ? dash : hoursOrMinutes(s));

export function Detectors({ line, result }: { line: KnownLine; result: Result }) {
  if (!line.detectors.length) {
    return (
      <section class="part bt" aria-label="Leak detectors">
        <h2>Leak detector</h2>
        <p class="txt">None is entered on the pump of this line. Enter the leak detector of the pump, under “Values in this view”.</p>
      </section>
    );
  }
  return (
    <>
      {line.detectors.map((d) => (
        <OfPump key={d.pump} detector={d} result={result} />
      ))}
    </>
  );
}

function OfPump({ detector, result }: { detector: Detector; result: Result }) {
  return (
    <section class="part bt" aria-label={`Leak detector of ${detector.pump}`}>
      <h2>
        Leak detector of pump {detector.pump} <span class="dim n">{detector.kind ?? "kind not entered"}</span>
      </h2>
      {detector.answer.map((words) => (
        <p class="txt" key={words}>
          {asCalledHere(words)}
        </p>
      ))}
      <Detections detector={detector} quiet={result.quiet_s} />
      <QuietTimes quiet={result.quiet_s} by={result.quiet_by} detections={detector.detections} />
      <Catches detector={detector} />
    </section>
  );
}

function Detections({ detector, quiet }: { detector: Detector; quiet: readonly number[] }) {
  const system = units.value;
  const rate = unitOf("leak", system);
  if (!detector.detections.length) return null;
  return (
    <Wide label={`What the detector of ${detector.pump} finds, table`}>
      <table class="tbl">
        <thead>
          <tr>
            <th scope="col">Test</th>
            <th scope="col">Finds, {rate}</th>
            <th scope="col">at, {unitOf("pressure", system)}</th>
            <th scope="col">Same leak at the pressure held, {rate}</th>
            <th scope="col">Trips falsely until</th>
            <th scope="col">Quiet time needed</th>
            <th scope="col" class="l">Quiet times here</th>
            <th scope="col" class="l">What follows</th>
          </tr>
        </thead>
        <tbody>
          {detector.detections.map((d) => {
            const { state, words } = quietState(d, quiet);
            return (
              <tr key={d.name}>
                <th scope="row">{capital(d.name)}</th>
                <td>{figure("leak", system, d.detects_m3_per_s, 3)}</td>
                <td>{figure("pressure", system, d.at_pressure_gauge_pa)}</td>
                <td>{d.at_held_m3_per_s ? span("leak", system, d.at_held_m3_per_s.low, d.at_held_m3_per_s.high, 3) : dash}</td>
                <td>{d.false_until_s === 0 ? "never" : time(d.false_until_s)}</td>
                <td>{time(d.quiet_needed_s)}</td>
                <td class="l state">
                  <StatusShape state={state} /> {words}
                </td>
                <td class="l words">{asCalledHere(sentence(d.words))}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Wide>
  );
}

/** What a leak of the published rate passes at the site's pressures: what the yearly test should catch. */
function Catches({ detector }: { detector: Detector }) {
  const system = units.value;
  const rate = unitOf("leak", system);
  if (!detector.catches.length) return null;
  return (
    <>
      <h3>
        Expected catch of a simulated leak{" "}
        <span class="dim n">3 gal/h at 10 psi, a sharp hole of {withUnit("bore", system, detector.orifice_m, 3)}</span>
      </h3>
      <Wide label={`Expected catch of a simulated leak, pump ${detector.pump}, table`}>
        <table class="tbl">
          <thead>
            <tr>
              <th scope="col">At</th>
              <th scope="col">Pressure, {unitOf("pressure", system)}</th>
              <th scope="col">Sharp hole, {rate}</th>
              <th scope="col">Narrow crack, {rate}</th>
              <th scope="col">Caught in a minute, sharp hole, {unitOf("caught", system)}</th>
            </tr>
          </thead>
          <tbody>
            {detector.catches.map((c) => (
              <tr key={c.where}>
                <th scope="row">{capital(c.where)}</th>
                <td>{figure("pressure", system, c.pressure_gauge_pa)}</td>
                <td>{figure("leak", system, c.sharp_m3_per_s, 3)}</td>
                <td>{figure("leak", system, c.laminar_m3_per_s, 3)}</td>
                <td>{figure("caught", system, c.caught_in_a_minute_m3, 0)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </>
  );
}
