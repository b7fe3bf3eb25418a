import { Fragment } from "preact";
import { capital } from "../../draw/words";
import { select, selection, units } from "../../state/look";
import { partOf } from "../../state/station";
import { Wide } from "../parts/Wide";
import type { Duty, KitRow } from "./documents";
import { Legend, MonthHeads, StateMark, Strip, type Year } from "./Marks";
import {
  basesOf, clauseWords, countWords, detailsOf, doneSentence, dueSentence, grouped, listedWords, neededWords, nextOf, runsWords, sizesOf, subjectsOf,
  type Row, type StopRows,
} from "./rows";
import { openRow } from "./state";

const columns = 7;

/** Parts under the stops of the course, each row with what falls due on its parts in the next twelve months. */
export function KitTable(props: { stops: readonly StopRows[]; year: Year | null }) {
  const rows = props.stops.flatMap((stop) => stop.rows.flatMap((row) => row.parts ?? []));
  return (
    <>
      <div class="kithead">
        <p>
          Rating needed {basesOf(rows).join("; ") || "is not determined"}. Listed to: as entered, else the standard by what the part does.
        </p>
        {props.year && <Legend within={props.year.within} />}
      </div>
      <Wide label="Parts by stop, and what falls due">
        <table class="tbl kit">
          <thead>
            <tr>
              <th scope="col" class="name">Part</th>
              <th scope="col" class="size">Size</th>
              <th scope="col" class="r count">Count</th>
              <th scope="col" class="r rating">Rating needed</th>
              <th scope="col" class="listed">Listed to</th>
              <th scope="col" class="next">Next test</th>
              <th scope="col" class="yrc">
                <span class="vh">Twelve months</span>
                {props.year && <MonthHeads months={props.year.months} />}
              </th>
            </tr>
          </thead>
          {props.stops.map((stop) => (
            <Stop key={stop.number} stop={stop} year={props.year} />
          ))}
        </table>
      </Wide>
    </>
  );
}

function Stop({ stop, year }: { stop: StopRows; year: Year | null }) {
  const onCourse = stop.number <= 11;
  const on = onCourse && selection.value.stop === stop.number;
  return (
    <tbody>
      <tr class={`g ${on ? "on" : ""}`}>
        <th colSpan={columns} scope="rowgroup">
          {onCourse ? (
            <button type="button" aria-pressed={on} onClick={() => select(stop.number)}>
              <i>{stop.number}</i>
              {capital(stop.name)}
            </button>
          ) : (
            <span>{capital(stop.name)}</span>
          )}
        </th>
      </tr>
      {stop.rows.map((row) => (
        <PartRow key={row.key} row={row} stop={stop.number} year={year} />
      ))}
    </tbody>
  );
}

/** Selects the stop of a row, and its first part where the page knows it. */
function choose(row: Row, stop: number) {
  const open = openRow.value !== row.key;
  openRow.value = open ? row.key : "";
  if (stop > 11 || !open) return;
  const path = row.parts?.parts.find((one) => partOf(one)) ?? null;
  select(stop, path);
}

/** What is known of the parts of a row. */
function PartCells({ parts }: { parts: KitRow }) {
  return (
    <>
      <td class="size">
        {sizesOf(parts).map((size, i, all) => (
          <Fragment key={size}>
            <span>
              {size}
              {i < all.length - 1 && ","}
            </span>{" "}
          </Fragment>
        ))}
      </td>
      <td class="r count fig">
        {countWords(parts, units.value)}
        {runsWords(parts) && <small>{runsWords(parts)}</small>}
      </td>
      <td class="r rating fig">{neededWords(parts)}</td>
      <td class="listed">{listedWords(parts)}</td>
    </>
  );
}

function PartRow({ row, stop, year }: { row: Row; stop: number; year: Year | null }) {
  const open = openRow.value === row.key;
  const { parts } = row;
  const next = nextOf(row.duties);
  const name = parts?.what ?? row.duties[0]?.what ?? "";
  return (
    <Fragment>
      <tr class={`part ${open ? "on" : ""}`}>
        <th scope="row" colSpan={parts ? 1 : 5}>
          <button type="button" aria-expanded={open} onClick={() => choose(row, stop)}>
            <svg viewBox="0 0 10 10" aria-hidden="true">
              <path d="M3 1.5L7 5L3 8.5" />
            </svg>
            {capital(name)}
          </button>
        </th>
        {parts && <PartCells parts={parts} />}
        <td class="next">
          <span class={next.state ? "" : "faint"}>
            {next.state && next.state !== "later" && <StateMark state={next.state} />} {next.words}
          </span>
          {next.more && <small>{next.more}</small>}
        </td>
        <td class="yrc">{year && <Strip duties={row.duties} year={year} />}</td>
      </tr>
      {open && <Opened row={row} year={year} />}
    </Fragment>
  );
}

/** The parts of a row, what is known of them, and each duty with its own strip. */
function Opened({ row, year }: { row: Row; year: Year | null }) {
  return (
    <>
      {row.parts && (
        <tr class="within about">
          <td colSpan={columns}>
            <About parts={row.parts} />
          </td>
        </tr>
      )}
      {grouped(row.duties).map((duties) => (
        <DutyRow key={duties[0].id} duties={duties} year={year} />
      ))}
    </>
  );
}

function About({ parts }: { parts: KitRow }) {
  return (
    <>
      <p>{detailsOf(parts, units.value).join(" ")}</p>
      <p>
        <b>{parts.subjects.length === 1 ? "Part" : `${parts.subjects.length} parts`}:</b> {parts.subjects.join(", ")}
      </p>
    </>
  );
}

function DutyRow({ duties, year }: { duties: readonly [Duty, ...Duty[]]; year: Year | null }) {
  const [first] = duties;
  const next = nextOf(duties);
  const subjects = subjectsOf(duties, 12);
  return (
    <tr class="within">
      <td colSpan={5}>
        {subjects && <b>{subjects}: </b>}
        {first.what}. {dueSentence(first)} {doneSentence(first)}{" "}
        {first.instead.length > 0 && `Instead: ${first.instead.join("; ")}. `}
        <span class="faint">{clauseWords(first)}.</span>
      </td>
      <td class="next">
        <span>
          {next.state && next.state !== "later" && <StateMark state={next.state} />} {next.words}
        </span>
      </td>
      <td class="yrc">{year && <Strip duties={duties} year={year} />}</td>
    </tr>
  );
}
