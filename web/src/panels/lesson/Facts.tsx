import { failures, act, shownIn } from "../../state/lesson/session";
import { partsOfShown } from "../../state/lesson/tally";
import { sentence } from "../../draw/words";
import type { ClauseTold, NumberTold, PageTold } from "../../state/lesson/told";

/** Figures of more places than this are set smaller. */
const roomy = 6;

/** A shown value with its unit set smaller. */
export function Shown({ text }: { text: string }) {
  const unit = partsOfShown(text)?.unit ?? "";
  const figure = unit ? text.slice(0, text.length - unit.length).trim() : text;
  return (
    <>
      <span class={figure.length > roomy ? "n long" : "n"}>{figure}</span>
      {unit && <span class="u"> {unit}</span>}
    </>
  );
}

function NumberOf({ of }: { of: NumberTold }) {
  const text = shownIn(of);
  return (
    <div class="les-number">
      <dt>{of.label}</dt>
      <dd>
        {text === null ? <span class="none">Not determined</span> : <Shown text={text} />}
        {text === null && of.reason && <small>{sentence(of.reason)}</small>}
        {of.rests_on && <small>Rests on a default: {of.rests_on}</small>}
      </dd>
    </div>
  );
}

function Clauses({ of }: { of: readonly ClauseTold[] }) {
  if (!of.length) return null;
  return (
    <section class="les-clauses">
      <h2>{of.length > 1 ? "The clauses behind it" : "The clause behind it"}</h2>
      <ul>
        {of.map((c) => (
          <li key={`${c.clause} ${c.words}`}>
            <b>{c.clause}</b>
            {c.edition ? `, ${c.edition}` : ""}: {sentence(c.words)}
            {!c.text_seen && <i> Not verified.</i>}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Numbers of a page, what the trade calls the part, and the clause. */
export const Facts = ({ page }: { page: PageTold }) => (
  <div class="les-facts">
    <dl class="les-numbers">
      {page.numbers.map((n) => (
        <NumberOf key={n.number} of={n} />
      ))}
    </dl>
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
