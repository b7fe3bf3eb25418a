import { useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer, Want } from "../../../api/types";
import { capital, sentence } from "../../../draw/words";
import { useStanding } from "../../../state/ask";
import { product, setProduct, units } from "../../../state/look";
import { editable, station } from "../../../state/station";
import { Drawing } from "../../parts/Drawing";
import { EmptyArt } from "../../parts/EmptyArt";
import type { Finding } from "../../parts/finding";
import { Note, Refusal } from "../../parts/Note";
import { Seg } from "../../parts/Seg";
import { useWidth } from "../../replay/width";
import { addOnSite } from "../../site/adding";
import { Head, UndoButtons } from "../../shell/Shell";
import { asCalledHere, useLast, type Told } from "../../tank/answer";
import { Requirements } from "../../tank/Requirements";
import { roomOf } from "../../tank/state";
import { refusedKey, wantOf } from "./asks";
import { Detectors } from "./Detectors";
import type { KnownLine, LineTestDocument, TestedLine } from "./documents";
import { LinePanel, type Wrong } from "./LinePanel";
import { typed } from "./state";

const lineOf = (lines: readonly TestedLine[]) => lines.find((l) => l.product === product.value) ?? lines[0];

/** What temperature does to a test of a line, what a result proves, and what the leak detectors would have seen. */
export function LineTests() {
  const now = useStanding<Told<LineTestDocument>>(() => ({
    wants: [{ study: "line-test", units: units.value, ...wantOf(typed.value) }],
  }));
  const { document, problem } = useLast(now.answers?.[0]);
  const answer = now.answers?.[0];
  const refused = answer && "error" in answer ? refusedKey(answer.error) : null;
  const lines = document?.result.lines ?? [];
  const line = lineOf(lines);
  return (
    <>
      <Head title="Ledger" about={line ? `Line of ${line.system}: tests and leak detectors` : "Line tests and leak detectors"}>
        {line && lines.length > 1 && (
          <Seg
            label="Line"
            value={line.system}
            options={lines.map((l) => ({ value: l.system, text: l.system }))}
            onChange={(system) => setProduct(lines.find((l) => l.system === system)?.product ?? "")}
          />
        )}
        <UndoButtons />
      </Head>
      <p class="caution">
        <b>A line is proved tight by a certified tester, not by a computation.</b> A suspected leak is reported within the
        time the rule allows; explaining a reading does not cancel that duty.
      </p>
      <Refusal error={now.error} old={document !== null} />
      {problem && !(refused && line) && (
        <Note tone="bad" role="alert">
          {problem}
        </Note>
      )}
      {!document && !problem && <div class="skel-box" aria-hidden="true" />}
      {document && !line && <NoLine />}
      {document && line && <Known document={document} line={line} old={now.age === 2} wrong={refused && problem ? { key: refused, words: problem } : null} />}
    </>
  );
}

function NoLine() {
  return (
    <div class="empty">
      <EmptyArt />
      <h2>No line is entered</h2>
      <p>With a pump, its line and its leak detector this view tells what a test of the line proves, and how long to wait before it.</p>
      {editable.value && (
        <button type="button" class="btn go edit" onClick={() => addOnSite("line")}>
          Add a line on the Site sheet
        </button>
      )}
    </div>
  );
}

interface KnownProps {
  document: LineTestDocument;
  line: TestedLine;
  old: boolean;
  wrong: Wrong | null;
}

function Known({ document, line, old, wrong }: KnownProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const known = line.problem === null ? line : null;
  return (
    <div class="split ledgerview">
      <div class={`col${old ? " old" : ""}`} ref={box}>
        {line.problem !== null && <Missing words={line.problem} />}
        {known && <Tests line={known} width={width} />}
        {known && <Detectors line={known} result={document.result} />}
        <Requirements findings={document.findings.filter((f) => isOf(f, line))} />
        <p class="txt cautions">{document.cautions.join(" ")}</p>
      </div>
      <LinePanel line={line} wrong={wrong} />
    </div>
  );
}

/** Whether a finding is of the line: of the fuel, a pipe or a pump of it. */
function isOf(finding: Finding, line: TestedLine): boolean {
  const named = [line.product, line.system, ...(line.problem === null ? line.lines : [])];
  if (named.includes(finding.subject)) return true;
  const part = station.value?.parts.find((p) => p.id === finding.subject);
  return part !== undefined && part.kind === "pump" && (part.product === null || part.product === line.product);
}

const Missing = ({ words }: { words: string }) => (
  <Note tone="warn">
    <b>Not determined.</b> {asCalledHere(sentence(words))}
  </Note>
);

/** From this width on both charts stand beside each other [px]. */
const besideFrom = 860;

function Tests({ line, width }: { line: KnownLine; width: number }) {
  const stacked = width < besideFrom;
  const room = roomOf(width / (stacked ? 1 : 2) - 32);
  const want = (drawing: string): Want => ({
    drawing,
    prefix: drawing,
    product: line.system,
    width: room,
    units: units.value,
    ...wantOf(typed.value),
  });
  const drawn = useStanding<DrawingAnswer | ErrorAnswer>(
    () => (width > 0 ? { wants: [want("volume-test"), want("shut-pressure")] } : null),
    `${line.system} ${width > 0} ${room}`,
  );
  const [rate, pressure] = [useLastDrawn(drawn.answers?.[0]), useLastDrawn(drawn.answers?.[1])];
  const proofs = new Set(line.proves);
  const problems = [line.thermal.problem, line.pressure_test.problem].filter((p) => p !== null);
  const told = line.answer.slice(1).filter((words) => !proofs.has(words) && !problems.some((p) => words.includes(p)));
  return (
    <>
      <div class={`halves${stacked ? " stacked" : ""}`}>
        <div>
          <h2>
            What a volume test reads <span class="dim n">the pressure is held, the fuel measured</span>
          </h2>
          {line.thermal.problem === null ? (
            <Drawing answer={rate} age={drawn.age} label={`What a volume test of the line of ${line.system} reads over time`} />
          ) : (
            <Missing words={line.thermal.problem} />
          )}
        </div>
        <div>
          <h2>
            Pressure of the shut line <span class="dim n">both ends shut, the pressure read</span>
          </h2>
          {line.pressure_test.problem === null ? (
            <Drawing answer={pressure} age={drawn.age} label={`Pressure of the shut line of ${line.system} over time`} />
          ) : (
            <Missing words={line.pressure_test.problem} />
          )}
        </div>
      </div>
      <section class="part bt" aria-label="What the result proves">
        <h2>What passing and failing prove</h2>
        {line.proves.length > 0 ? (
          <ul class="proves">
            {line.proves.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        ) : (
          <p class="txt">
            {line.pressure_test.problem === null
              ? "Give the drop of pressure up to which the test passes: then this tells what a pass and a failure prove."
              : "Not determined before the pressure test is."}
          </p>
        )}
        {told.map((words) => (
          <p class="txt" key={words}>
            {asCalledHere(capital(words))}
          </p>
        ))}
      </section>
    </>
  );
}

/** A refused entry leaves the last drawing standing. */
function useLastDrawn(answer: DrawingAnswer | ErrorAnswer | undefined) {
  const last = useRef<DrawingAnswer | null>(null);
  if (answer && "svg" in answer) last.current = answer;
  return last.current ?? answer;
}
