import { dayWords, monthWords } from "../../draw/days";
import { digits, figure, signed, unitOf, valueIn } from "../../draw/numbers";
import { sentence } from "../../draw/words";
import { units } from "../../state/look";
import { Note } from "../parts/Note";
import { StatusShape, stateWords } from "../parts/status";
import type { LedgerBook, LedgerDocument, LedgerMonth } from "./documents";
import { endsTheBook, periodOf } from "./rows";
import { month as chosenMonth } from "./state";

const volume = (si: number) => `${figure("volume", units.value, si, 0)}\u00A0${unitOf("volume", units.value)}`;

/** The number, its state, what to do next, how sure that is. */
export function LedgerPanel(props: { document: LedgerDocument; book: LedgerBook; month: LedgerMonth | undefined }) {
  const { document, book, month } = props;
  const last = periodOf(book).at(-1);
  const rule = document.findings.find((f) => f.clause);
  const short = book.months.some((m) => m.exceeds);
  return (
    <aside class="insp" aria-label={`Ledger of ${book.name}`}>
      {month && last && (
        <div class="answer">
          <p class="over">
            {book.name}, {book.product}, to {dayWords(last.day)}
          </p>
          <p class="v">
            {digits(valueIn("volume", units.value, month.over_short_m3), 0)} <small>{unitOf("volume", units.value)}</small>
          </p>
          <p class="statusline">
            <StatusShape state={month.state} size={16} /> <b>{stateWords[month.state]}</b>
            {month.confirmed ? ", second month" : ""}, limit {volume(month.limit_m3)} either way
          </p>
        </div>
      )}
      {short && document.result.first && <Note tone="bad">{document.result.first}</Note>}
      <h3 class="grp">What to do next</h3>
      {book.what_next.length > 0 ? (
        <ol class="nextsteps">
          {book.what_next.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      ) : (
        <p class="txt">{endsTheBook(book) ? "Go on: read, deliver and sell as before, and fill in the next day." : "Nothing is left to do for this month."}</p>
      )}
      <h3 class="grp">How sure we are</h3>
      {book.answer.slice(1).map((words) => (
        <p class="txt" key={words}>
          {words}
        </p>
      ))}
      {book.not_parted.length > 0 && (
        <>
          <h3 class="grp">Cannot be told apart yet</h3>
          {book.not_parted.map((words) => (
            <p class="txt" key={words}>
              {words}
            </p>
          ))}
        </>
      )}
      {book.months.length > 1 && <Months book={book} shown={month?.month} />}
      <h3 class="grp">Where it comes from</h3>
      <p class="txt">
        Limit: 1.0&nbsp;% of what flowed through and {units.value === "us" ? "130\u00A0gal" : "492\u00A0L"}
        {rule?.clause ? `, ${rule.clause}${rule.clause_verified ? ", text seen" : ", to be verified"}` : ""}.
      </p>
      {document.cautions
        .filter((caution) => caution !== document.result.first)
        .map((caution) => (
          <p class="txt" key={caution}>
            {sentence(caution)}
          </p>
        ))}
    </aside>
  );
}

/** Every month against its limit; pressing one shows it. */
function Months({ book, shown }: { book: LedgerBook; shown: string | undefined }) {
  return (
    <>
      <h3 class="grp">Months</h3>
      <ul class="monthlist">
        {book.months.slice(-12).toReversed().map((m) => (
          <li key={m.month}>
            <button type="button" aria-pressed={m.month === shown} onClick={() => (chosenMonth.value = m.month)}>
              <StatusShape state={m.state} />
              <span>
                {monthWords(m.month)}
                <span class="vh">, {stateWords[m.state]}</span>
              </span>
              <span class="fig">{signed(valueIn("volume", units.value, m.over_short_m3), 0)}</span>
              <span class="fig dim">of {volume(m.limit_m3)}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
