import { failures, act, shownIn } from "../../state/lesson/session";
import { figureAndUnit } from "../../state/lesson/tally";
import { sentence } from "../../draw/words";
import type { ClauseTold, NumberTold, PageTold } from "../../state/lesson/told";

/** Figures of more places than this are set smaller. */
const roomy = 6;

/** A shown value with its unit set smaller; of a range each end has a line, so that both are large. */
export function Shown({ text }: { text: string }) {
  const { figure, unit } = figureAndUnit(text);
  const [low, high] = figure.split(" to ");
  if (high !== undefined) {
    return (
      <>
        <span class="n range">{low}</span>
        <span class="u"> to</span> <br />
        <span class="n range">{high}</span>
        {unit && <span class="u"> {unit}</span>}
      </>
    );
  }
  return (
    <>
      <span class={figure.length > roomy ? "n long" : "n"}>{figure}</span>
      {unit && <span class="u"> {unit}</span>}
    </>
  );
}

function NumberOf({ of, leads }: { of: NumberTold; leads: boolean }) {
  const text = shownIn(of);
  return (
    <div class={leads ? "les-number leads" : "les-number"}>
      <dt>{of.label}</dt>
      <dd>
        {text === null ? <span class="none">Not determined</span> : <Shown text={text} />}
        {text === null && of.reason && <small>{sentence(of.reason)}</small>}
      </dd>
    </div>
  );
}

/** Room for so many clauses; all of them, with their editions, are in the presenter's window. */
const mostClauses = 2;

/** A clause in our words, and whether its text was seen. */
export const ClauseWords = ({ of }: { of: ClauseTold }) => (
  <>
    {sentence(of.words)}
    {!of.text_seen && <i> Not verified.</i>}
  </>
);

function Clauses({ of }: { of: readonly ClauseTold[] }) {
  if (!of.length) return null;
  const more = of.length - mostClauses;
  return (
    <section class="les-clauses">
      <h2>{of.length > 1 ? "The clauses behind it" : "The clause behind it"}</h2>
      <ul>
        {of.slice(0, mostClauses).map((c) => (
          <li key={`${c.clause} ${c.words}`}>
            <b>{c.clause}</b>: <ClauseWords of={c} />
          </li>
        ))}
      </ul>
      {more > 0 && <p>and {more} more</p>}
    </section>
  );
}

/** What numbers of a page rest on that nobody entered, each once. */
function Defaults({ of }: { of: readonly NumberTold[] }) {
  const all = [...new Set(of.flatMap((n) => n.rests_on ?? []))];
  if (!all.length) return null;
  return <p class="les-defaults">Rests on a default: {all.join("; ")}</p>;
}

/** Numbers of a page, what the trade calls the part, and the clause. */
export const Facts = ({ page }: { page: PageTold }) => (
  <div class="les-facts">
    <dl class="les-numbers">
      {page.numbers.map((n) => (
        <NumberOf key={n.number} of={n} leads={n === page.numbers.find((one) => one.shown !== null)} />
      ))}
    </dl>
    <Defaults of={page.numbers} />
    {page.synonyms.length > 0 && (
      <p class="les-also">
        <span>Also called</span> {page.synonyms.join(", ")}
      </p>
    )}
    <Clauses of={page.clauses} />
  </div>
);

/** What can be broken on a page. */
export function Failures() {
  return (
    <section class="les-failures" aria-label="Break it">
      <h2>Break it</h2>
      {failures.value.length === 0 && <p>Nothing of this page can be broken.</p>}
      <ol>
        {failures.value.map((f, i) => (
          <li key={f.failure}>
            <button
              type="button"
              aria-disabled={!f.available}
              onClick={() => f.available && act({ do: "failure", failure: f.failure })}
            >
              <span class="kbd">{i + 1}</span>
              <span>
                {f.title}
                {!f.available && <small>{sentence(f.reason ?? "cannot be shown here")}</small>}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
