import { monthLetter, monthWords } from "../../draw/days";
import { StatusShape } from "../parts/status";
import type { Duty, DutyState } from "./documents";
import { markWords, marksOf, shareOf, stripSummary, stripWords } from "./rows";

/** A shape to each state: octagon overdue or failed, triangle in 90 days, dot later, dashed ring where nothing is known. */
export function StateMark(props: { state: DutyState; size?: number }) {
  const size = props.size ?? 14;
  if (props.state === "overdue" || props.state === "failed") return <StatusShape state="falls short" size={size} />;
  if (props.state === "due soon") return <StatusShape state="close" size={size} />;
  if (props.state === "later") {
    return (
      <svg class="st dot" viewBox="0 0 16 16" width={size} height={size} aria-hidden="true">
        <circle cx="8" cy="8" r="4.5" />
      </svg>
    );
  }
  return <StatusShape state="not determined" size={size} />;
}

/** What the marks of the strip mean. */
export function Legend(props: { within: number }) {
  const shown = ["overdue", "due soon", "later", "no record"] as const;
  return (
    <ul class="legend" aria-label="Marks">
      {shown.map((state) => (
        <li key={state}>
          <StateMark state={state} /> {markWords(state, props.within)}
        </li>
      ))}
    </ul>
  );
}

export interface Year {
  today: string;
  within: number;
  months: readonly string[];
}

/** The letters of the months over the strips. */
export const MonthHeads = ({ months }: Pick<Year, "months">) => (
  <span class="yrheads" aria-hidden="true">
    {months.map((month) => (
      <i key={month} title={monthWords(month)}>
        {monthLetter(month)}
      </i>
    ))}
  </span>
);

/** Twelve months with the days on which something falls due, and a line at today. */
export function Strip({ duties, year }: { duties: readonly Duty[]; year: Year }) {
  if (duties.length === 0) return null;
  const marks = marksOf(duties, year.today, year.within, year.months);
  const words = stripWords(duties, marks);
  const beyond = /^\d+$/.test(words);
  return (
    <span class="yr">
      <span class="months" aria-hidden="true">
        {year.months.map((month) => (
          <i key={month} />
        ))}
      </span>
      <i class="today" style={{ left: `${100 * shareOf(year.today, year.months)}%` }} aria-hidden="true" />
      {marks.map((mark) => (
        <span class={`mk ${mark.state === "later" ? "low" : ""}`} key={mark.day} style={{ left: `${100 * mark.at}%` }} aria-hidden="true">
          <StateMark state={mark.state} />
        </span>
      ))}
      {words && (
        <span class={`said ${beyond ? "beyond" : ""}`} aria-hidden="true">
          {words}
        </span>
      )}
      <span class="vh">{beyond ? `Not before ${words}.` : stripSummary(marks, year.within)}</span>
    </span>
  );
}
