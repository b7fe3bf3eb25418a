import { useCallback, useEffect, useState } from "preact/hooks";
import { capital, sentence } from "../../draw/words";
import { act, failures, page, pageQuestions, perform, question, shared, told, wordsIn } from "../../state/lesson/session";
import type { PageTold } from "../../state/lesson/told";
import { ClauseWords } from "./Facts";
import { useLessonKeys } from "./keyboard";
import { Where } from "./Page";
import { answerWords, explanationOf } from "./Question";

/** "1:05:09", "4:09" */
export function elapsed(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  const two = (n: number) => String(n).padStart(2, "0");
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return h ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}

/** The second window of a lesson: what the trainer sees and the room does not. */
export function Presenter() {
  useLessonKeys(useCallback(() => {}, []));
  const of = page.value;
  if (!of) {
    return (
      <main class="presenter">
        <h1>Presenter</h1>
        <p>Waiting for the lesson's window.</p>
      </main>
    );
  }
  return (
    <main class="presenter">
      <header>
        <Where page={of} />
        <h1>{of.title}</h1>
        <Clocks />
      </header>
      <Notes of={of} />
      <div class="aside">
        <Next />
        <Shown />
        <Questions />
        <LeftOut of={of} />
        <Clauses of={of} />
      </div>
      <Steer />
    </main>
  );
}

function Clocks() {
  const [now, setNow] = useState(Date.now());
  useEffect(() => {
    const each = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(each);
  }, []);
  const { began, pageBegan } = shared.value;
  return (
    <dl class="clocks">
      <div>
        <dt>Lesson</dt>
        <dd>{elapsed(now - began)}</dd>
      </div>
      <div>
        <dt>This page</dt>
        <dd>{elapsed(now - pageBegan)}</dd>
      </div>
    </dl>
  );
}

const Notes = ({ of }: { of: PageTold }) => (
  <section class="notes" aria-label="Notes" tabIndex={0}>
    {of.caution && <div class="les-caution">{of.caution}</div>}
    <h2>Notes</h2>
    <p>{of.notes || "No notes for this page."}</p>
    <h2>What it prevents</h2>
    <p>{of.prevents}</p>
    <h2>Without it</h2>
    <p>{of.without}</p>
  </section>
);

function Next() {
  const { lesson } = told.value;
  const next = lesson?.pages[shared.value.place.page + 1];
  return (
    <section>
      <h2>Next page</h2>
      <p>{next ? `${next.stop_number} ${capital(next.stop)}: ${next.title}` : "This is the last page."}</p>
    </section>
  );
}

/** What the room sees now, where it is more than the page. */
function Shown() {
  const { over, blank } = shared.value.place;
  const failure = over.kind === "replay" && failures.value.find((f) => f.failure === over.failure)?.title;
  const words = blank ? "The screen is blank." : failure ? `Replay: ${failure}` : "";
  if (!words) return null;
  return (
    <section class="shown">
      <h2>The room sees</h2>
      <p>{words}</p>
    </section>
  );
}

/** All clauses of the page, with their editions. */
function Clauses({ of }: { of: PageTold }) {
  if (!of.clauses.length) return null;
  return (
    <section>
      <h2>Clauses</h2>
      <ul>
        {of.clauses.map((c) => (
          <li key={`${c.clause} ${c.words}`}>
            <b>{c.clause}</b>
            {c.edition ? ` (${c.edition})` : ""}: <ClauseWords of={c} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The questions of the page with their answers; the one that is shown is open. */
function Questions() {
  const shown = question.value;
  const all = pageQuestions.value;
  return (
    <section>
      <h2>Questions and answers</h2>
      {all.length === 0 && <p>{told.value.questionsProblem ?? "None for this page."}</p>}
      {all.map((q) => (
        <article key={q.question} class={q === shown ? "now" : ""}>
          <h3>{wordsIn(q)}</h3>
          <p>
            <b>{answerWords(q)}</b>
          </p>
          {q === shown && <p>{explanationOf(q)}</p>}
          {q === shown && q.follows && <p>{shared.value.units === "si" ? q.follows_si : q.follows}.</p>}
        </article>
      ))}
    </section>
  );
}

function LeftOut({ of }: { of: PageTold }) {
  const out = of.questions_left_out;
  const pages = told.value.lesson?.pages_left_out ?? [];
  if (!out.length && !pages.length) return null;
  return (
    <section>
      <h2>Left out for this station</h2>
      <ul>
        {out.map((q) => (
          <li key={q.question}>
            <b>{q.question}</b>: {sentence(q.reason)}
          </li>
        ))}
        {pages.map((p) => (
          <li key={p.page}>
            <b>Page {p.page}</b>: {sentence(p.reason)}
          </li>
        ))}
      </ul>
    </section>
  );
}

const levels = ["All levels", "Level 1", "Level 2", "Level 3"];

function Steer() {
  return (
    <footer>
      <button type="button" class="btn" onClick={() => act({ do: "back" })}>
        <span class="kbd">←</span> Back
      </button>
      <button type="button" class="btn" onClick={() => act({ do: "on" })}>
        Next <span class="kbd">→</span>
      </button>
      <button type="button" class="btn" onClick={() => act({ do: "ask" })}>
        Ask, then answer <span class="kbd">a</span>
      </button>
      <button type="button" class="btn" onClick={() => act({ do: "blank" })}>
        Blank <span class="kbd">b</span>
      </button>
      {failures.value.map((f) => (
        <button
          type="button"
          class="btn"
          key={f.failure}
          aria-disabled={!f.available}
          title={f.available ? undefined : sentence(f.reason ?? "")}
          onClick={() => f.available && act({ do: "failure", failure: f.failure })}
        >
          Break: {f.title}
        </button>
      ))}
      <span class="sp" />
      <select
        class="btn"
        aria-label="Level of the questions"
        value={shared.value.place.level}
        onChange={(e) => {
          act({ do: "level", level: Number(e.currentTarget.value) });
          e.currentTarget.blur();
        }}
      >
        {levels.map((name, i) => (
          <option key={name} value={i}>
            {name}
          </option>
        ))}
      </select>
      <button type="button" class="btn" onClick={() => perform({ of: "end" })}>
        End <span class="kbd">Esc</span>
      </button>
    </footer>
  );
}
