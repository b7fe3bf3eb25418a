import { sentence } from "../../draw/words";
import { act, page, pageQuestions, question, shared, shownIn, tally, tallyOf, told, wordsIn } from "../../state/lesson/session";
import { barsOf, handsOf, letterOf, orderRows, type Tally } from "../../state/lesson/tally";
import type { Form, OptionTold, QuestionTold } from "../../state/lesson/told";
import { Estimates } from "./Estimates";

const asks: Readonly<Record<Form, string>> = {
  choice: "Which one is it?",
  fault: "Which part is at fault?",
  order: "In which order?",
  estimate: "Make a guess.",
};

/** A question of the page, for the room. */
export function QuestionView() {
  const { over, level } = shared.value.place;
  if (over.kind !== "question") return null;
  const q = question.value;
  if (!q) return <NoQuestion />;
  const many = pageQuestions.value.length;
  return (
    <div class="les-ask">
      <p class="les-where">
        <b>Ask the room</b> {over.at + 1} of {many}, level {q.level}
        {level > 0 && " only"}
      </p>
      {q.caution && <p class="les-caution">{sentence(q.caution)}</p>}
      <h1>{wordsIn(q)}</h1>
      <Answers q={q} revealed={over.revealed} />
      {over.revealed && (
        <p class="les-explains">
          {explanationOf(q)}
          {q.rests_on && <span class="rests"> It rests on a default: {q.rests_on}.</span>}
        </p>
      )}
      <div class="les-foot">
        <button type="button" class="btn go" onClick={() => act({ do: "ask" })}>
          {over.revealed ? "Back to the page" : "Show the answer"} <span class="kbd">a</span>
        </button>
        {many > 1 && (
          <button type="button" class="btn" onClick={() => act({ do: "question" })}>
            Next question <span class="kbd">n</span>
          </button>
        )}
        <Hint form={q.form} />
      </div>
    </div>
  );
}

export const explanationOf = (q: QuestionTold) =>
  shared.value.units === "si" ? q.explanation_si : q.explanation;

function NoQuestion() {
  const { questions, questionsProblem } = told.value;
  const why = questionsProblem ?? (questions ? "This page has no question for this station." : "Questions are on their way.");
  return (
    <div class="les-ask">
      <p class="les-where">
        <b>Ask the room</b> {page.value?.title}
      </p>
      <h1>{sentence(why)}</h1>
      <div class="les-foot">
        <button type="button" class="btn go" onClick={() => act({ do: "close" })}>
          Back to the page
        </button>
      </div>
    </div>
  );
}

const hints: Readonly<Record<Form, string>> = {
  choice: "Arrows choose an answer, digits count its hands.",
  fault: "Arrows choose an answer, digits count its hands.",
  order: "The room is counted when the order is shown: arrows and digits.",
  estimate: "Type each guess and press Enter. Backspace takes the last one away.",
};
const Hint = ({ form }: { form: Form }) => <p class="les-hint">{hints[form]}</p>;

function Answers({ q, revealed }: { q: QuestionTold; revealed: boolean }) {
  if (q.form === "estimate") return <Estimates q={q} tally={tallyOf(q)} revealed={revealed} />;
  if (q.form === "order") return <Order q={q} revealed={revealed} />;
  return <Choice q={q} revealed={revealed} />;
}

function Choice({ q, revealed }: { q: QuestionTold; revealed: boolean }) {
  const now = tallyOf(q);
  const bars = barsOf(now);
  return (
    <>
      <p class="les-form">{asks[q.form]}</p>
      <ol class={revealed ? "les-options revealed" : "les-options"}>
        {q.options.map((o, i) => (
          <li key={i} class={`${revealed && o.right ? "right" : ""} ${i === now.row ? "row" : ""}`}>
            <span class="letter">{letterOf(i)}</span>
            <Option of={o} revealed={revealed} />
            <Hands name={letterOf(i)} row={i} tally={now} bar={bars[i] ?? 0} />
          </li>
        ))}
      </ol>
    </>
  );
}

const Option = ({ of, revealed }: { of: OptionTold; revealed: boolean }) => (
  <div class="words">
    {wordsIn(of)}
    {revealed && of.right && <b>Right</b>}
    {revealed && !of.right && of.why && <small>{sentence(of.why)}</small>}
  </div>
);

/** Hands for one answer, as a bar and a number. */
function Hands(props: { name: string; row: number; tally: Tally; bar: number }) {
  const { name, row } = props;
  const hands = props.tally.counts[row] ?? 0;
  const all = handsOf(props.tally);
  return (
    <div class="hands">
      <span class="room">{all > 0 && <i class="bar" style={{ width: `${100 * props.bar}%` }} />}</span>
      <button type="button" aria-label={`One hand less for ${name}`} onClick={() => tally({ do: "hand", row, by: -1 })}>
        −
      </button>
      <output aria-label={`Hands for ${name}`}>{hands}</output>
      <button type="button" aria-label={`One hand more for ${name}`} onClick={() => tally({ do: "hand", row, by: 1 })}>
        +
      </button>
    </div>
  );
}

const Item = ({ of, revealed }: { of: OptionTold | undefined; revealed: boolean }) => (
  <div class="words">
    {of && wordsIn(of)}
    {revealed && of?.why && <small>{sentence(of.why)}</small>}
  </div>
);

function Order({ q, revealed }: { q: QuestionTold; revealed: boolean }) {
  const now = tallyOf(q);
  const bars = barsOf(now);
  const places = revealed ? q.order : q.options.map((_, place) => place);
  return (
    <>
      <p class="les-form">
        {asks.order}
        {revealed && <b> {q.order.map(letterOf).join(" ")}</b>}
      </p>
      <ol class={revealed ? "les-options revealed order" : "les-options order"}>
        {places.map((place) => (
          <li key={place} class={revealed ? "right" : ""}>
            <span class="letter">{letterOf(place)}</span>
            <Item of={q.options[place]} revealed={revealed} />
          </li>
        ))}
      </ol>
      {revealed && (
        <ul class="les-options had">
          {orderRows.map((name, i) => (
            <li key={name} class={i === now.row ? "row" : ""}>
              <div class="words">{i === 0 ? "Had it in this order" : "Had it otherwise"}</div>
              <Hands name={name} row={i} tally={now} bar={bars[i] ?? 0} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const wordsOf = (option: OptionTold | undefined) => (option ? wordsIn(option) : "");

/** The right answer of a question in words, for the presenter. */
export function answerWords(q: QuestionTold): string {
  if (q.form === "order") {
    return q.order.map((place) => `${letterOf(place)} ${wordsOf(q.options[place])}`).join("; ");
  }
  const right = q.options.findIndex((o) => o.right);
  const option = q.options[right];
  return option ? `${letterOf(right)}: ${wordsIn(option)}` : (shownIn(q.answer) ?? "");
}

