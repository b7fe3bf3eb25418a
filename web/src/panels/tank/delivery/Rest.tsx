import { useState } from "preact/hooks";
import { withHint } from "../../../api/client";
import { clockText } from "../../../draw/clock";
import { figure, unitOf } from "../../../draw/numbers";
import { capital, sentence } from "../../../draw/words";
import { units } from "../../../state/look";
import { countOf, grouped, states, type Group } from "../../checks/findings";
import { Cautions } from "../../parts/Cautions";
import type { Finding } from "../../parts/finding";
import { Seg } from "../../parts/Seg";
import { StatusShape, stateWords } from "../../parts/status";
import { Wide } from "../../parts/Wide";
import { sidesOf } from "../../replay/view";
import type { DeliveryDocument, DeliverySpan } from "./documents";
import { dropFinding } from "./finding_words";
import type { DropSide, DropView } from "./view";
import { alarmWords, bookOf, endWords, hoseWords, rangeWords, type ShownBook } from "./words";

/** All that stands below the player. */
export function Rest({ view }: { view: DropView }) {
  const [chosen, choose] = useState<"A" | "B">("A");
  const side = sidesOf(view).find((s) => s.letter === chosen) ?? view.a;
  return (
    <div class="rest">
      <Findings findings={view.document.findings} />
      <Ends view={view} side={side} onChoose={choose} />
      <Uncertain document={view.document} />
      <section class="part" aria-label="What it rests on">
        <h2>What it rests on</h2>
        <Cautions
          of={[
            ...view.document.warnings.map((w) => sentence(withHint(w))),
            ...view.document.result.notes.map(sentence),
            ...view.document.cautions,
          ]}
        />
      </section>
    </div>
  );
}

function Findings({ findings }: { findings: readonly Finding[] }) {
  if (!findings.length) return null;
  const groups = grouped(findings);
  const told = states
    .filter((s) => countOf(findings, s) > 0)
    .map((s) => `${countOf(findings, s)} ${stateWords[s].toLowerCase()}`);
  const loud = groups.filter((g) => g.state !== "meets" && g.state !== "does not apply");
  const quiet = groups.filter((g) => !loud.includes(g));
  return (
    <section class="part" aria-label="Findings">
      <h2>Findings</h2>
      <p class="cap">Of the delivery as it is asked for: {told.join(", ")}.</p>
      <FindingList groups={loud} />
      {quiet.length > 0 && (
        <details>
          <summary>What is met or does not apply</summary>
          <FindingList groups={quiet} />
        </details>
      )}
    </section>
  );
}

const FindingList = ({ groups }: { groups: readonly Group[] }) => (
  <ul class="statuslist">
    {groups.map((g) => (
      <li key={g.key}>
        <StatusShape state={g.state} /> <b>{stateWords[g.state]}</b>: {dropFinding(g, units.value)}
      </li>
    ))}
  </ul>
);

interface EndsProps {
  view: DropView;
  side: DropSide;
  onChoose: (letter: "A" | "B") => void;
}

/** How a run ends: what stays in the hose, and its book. */
function Ends({ view, side, onChoose }: EndsProps) {
  const system = units.value;
  return (
    <section class="part" aria-label="How it ends">
      <div class="part-head">
        <h2>How it ends</h2>
        {view.b && (
          <Seg
            label="The end of"
            value={side.letter}
            onChange={onChoose}
            options={sidesOf(view).map((s) => ({ value: s.letter, text: s.letter }))}
          />
        )}
      </div>
      <p class="cap">{side.words}</p>
      <p class="said">{endWords(side.run)}</p>
      {alarmWords(side.run).map((text) => (
        <p class="said">{text}</p>
      ))}
      <h3>What stays in the hose</h3>
      <ul class="cautions">
        {hoseWords(side.run, system).map((text) => (
          <li>{text}</li>
        ))}
      </ul>
      <Book book={bookOf(side.run, system)} />
    </section>
  );
}

/** Every volume that moved, and what is not explained. */
function Book({ book }: { book: ShownBook }) {
  const unit = unitOf("volume", units.value);
  return (
    <>
      <h3>The book</h3>
      <Wide label="The book">
        <table class="tbl">
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col" class="l">
                To
              </th>
              <th scope="col">{unit}</th>
            </tr>
          </thead>
          <tbody>
            {book.liquid.map((m) => (
              <Move {...m} />
            ))}
            <Move from="Liquid in the tanks" to="" amount={book.dropped} kind="sum" />
            {book.vapor.map((m) => (
              <Move {...m} />
            ))}
          </tbody>
        </table>
      </Wide>
      <p class="cap">
        What moved leaves {book.balance[0]} of the largest amount of liquid unexplained, and {book.balance[1]} of vapor,
        which is measured at the pressure of the air outside.
      </p>
    </>
  );
}

const Move = (props: { from: string; to: string; amount: string; kind?: string }) => (
  <tr class={props.kind ?? ""}>
    <th scope="row">{capital(props.from)}</th>
    <td class="l">{props.to}</td>
    <td>{props.amount}</td>
  </tr>
);

/** What uncertain values do, one at a time. */
function Uncertain({ document }: { document: DeliveryDocument }) {
  const system = units.value;
  const words = rangeWords(document, system);
  if (!words) return null;
  return (
    <section class="part" aria-label="Uncertain values">
      <h2>Uncertain values</h2>
      <p class="said">{words}</p>
      <details>
        <summary>Each of them</summary>
        <Wide label="Uncertain values">
          <table class="tbl">
            <thead>
              <tr>
                <th scope="col">Value</th>
                <th scope="col">It takes, at its low and high end</th>
                <th scope="col">Vapor space, {unitOf("vapor pressure", system)}</th>
              </tr>
            </thead>
            <tbody>
              {document.result.spans.map((s) => (
                <Span key={s.value} span={s} />
              ))}
            </tbody>
          </table>
        </Wide>
      </details>
    </section>
  );
}

function Span({ span: s }: { span: DeliverySpan }) {
  const pressure = (si: number) => figure("vapor pressure", units.value, si);
  return (
    <tr>
      <th scope="row">{s.value}</th>
      <td>
        {clockText(s.time_at_low_s)} to {clockText(s.time_at_high_s)}
      </td>
      <td>
        {pressure(s.highest_ullage_pressure_at_low_gauge_pa)} to {pressure(s.highest_ullage_pressure_at_high_gauge_pa)}
      </td>
    </tr>
  );
}
