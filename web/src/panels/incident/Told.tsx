import { units } from "../../state/look";
import { figuresOf } from "./answer/figures";
import type { View } from "./answer/view";
import { Cautions } from "../parts/Cautions";
import { Wide } from "../parts/Wide";

/** The figures of the kind, beside its courses. */
export function Figures({ view }: { view: View }) {
  const groups = figuresOf(view.document.result, units.value);
  if (!groups.length) return null;
  return (
    <section class="part figures" aria-label="Figures">
      {groups.map((group) => (
        <div key={group.title}>
          <h2>{group.title}</h2>
          <dl class="pairs">
            {group.rows.map(([what, text]) => (
              <>
                <dt>{what}</dt>
                <dd>{text}</dd>
              </>
            ))}
          </dl>
        </div>
      ))}
    </section>
  );
}

/** What has to be done before fuel flows again. */
export function Service({ view }: { view: View }) {
  const steps = view.document.result.return_to_service;
  if (!steps.length) return null;
  return (
    <section class="part" aria-label="Before fuel flows again">
      <h2>Before fuel flows again</h2>
      <ol class="steps">
        {steps.map((s) => (
          <li>
            <b>{s.step}</b>
            <span>
              {s.what}
              <small>
                By: {s.by}
                {s.source ? `. ${s.source}` : ""}
              </small>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What the answer rests on that nobody entered, and what it leaves out. */
export function Basis({ view }: { view: View }) {
  const { inputs } = view.document.result;
  const plain = (n: number) => String(Number(n.toPrecision(3)));
  const range = (low: number, high: number) => (low === high ? plain(low) : `${plain(low)} to ${plain(high)}`);
  return (
    <section class="part" aria-label="What it rests on">
      <h2>What it rests on</h2>
      {inputs.length > 0 && (
        <details>
          <summary>Figures that went in, in SI</summary>
          <Wide label="Figures that went in">
            <table class="tbl words">
              <thead>
                <tr>
                  <th scope="col">Figure</th>
                  <th scope="col">Value</th>
                  <th scope="col" class="l">Standing</th>
                  <th scope="col" class="l">Source</th>
                </tr>
              </thead>
              <tbody>
                {inputs.map((i) => (
                  <tr>
                    <th scope="row">{i.what}</th>
                    <td>
                      {range(i.value.low, i.value.high)} {i.unit}
                    </td>
                    <td class="l">{i.standing}</td>
                    <td class="l">{i.source && i.source !== i.standing ? i.source : ""}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Wide>
        </details>
      )}
      <Cautions of={view.document.cautions.slice(1)} />
    </section>
  );
}
