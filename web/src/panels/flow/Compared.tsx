import { figure, signed, unitOf } from "../../draw/numbers";
import { freshness, type Standing } from "../../state/ask";
import { product, units } from "../../state/look";
import { ofProduct } from "./answers";
import { Cautions } from "../parts/Cautions";
import { Refusal } from "../parts/Note";
import { Aged, Behind, NoAnswer } from "./pieces";
import { differingRows, findingChangeWords, verdictWords, worthHeadline, worthWords } from "./told/compare";
import { documentOf, errorOf, type CompareDocument, type Told, type WorthTold } from "./told/documents";
import { WorthChart } from "./WorthChart";

/** Whether B is worth it, and from how many hoses open. */
export function Compared(props: { now: Standing<Told<CompareDocument>>; keep: number | null }) {
  const answer = props.now.answers?.[0];
  const error = errorOf(answer);
  const result = documentOf<CompareDocument>(answer)?.result;
  const worth = ofProduct(result?.worth ?? [], (w) => w.system, product.value);
  const none = result?.no_answer.find((n) => n.system === product.value);
  const differing = differingRows(result?.rows ?? [], units.value);
  return (
    <section class="chartbox compared">
      <h2>
        Is B worth it <span class="dim">{worth?.system ?? product.value}</span>
      </h2>
      <Refusal error={props.now.error} of="B" old={props.now.answers !== null} />
      <Aged as={freshness(props.now)}>
        {error && <NoAnswer answer={error} />}
        {none && (
          <p class="words">
            No answer: it is fed in {none.fed_in.toUpperCase()} only; {none.reason}.
          </p>
        )}
        {worth && (
          <>
            <p class="says">{worthHeadline(worth)}.</p>
            {worthWords(worth, units.value).map((w) => (
              <p key={w} class="words">
                {w}
              </p>
            ))}
            {worth.keeps_a !== null && worth.keeps_b !== null && props.keep !== null && (
              <p class="words">
                Every open hose keeps {figure("flow", units.value, props.keep)} {unitOf("flow", units.value)} with up to{" "}
                {worth.keeps_a} open in A, {worth.keeps_b} in B.
              </p>
            )}
            <WorthChart worth={worth} keep={props.keep} />
            <Behind title="A and B by hoses open">
              <WorthTable worth={worth} />
            </Behind>
          </>
        )}
        {result && (
          <>
            <FindingChanges changes={result.changed_findings} />
            {differing.length > 0 ? (
              <Behind title={`All figures that differ: ${differing.length}`}>
                <DifferenceTable rows={differing} />
              </Behind>
            ) : (
              <p class="words">No figure differs.</p>
            )}
            <Cautions of={documentOf<CompareDocument>(answer)?.cautions} />
          </>
        )}
      </Aged>
    </section>
  );
}

function WorthTable(props: { worth: WorthTold }) {
  const u = units.value;
  return (
    <table class="tbl">
      <thead>
        <tr>
          <th scope="col">Open</th>
          <th scope="col">A, {unitOf("flow", u)}</th>
          <th scope="col">B, {unitOf("flow", u)}</th>
          <th scope="col">Gain, %</th>
          <th scope="col" class="l">
            B
          </th>
        </tr>
      </thead>
      <tbody>
        {props.worth.steps.map((s) => (
          <tr key={s.open}>
            <th scope="row">{s.open}</th>
            <td>{figure("flow", u, s.slowest_a_m3_per_s)}</td>
            <td>{figure("flow", u, s.slowest_b_m3_per_s)}</td>
            <td>{s.gain === null ? "–" : signed(s.gain * 100, 1)}</td>
            <td class="l">{verdictWords(s)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function FindingChanges(props: { changes: CompareDocument["result"]["changed_findings"] }) {
  if (!props.changes.length) return <p class="words">No finding changes.</p>;
  return (
    <ul class="finding-changes">
      {findingChangeWords(props.changes).map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  );
}

function DifferenceTable(props: { rows: ReturnType<typeof differingRows> }) {
  return (
    <table class="tbl">
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col" class="l">
            Open
          </th>
          <th scope="col">A</th>
          <th scope="col">B</th>
          <th scope="col">Change</th>
          <th scope="col" class="l">
            Unit
          </th>
        </tr>
      </thead>
      <tbody>
        {props.rows.map((row, i) => (
          <tr key={i}>
            <th scope="row">{row.what}</th>
            <td class="l">{row.open}</td>
            <td>{row.a}</td>
            <td>{row.b}</td>
            <td>{row.change}</td>
            <td class="l">{row.unit}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
