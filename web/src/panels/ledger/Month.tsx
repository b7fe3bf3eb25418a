import { useRef } from "preact/hooks";
import { hasKey } from "../../api/client";
import { monthWords } from "../../draw/days";
import { unitOf } from "../../draw/numbers";
import { capital, count, sentence } from "../../draw/words";
import { useStanding } from "../../state/ask";
import { product, setProduct, units } from "../../state/look";
import { narrow, recordsRead, station } from "../../state/station";
import { EmptyArt } from "../parts/EmptyArt";
import { Refusal } from "../parts/Note";
import { Seg } from "../parts/Seg";
import { useWidth } from "../replay/width";
import { Head } from "../shell/Shell";
import { Controls } from "./Control";
import { Days, whyNoEntry } from "./Days";
import type { BookName, LedgerAnswer, LedgerBook, LedgerRefused, LedgerTold, LedgerWarning } from "./documents";
import { takeBack } from "./entering";
import { LedgerPanel } from "./LedgerPanel";
import { More } from "./More";
import { periodOf } from "./rows";
import { Running } from "./Running";
import { chosenBooks, month } from "./state";
import { Terms } from "./Terms";

/** The last that could be read; a month or book that is asked for leaves it standing until it is there. */
function useLast(answer: LedgerAnswer | undefined): { told: LedgerTold | null; refused: LedgerRefused | null } {
  const last = useRef<LedgerTold | null>(null);
  if (answer && "document" in answer) last.current = answer;
  const refused = answer && "error" in answer ? answer : null;
  return { told: refused ? null : last.current, refused };
}

export function Month() {
  const now = useStanding<LedgerAnswer>(() => ({
    after: recordsRead.value,
    wants: [
      {
        study: "ledger",
        tank: chosenBooks.value[product.value] ?? product.value,
        units: units.value,
        ...(month.value ? { month: month.value } : {}),
      },
    ],
  }));
  const { told, refused } = useLast(now.answers?.[0]);
  const book = told?.document.result.books[0];
  return (
    <>
      <Head title="Ledger" about={book ? about(book) : "Daily stock, the rule of the month, and what explains the difference"}>
        {told && book && <Pickers told={told} book={book} />}
      </Head>
      <Refusal error={now.error} old={told !== null} />
      {!told && !refused && !now.error && <div class="skel-box" aria-hidden="true" />}
      {refused && <Refused refused={refused} />}
      {told && book && <Known told={told} book={book} old={now.age === 2} />}
    </>
  );
}

function about(book: LedgerBook): string {
  const rows = periodOf(book);
  const last = rows.at(-1);
  const tanks = book.tanks.length > 1 ? `${book.tanks.join(" and ")} as one, ` : "";
  return `${tanks}${book.product}${last ? `, ${monthWords(last.day.slice(0, 7))}, ${count(rows.length, "day")}` : ""}`;
}

function choose(book: BookName) {
  chosenBooks.value = { ...chosenBooks.value, [book.product]: book.name };
  setProduct(book.product);
}

/** More than these are in a list. */
const fewBooks = 6;

function Pickers({ told, book }: { told: LedgerTold; book: LedgerBook }) {
  const shown = periodOf(book).at(-1)?.day.slice(0, 7) ?? month.value;
  const byName = (name: string) => {
    const one = told.books.find((b) => b.name === name);
    if (one) choose(one);
  };
  return (
    <>
      {told.books.length > 1 && told.books.length <= fewBooks && (
        <Seg label="Book" value={book.name} onChange={byName} options={told.books.map((b) => ({ value: b.name, text: b.name }))} />
      )}
      {told.books.length > fewBooks && (
        <select class="btn" aria-label="Book" value={book.name} onChange={(e) => byName(e.currentTarget.value)}>
          {told.books.map((b) => (
            <option key={b.name} value={b.name}>
              {b.name}, {b.product}
            </option>
          ))}
        </select>
      )}
      {book.months.length > 1 && (
        <select class="btn" aria-label="Month" value={shown} onChange={(e) => (month.value = e.currentTarget.value)}>
          {book.months.toReversed().map((m) => (
            <option key={m.month} value={m.month}>
              {monthWords(m.month)}
            </option>
          ))}
        </select>
      )}
    </>
  );
}

function Known({ told, book, old }: { told: LedgerTold; book: LedgerBook; old: boolean }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const rows = periodOf(book);
  const last = rows.at(-1);
  const of = last ? book.months.find((m) => m.month === last.day.slice(0, 7)) : undefined;
  const tone = station.value?.products.find((p) => p.id === book.product)?.tone ?? "regular";
  const room = Math.max(0, width - 32);
  const closed = whyNoEntry(book, told.records.store);
  const chart = book.loss && book.loss.problem === null ? book.loss.chart : null;
  if (!last) return <NoRows told={told} book={book} closed={closed} />;
  return (
    <div class="split">
      <div class="ledgercols">
        <section class="daycol" aria-label="Days">
          <Days book={book} entry={closed === "" && !narrow.value} old={old} />
          <p class="txt below">
            {closed || (narrow.value ? "" : "Type a dip, what was delivered and what was sold. Enter stores it; the down key goes on, the up key back, Esc empties the field.")}{" "}
            {closed === "" && !narrow.value && (
              <button type="button" class="link edit" onClick={() => void takeBack()}>
                Take back the last entry
              </button>
            )}
          </p>
          <Warnings warnings={told.document.warnings} />
        </section>
        <div class="chartcol" ref={box}>
          <section class="cell" aria-labelledby="running-title">
            <h2 id="running-title">
              Running over and short against the limit <span class="dim n">{unitOf("volume", units.value)}</span>
            </h2>
            <Running rows={rows} tone={tone} width={room} />
          </section>
          {book.explained && (
            <section class="cell bt" aria-labelledby="terms-title">
              <h2 id="terms-title">
                What makes it <span class="dim n">{unitOf("volume", units.value)}, bars at one standard error</span>
              </h2>
              <Terms explained={book.explained} deviation_m3={of?.deviation_m3 ?? null} width={room} />
            </section>
          )}
          {book.loss && (
            <section class="cell bt" aria-label="Control charts">
              {chart ? (
                <Controls chart={chart} width={room} />
              ) : (
                <>
                  <h2>Control charts</h2>
                  <p class="txt">{sentence(book.loss.problem ?? "")}</p>
                </>
              )}
            </section>
          )}
          <More book={book} />
        </div>
      </div>
      <LedgerPanel document={told.document} book={book} month={of} />
    </div>
  );
}

/** Nothing in the month that is asked for, or nothing to reconcile at all. */
function NoRows({ told, book, closed }: { told: LedgerTold; book: LedgerBook; closed: string }) {
  return (
    <div class="empty">
      <EmptyArt />
      <h2>{book.problem ? capital(book.problem) : `${book.name} was not read in ${month.value ? monthWords(month.value) : "this time"}`}</h2>
      {book.months.length > 0 ? (
        <button type="button" class="btn go" onClick={() => (month.value = "")}>
          Show the last month with readings
        </button>
      ) : (
        <p>With two readings of the tank, and what was delivered and sold between them, this sheet tells what is over or short, and whether that meets the rule.</p>
      )}
      {closed === "" && !narrow.value && book.next && <Days book={book} entry old={false} />}
      <Warnings warnings={told.document.warnings} />
    </div>
  );
}

const place = (w: LedgerWarning) => (w.file && w.line ? `${w.file.split("/").at(-1)}, line ${w.line}: ` : "");

export function Warnings({ warnings }: { warnings: readonly LedgerWarning[] }) {
  if (!warnings.length) return null;
  return (
    <details class="told">
      <summary>{count(warnings.length, "thing")} to know about the records</summary>
      <ul>
        {warnings.map((w, i) => (
          <li key={i}>
            {place(w)}
            {sentence(w.message)} {sentence(w.hint)}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** None are given, or they cannot be read. */
export function Refused({ refused }: { refused: LedgerRefused }) {
  if (refused.records === null) {
    return (
      <div class="empty">
        <EmptyArt />
        <h2>No records are given</h2>
        <p>
          With dips, deliveries and sales this sheet keeps the daily ledger: over and short against the limit of the
          month, what explains it, and what to do next.
        </p>
        <p>
          Put them beside the site file, as <b>records/dips.csv</b>, <b>records/deliveries.csv</b> and{" "}
          <b>records/sales.csv</b>, or start the workbench with
        </p>
        <p>
          <code>forecourse serve {station.value?.file ?? "SITE"} --records FOLDER</code>
        </p>
        {hasKey && (
          <p class="dim">A store made by forecourse records import can be filled in here, day by day.</p>
        )}
      </div>
    );
  }
  return (
    <div class="note bad ledgerwrong" role="status">
      <div>
        <b>{refused.wrong?.length ? `The records in ${refused.records?.name} cannot be used yet. Mend these; the sheet follows by itself.` : sentence(refused.error)}</b>{" "}
        {refused.wrong?.length ? "" : sentence(refused.hint)}
        <ul>
          {refused.wrong?.map((w, i) => (
            <li key={i}>
              {place(w)}
              {sentence(w.message)} {sentence(w.hint)}
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}
