import type { ComponentChildren } from "preact";
import { useRef, useState } from "preact/hooks";
import { count, sentence } from "../../draw/words";
import { dayWords } from "../../draw/days";
import { narrow } from "../../state/station";
import { takeBack } from "../ledger/entering";
import { StatusShape, stateWords } from "../parts/status";
import type { CalendarDocument, Duty, DutyState, Paper } from "./documents";
import { StateMark } from "./Marks";
import { RecordTest } from "./RecordTest";
import { clauseWords, dueSentence, grouped, headline, sheetWords, subjectsOf } from "./rows";

interface PanelProps {
  calendar: CalendarDocument;
  /** Why no test can be recorded; empty: one can. */
  closed: ComponentChildren;
  children: ComponentChildren;
}

/** What is due, in sentences: failed and overdue first, then what comes next. */
export function DuePanel({ calendar, closed, children }: PanelProps) {
  const { on: today, within_days: within } = calendar.options;
  const { duties, papers } = calendar.result;
  const title = useRef<HTMLHeadingElement>(null);
  const list = (state: DutyState) => (
    <DueList duties={duties.filter((d) => d.state === state)} today={today} open={!closed} onStored={() => title.current?.focus()} />
  );
  const of = (state: DutyState) => duties.filter((d) => d.state === state).length;
  return (
    <aside class="insp due" aria-label="Due list">
      <div class="top one">
        <div>
          <p class="over">On {dayWords(today)}</p>
          <h2 ref={title} tabIndex={-1}>
            {headline(duties, within)}
          </h2>
        </div>
      </div>
      {children}
      {closed && <p class="txt closed">{closed}</p>}
      {!closed && !narrow.value && (
        <p class="txt edit">
          What is recorded is on the disk, and moves the day.{" "}
          <button type="button" class="link" onClick={() => void takeBack()}>
            Take back the last entry
          </button>
        </p>
      )}
      {of("failed") > 0 && (
        <>
          <h3 class="grp">Failed: mend it and test again</h3>
          {list("failed")}
        </>
      )}
      {of("overdue") > 0 && (
        <>
          <h3 class="grp">Overdue</h3>
          {list("overdue")}
        </>
      )}
      <h3 class="grp">Next {within} days</h3>
      {of("due soon") > 0 ? list("due soon") : <p class="txt">Nothing that is known falls due.</p>}
      {of("no record") > 0 && (
        <>
          <h3 class="grp">Not determined: no record</h3>
          {list("no record")}
        </>
      )}
      {of("later") > 0 && (
        <Folded title={`${of("later")} later`}>{list("later")}</Folded>
      )}
      {of("not determined") > 0 && (
        <Folded title={`${of("not determined")} that may apply`}>{list("not determined")}</Folded>
      )}
      {papers.length > 0 && (
        <Folded title={`${count(papers.length, "paper")} to keep`}>
          <Papers papers={papers} />
        </Folded>
      )}
      <h3 class="grp">Good to know</h3>
      {calendar.cautions.map((caution) => (
        <p class="txt" key={caution}>
          {caution}
        </p>
      ))}
    </aside>
  );
}

const Folded = (props: { title: string; children: ComponentChildren }) => (
  <details class="folded">
    <summary>{props.title}</summary>
    {props.children}
  </details>
);

interface ListProps {
  duties: readonly Duty[];
  today: string;
  open: boolean;
  onStored: () => void;
}

const DueList = (props: ListProps) => (
  <ul class="duelist">
    {grouped(props.duties).map((duties) => (
      <Due key={duties[0].id} {...props} duties={duties} />
    ))}
  </ul>
);

function Due(props: Omit<ListProps, "duties"> & { duties: readonly [Duty, ...Duty[]] }) {
  const { duties } = props;
  const [first] = duties;
  const [recording, setRecording] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const subjects = subjectsOf(duties);
  // What is stored moves: its button may be gone with the answer, so that the number of what is due takes the focus.
  const end = (stored: boolean) => {
    setRecording(false);
    if (stored) props.onStored();
    else setTimeout(() => button.current?.focus());
  };
  return (
    <li>
      <StateMark state={first.state} />
      <div>
        <b>{sentence(first.what).replace(/\.$/, "")}</b>
        {subjects && <p class="parts">{subjects}</p>}
        <p>
          {dueSentence(first)} {first.by_whom ? `By ${first.by_whom}. ` : ""}
          {sheetWords(first.sheet)}
        </p>
        {!first.due && !first.failed && first.enter && <p>{sentence(first.enter)}</p>}
        <p class="cite">{clauseWords(first)}</p>
        {props.open && first.proof && !recording && (
          <button
            ref={button}
            type="button"
            class="link edit"
            aria-label={`Record a test: ${first.what}${subjects ? `, ${subjects}` : ""}`}
            onClick={() => setRecording(true)}
          >
            Record a test
          </button>
        )}
        {recording && <RecordTest duties={duties} today={props.today} onEnd={end} />}
      </div>
    </li>
  );
}

const Papers = ({ papers }: { papers: readonly Paper[] }) => (
  <ul class="duelist">
    {papers.map((paper) => (
      <li key={paper.what}>
        <StatusShape state={paper.state} />
        <div>
          <b>{sentence(paper.what).replace(/\.$/, "")}</b>
          <p>
            {stateWords[paper.state]}. {sentence(paper.enter ?? "")}
          </p>
          <p class="cite">{clauseWords(paper)}</p>
        </div>
      </li>
    ))}
  </ul>
);
