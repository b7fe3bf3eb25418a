import { useState } from "preact/hooks";
import { decimalsOf, digits, unitOf, valueIn } from "../../draw/numbers";
import { units } from "../../state/look";
import { Seg } from "../parts/Seg";
import { shownLedger, type ShownLine } from "./answer/ledger";
import { sidesOf } from "../replay/view";
import type { View } from "./answer/view";
import { Wide } from "../parts/Wide";

/** Every volume that moved, with its cause. */
export function Ledger({ view }: { view: View }) {
  const [chosen, choose] = useState<"A" | "B">("A");
  const sides = sidesOf(view);
  const side = sides.find((s) => s.letter === chosen) ?? view.a;
  const system = units.value;
  // A book that adds up has one number of decimals: two where little is lost.
  const decimals = valueIn("volume", system, side.run.escaped_m3) < 10 ? 2 : decimalsOf("volume", system);
  const ledger = shownLedger(side.run, system, decimals);
  const unit = unitOf("volume", system);
  const figure = (steps: number) => digits(steps / 10 ** decimals, decimals);
  return (
    <section class="part" aria-label="Ledger">
      <div class="part-head">
        <h2>Where it went, by the end</h2>
        {view.b && (
          <Seg
            label="Ledger of"
            value={side.letter}
            onChange={choose}
            options={sides.map((s) => ({ value: s.letter, text: s.letter }))}
          />
        )}
      </div>
      <p class="cap">{side.words}</p>
      {ledger.escapes.length ? (
        <Wide label="What escapes">
          <table class="tbl">
            <LineHead first="Cause of the loss" unit={unit} />
            <tbody>
              {ledger.escapes.map((line) => (
                <Line line={line} figure={figure} />
              ))}
              <tr class="sum">
                <th scope="row">Lost</th>
                <td class="l" />
                <td class="l" />
                <td class="l" />
                <td>{figure(ledger.lost)}</td>
              </tr>
            </tbody>
          </table>
        </Wide>
      ) : (
        <p class="flat">Nothing escapes.</p>
      )}
      {ledger.moves.length > 0 && (
        <details>
          <summary>What moves otherwise</summary>
          <Wide label="What moves otherwise">
            <table class="tbl">
              <LineHead first="Cause" unit={unit} />
              <tbody>
                {ledger.moves.map((line) => (
                  <Line line={line} figure={figure} />
                ))}
              </tbody>
            </table>
          </Wide>
        </details>
      )}
      <details>
        <summary>What each place holds</summary>
        <Wide label="What each place holds">
          <table class="tbl">
            <thead>
              <tr>
                <th scope="col">Place</th>
                <th scope="col">Start, {unit}</th>
                <th scope="col">In, {unit}</th>
                <th scope="col">Out, {unit}</th>
                <th scope="col">End, {unit}</th>
              </tr>
            </thead>
            <tbody>
              {ledger.places.map((p) => (
                <tr>
                  <th scope="row">{p.place}</th>
                  {[p.start, p.in, p.out, p.end].map((steps) => (
                    <td>{figure(steps)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Wide>
        <p class="cap">Start and in less out is end. A tank or line that is told from zero counts its change.</p>
      </details>
    </section>
  );
}

const LineHead = ({ first, unit }: { first: string; unit: string }) => (
  <thead>
    <tr>
      <th scope="col">{first}</th>
      <th scope="col" class="l">
        From
      </th>
      <th scope="col" class="l">
        To
      </th>
      <th scope="col" class="l">
        Product
      </th>
      <th scope="col">{unit}</th>
    </tr>
  </thead>
);

const Line = ({ line, figure }: { line: ShownLine; figure: (steps: number) => string }) => (
  <tr>
    <th scope="row">{line.cause}</th>
    <td class="l">{line.from}</td>
    <td class="l">{line.to}</td>
    <td class="l">{line.product || "any"}</td>
    <td>{figure(line.steps)}</td>
  </tr>
);
