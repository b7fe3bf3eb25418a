import { figure, unitOf } from "../../draw/numbers";
import { freshness, type Standing } from "../../state/ask";
import { product, units } from "../../state/look";
import { Drawing } from "../parts/Drawing";
import { ofProduct, type Answer, type Drawn } from "./answers";
import { Scroll } from "../parts/Scroll";
import { Letter } from "../parts/Letter";
import { Aged, Behind, NoAnswer } from "./pieces";
import { documentOf, errorOf, type FlowDocument, type LadderTold } from "./told/documents";
import { keepsWords, proofWords } from "./told/words";

const slowestWords = (step: { slowest_hose: string; tied: number; open: number }) =>
  step.tied < 2
    ? step.slowest_hose
    : step.tied === step.open
      ? "all alike"
      : `${step.slowest_hose} and ${step.tied - 1} alike`;

/** The slowest hose by the number of hoses open, and how many keep the flow asked for. */
export function Ladder(props: { now: Standing<Answer>; of: "A" | null }) {
  const document = documentOf<FlowDocument>(props.now.answers?.[0]);
  const answer = props.now.answers?.[1] as Drawn | undefined;
  const ladders = document?.result.ladders ?? [];
  const worst = ofProduct(
    ladders.filter((l) => l.order === "worst"),
    (l) => l.system,
    product.value,
  );
  const spread = ladders.find((l) => l.system === worst?.system && l.order === "spread") ?? null;
  const keep = document?.options.keep_flow_m3_per_s ?? null;
  return (
    <section class="chartbox">
      <h2>
        {props.of && <Letter of={props.of} />} How many hoses at once{" "}
        <span class="dim">
          {worst ? `${worst.system}, slowest hose by the number open` : "slowest hose by the number open"}
        </span>
      </h2>
      <Aged as={freshness(props.now)}>
        {worst && keep !== null && worst.keeps !== null && (
          <p class="says">{keepsWords(worst.keeps, worst.steps.length, keep, units.value)}</p>
        )}
        {answer && "error" in answer ? (
          !worst && <NoAnswer answer={answer} />
        ) : (
          <>
            <Scroll label="Drawing" class="plate">
              <Drawing answer={answer} label={worst ? ladderWords(worst) : "Slowest hose by the number open"} />
            </Scroll>
            {answer && <p class="cap">{answer.remarks.join(" ")}</p>}
          </>
        )}
        {worst && (
          <Behind title="Numbers by hoses open" open={errorOf(answer) !== null}>
            <LadderTable worst={worst} spread={spread} />
          </Behind>
        )}
      </Aged>
    </section>
  );
}

const ladderWords = (worst: LadderTold) =>
  `Flow of the slowest hose in ${unitOf("flow", units.value)} by hoses open, worst set: ${worst.steps
    .map((s) => `${s.open}: ${figure("flow", units.value, s.slowest_m3_per_s)}`)
    .join(", ")}.`;

function LadderTable(props: { worst: LadderTold; spread: LadderTold | null }) {
  const u = units.value;
  return (
    <table class="tbl">
      <thead>
        <tr>
          <th scope="col">Open</th>
          <th scope="col">Worst set, {unitOf("flow", u)}</th>
          <th scope="col" class="l">
            Slowest
          </th>
          <th scope="col">Typical order, {unitOf("flow", u)}</th>
          <th scope="col" class="l">
            Worst is
          </th>
        </tr>
      </thead>
      <tbody>
        {props.worst.steps.map((step) => (
          <tr key={step.open}>
            <th scope="row">{step.open}</th>
            <td>{figure("flow", u, step.slowest_m3_per_s)}</td>
            <td class="l">{slowestWords(step)}</td>
            <td>{figure("flow", u, props.spread?.steps.find((s) => s.open === step.open)?.slowest_m3_per_s)}</td>
            <td class="l">{proofWords(step.proof)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
