import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { sentence } from "../../draw/words";
import {
  act, openLesson, page, perform, replaying, shared, shownBy, told, type Host,
} from "../../state/lesson/session";
import type { LessonTold } from "../../state/lesson/told";
import { openPresenter, tellPresenter } from "../../state/lesson/windows";
import { Band } from "./Band";
import { useLessonKeys } from "./keyboard";
import { PageView } from "./Page";
import { QuestionView } from "./Question";
import { Replay } from "./Replay";

interface Props {
  host: Host;
  /** Null: it is on its way, or there is none. */
  lesson: LessonTold | null;
  /** Why there is none. */
  problem: string | null;
}

/** After a click the keys are those of the lesson again, not of what was clicked. */
const giveBack = (event: MouseEvent) => {
  const target = event.target instanceof Element ? event.target.closest("button") : null;
  if (event.detail > 0 && target) target.closest("dialog")?.focus();
};

/** The lesson over everything else, for a projector. */
export function Lesson({ host, lesson, problem }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [kept, setKept] = useState(false);
  const present = useCallback(() => setKept(!openPresenter()), []);
  useLessonKeys(present);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    dialog.current?.focus();
  }, []);
  useEffect(() => shownBy(host), [host]);
  useEffect(() => {
    if (lesson) openLesson(host, lesson);
  }, [lesson, host.station]);
  useEffect(tellPresenter, []);
  const ready = lesson !== null && told.value.lesson !== null;
  return (
    <dialog
      class={shared.value.place.blank ? "lesson blank" : "lesson"}
      aria-label="Lesson"
      tabIndex={-1}
      ref={dialog}
      onCancel={(e) => e.preventDefault()}
      onClick={giveBack}
    >
      <Top host={host} present={present} />
      <div class="les-body">
        {kept && <p class="les-note bad">The browser kept the presenter's window shut. Allow windows of this page.</p>}
        {ready ? <Body /> : <Waiting problem={problem} />}
      </div>
      <Band />
      <Spoken />
      {shared.value.place.blank && (
        <button type="button" class="les-unblank" onClick={() => act({ do: "blank" })}>
          Show the lesson
        </button>
      )}
    </dialog>
  );
}

/** What is told to a reader of screens when the page turns. */
function Spoken() {
  const of = page.value;
  return (
    <p class="vh" aria-live="polite">
      {of ? `${of.stop_number}, ${of.title}. ${of.prevents}` : ""}
    </p>
  );
}

function Body() {
  const { over } = shared.value.place;
  const replay = replaying.value?.replay;
  const of = page.value;
  if (over.kind === "question") return <QuestionView />;
  if (over.kind === "replay" && replay && of) return <Replay replay={replay} picture={of.picture} />;
  return <PageView />;
}

function Waiting({ problem }: { problem: string | null }) {
  return (
    <div class="les-waiting">
      <h1>{problem ? "There is no lesson yet" : "Lesson"}</h1>
      <p>{problem ? sentence(problem) : "The engine reads the station."}</p>
    </div>
  );
}

function Top({ host, present }: { host: Host; present: () => void }) {
  const { over, blank } = shared.value.place;
  return (
    <header class="les-top">
      <b>{host.station || "Lesson"}</b>
      <span class="title">{told.value.lesson?.title}</span>
      <span class="sp" />
      <button type="button" class="btn" onClick={() => act({ do: "back" })}>
        <span class="kbd">←</span> Back
      </button>
      <button type="button" class="btn" onClick={() => act({ do: "on" })}>
        Next <span class="kbd">→</span>
      </button>
      <button type="button" class="btn" aria-pressed={over.kind === "failures" || over.kind === "replay"} onClick={() => act({ do: "failures" })}>
        Break it <span class="kbd">x</span>
      </button>
      <button type="button" class="btn" aria-pressed={over.kind === "question"} onClick={() => act({ do: "ask" })}>
        Ask <span class="kbd">a</span>
      </button>
      <button type="button" class="btn" aria-pressed={blank} onClick={() => act({ do: "blank" })}>
        Blank <span class="kbd">b</span>
      </button>
      <button type="button" class="btn" onClick={present}>
        Presenter <span class="kbd">p</span>
      </button>
      <button type="button" class="btn" onClick={() => perform({ of: "end" })}>
        End <span class="kbd">Esc</span>
      </button>
    </header>
  );
}
