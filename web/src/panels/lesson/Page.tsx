import { pageOfStop } from "../../state/lesson/steps";
import { act, page, replaying, shared, told } from "../../state/lesson/session";
import { capital, sentence } from "../../draw/words";
import type { PageTold } from "../../state/lesson/told";
import { Facts, Failures } from "./Facts";
import { Picture } from "./Picture";

const nothing = {};

/** Where the lesson is along the course. */
export function Where({ page: of }: { page: PageTold }) {
  const { lesson } = told.value;
  const part = lesson ? pageOfStop(lesson, shared.value.place.page) : "";
  return (
    <p class="les-where">
      <b>{of.stop_number}</b> {capital(of.stop)}
      {part && <span>, {part}</span>}
      {of.subject && <span> at {of.subject}</span>}
    </p>
  );
}

/** The states in which the picture can stand. */
function States({ of }: { of: PageTold }) {
  const now = shared.value.place.state;
  if (of.states.length < 2) return <p>{sentence(of.states[0]?.words ?? "")}</p>;
  return (
    <div class="les-states" role="group" aria-label="State of the picture">
      {of.states.map((s, i) => (
        <button type="button" key={s.state} aria-pressed={i === now} onClick={() => act({ do: "show-state", state: i })}>
          {capital(s.words || s.state)}
        </button>
      ))}
    </div>
  );
}

/** What is said while a replay is on its way. */
function Coming() {
  const now = replaying.value;
  if (!now || now.replay) return null;
  return (
    <p class={now.error ? "les-note bad" : "les-note"}>
      {now.error ? sentence(now.error) : "The engine breaks it on this station."}
    </p>
  );
}

/** A page: its picture, its numbers, what it prevents and what fails without it. */
export function PageView() {
  const of = page.value;
  if (!of) return null;
  const { place } = shared.value;
  const state = of.states[place.state];
  return (
    <div class="les-page">
      {of.caution && <p class="les-caution">{of.caution}</p>}
      <header class="les-title">
        <Where page={of} />
        <h1>{of.title}</h1>
      </header>
      <figure class="les-figure" key={of.page}>
        <Picture picture={of.picture} values={state?.values ?? nothing} id="page" moves />
      </figure>
      <div class="les-caption">
        <States of={of} />
        <Coming />
      </div>
      <aside class="les-side" tabIndex={0} aria-label="Of this station">
        {place.over.kind === "failures" ? <Failures /> : <Facts page={of} />}
      </aside>
      <div class="les-why">
        <section>
          <h2>What it prevents</h2>
          <p>{of.prevents}</p>
        </section>
        <section>
          <h2>Without it</h2>
          <p>{of.without}</p>
        </section>
      </div>
    </div>
  );
}
