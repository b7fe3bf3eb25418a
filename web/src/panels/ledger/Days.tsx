import type { TargetedKeyboardEvent } from "preact";
import { useRef, useState } from "preact/hooks";
import { dateOf, dayWords, shortDay } from "../../draw/days";
import { figure, signed, unitOf, valueIn, withUnitOr } from "../../draw/numbers";
import { units } from "../../state/look";
import { editable, narrow } from "../../state/station";
import { StatusShape } from "../parts/status";
import { Wide } from "../parts/Wide";
import type { LedgerBook, LedgerRow } from "./documents";
import { enter } from "./entering";
import { columns, dipWords, endsTheBook, periodOf, type Column } from "./rows";

const volume = (si: number) => figure("volume", units.value, si, 0);
const difference = (si: number) => signed(valueIn("volume", units.value, si), 0);

/** One row a day, in the rule's own terms; the day to fill next below them where rows can be entered. */
export function Days(props: { book: LedgerBook; entry: boolean; old: boolean }) {
  const { book } = props;
  const rows = periodOf(book);
  const before = book.rows[book.period.from_row - 1];
  const first = rows[0];
  return (
    <Wide label={`Days of ${book.name}`}>
      <table class={`tbl days${props.old ? " old" : ""}`} onKeyDown={byColumn}>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">
              Dip <span>{unitOf("bore", units.value)}</span>
            </th>
            <th scope="col">
              In tank <span>{unitOf("volume", units.value)}</span>
            </th>
            <th scope="col">Delivered</th>
            <th scope="col">Sold</th>
            <th scope="col">Over/short</th>
            <th scope="col">Running</th>
          </tr>
        </thead>
        <tbody>
          {first && (
            <tr class="opening">
              <th scope="row">open</th>
              <td>{dipWords(before?.depth_m ?? null, units.value)}</td>
              <td>{volume(first.opening_m3)}</td>
              <td colSpan={4} />
            </tr>
          )}
          {rows.map((row) => (
            <Row row={row} key={row.day} />
          ))}
          {props.entry && endsTheBook(book) && book.next && <EntryRow book={book} key={book.name} />}
        </tbody>
      </table>
    </Wide>
  );
}

function Row({ row }: { row: LedgerRow }) {
  return (
    <tr class={row.outside ? "out" : ""}>
      <th scope="row" title={dayWords(row.day)}>
        {dateOf(row.day)}
      </th>
      <td data-column="dip" tabIndex={-1}>
        {dipWords(row.depth_m, units.value)}
      </td>
      <td>{volume(row.measured_m3)}</td>
      <td data-column="delivered" tabIndex={-1}>
        {row.deliveries > 0 ? volume(row.delivered_m3) : ""}
      </td>
      <td data-column="sold" tabIndex={-1}>
        {volume(row.sold_m3)}
      </td>
      <td>{difference(row.over_short_m3)}</td>
      <td class="running">
        {row.outside && (
          <>
            <StatusShape state="falls short" size={12} />
            <span class="vh">outside the limit, </span>
          </>
        )}
        {difference(row.running_m3)}
      </td>
    </tr>
  );
}

const labels: Record<Column, string> = { dip: "Dip", delivered: "Delivered", sold: "Sold" };

/** The day to fill next: what is typed is in the store when it stands in the table. */
function EntryRow({ book }: { book: LedgerBook }) {
  const [problem, setProblem] = useState<{ column: Column; words: string } | null>(null);
  const [busy, setBusy] = useState(false);
  const next = book.next;
  if (!next) return null;
  const write = async (column: Column, typed: string, input: HTMLInputElement) => {
    setBusy(true);
    const unit = unitOf(column === "dip" ? "bore" : "volume", units.value);
    const why = await enter(column, book, withUnitOr(typed, unit));
    setBusy(false);
    setProblem(why === null ? null : { column, words: why });
    if (why !== null) input.select();
    return why === null;
  };
  const cell = (column: Column, there: string) => (
    <Entry
      column={column}
      day={next.day}
      there={there}
      bad={problem?.column === column}
      onTyped={() => setProblem(null)}
      onCommit={(typed, input) => write(column, typed, input)}
    />
  );
  return (
    <>
      <tr class="fillnext" aria-busy={busy}>
        <th scope="row" title={dayWords(next.day)}>
          {shortDay(next.day, periodOf(book).at(-1)?.day)}
        </th>
        <td>{cell("dip", "")}</td>
        <td class="expects">
          <small>book expects</small> {volume(next.book_m3)}
        </td>
        <td>{cell("delivered", next.deliveries > 0 ? volume(next.delivered_m3) : "")}</td>
        <td>{cell("sold", next.sales > 0 ? volume(next.sold_m3) : "")}</td>
        <td colSpan={2} class="expects">
          {next.depth_m === null ? "" : `dip about ${dipWords(next.depth_m, units.value)}`}
        </td>
      </tr>
      {problem && (
        <tr class="entryproblem">
          <td colSpan={7} class="l" id="entry-problem" role="alert">
            {problem.words} Nothing was stored.
          </td>
        </tr>
      )}
    </>
  );
}

interface EntryProps {
  column: Column;
  day: string;
  /** What is in the store of that day already. */
  there: string;
  bad: boolean;
  onTyped: () => void;
  onCommit: (typed: string, input: HTMLInputElement) => Promise<boolean>;
}

/** A value of the day to fill next. Of deliveries each is entered by itself; a dip and a total of sales stand once. */
function Entry(props: EntryProps) {
  const [text, setText] = useState("");
  const going = useRef(false);
  if (props.there && props.column === "sold") return <span class="there">{props.there}</span>;
  const commit = async (input: HTMLInputElement) => {
    if (!text.trim() || going.current) return;
    going.current = true;
    if (await props.onCommit(text.trim(), input)) setText("");
    going.current = false;
  };
  return (
    <>
      {props.there && <span class="there">{props.there}</span>}
      <span class={`in${props.bad ? " bad" : ""}`}>
        <input
          value={text}
          placeholder={props.there ? "one more" : labels[props.column].toLowerCase()}
          aria-label={`${labels[props.column]} of ${dayWords(props.day)}`}
          aria-invalid={props.bad || undefined}
          aria-describedby={props.bad ? "entry-problem" : undefined}
          data-column={props.column}
          autocomplete="off"
          spellcheck={false}
          onInput={(e) => {
            setText(e.currentTarget.value);
            props.onTyped();
          }}
          onKeyDown={(e) => {
            if (e.key === "Enter" || e.key === "ArrowDown") void commit(e.currentTarget);
            if (e.key === "Escape") {
              setText("");
              props.onTyped();
            }
          }}
        />
      </span>
    </>
  );
}

/** Up and down go along a column; below the last day they stay in the field. */
function byColumn(event: TargetedKeyboardEvent<HTMLTableElement>) {
  if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
  const at = event.target as HTMLElement;
  const column = columns.find((c) => c === at.dataset["column"]);
  if (!column) return;
  const cells = [...event.currentTarget.querySelectorAll<HTMLElement>(`[data-column=${column}]`)];
  const to = cells[cells.indexOf(at) + (event.key === "ArrowDown" ? 1 : -1)];
  event.preventDefault();
  to?.focus();
}

/** Why nothing can be typed, and how it could; empty: it can. */
export function whyNoEntry(book: LedgerBook, store: boolean): string {
  if (narrow.value) return "";
  if (!store) return "The records are CSV files, so this table is to read only. forecourse records import makes a store of them, which can be filled here.";
  if (!editable.value) return "To read only.";
  if (book.tanks.length !== 1) return "This book is of several tanks; their dips are entered with forecourse records add.";
  return "";
}
