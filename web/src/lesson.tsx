import { render } from "preact";
import { signal } from "@preact/signals";
import "@fontsource/b612/latin-400.css";
import "@fontsource/b612/latin-700.css";
import "./style/tokens.css";
import "./style/base.css";
import "./style/parts.css";
import "./style/lesson.css";
import "./style/lesson_page.css";
import { Lesson } from "./panels/lesson/Lesson";
import { Presenter } from "./panels/lesson/Presenter";
import { start, type Engine } from "../../wasm/engine";
import { setUnits, type Host, type Units } from "./state/lesson/session";
import type { LessonTold, LessonWant } from "./state/lesson/told";
import { followLesson, presents } from "./state/lesson/windows";

/** What the page carries beside the engine: `<script type="application/json" id="station">`. */
interface Carried {
  /** Name of the station. */
  name: string;
  /** Text of the site file. */
  site: string;
  /** Text of the lesson; null: the built-in one. */
  lesson: string | null;
  units: Units;
}

const carried = (id: string) => document.getElementById(id)?.textContent ?? "";
const read = (): Carried => JSON.parse(carried("station")) as Carried;

const lesson = signal<LessonTold | null>(null);
const problem = signal<string | null>(null);
const ended = signal(false);

/** Asks the engine in the page, once the page has been painted. */
const askOf = (engine: Engine, { site, lesson: text }: Carried) =>
  async function ask<A>(want: LessonWant): Promise<A> {
    await new Promise((painted) => setTimeout(painted, 20));
    const { document, error = "no answer", hint } = engine({ site, ...(text === null ? {} : { lesson: text }), ...want });
    if (!document) throw new Error(hint ? `${error}; ${hint}` : error);
    return document.result as A;
  };

function Closed() {
  return (
    <main class="presenter">
      <h1>The lesson has ended</h1>
      <p>
        <button type="button" class="btn go" onClick={() => (ended.value = false)}>
          Open it again
        </button>
      </p>
    </main>
  );
}

const host: Host = { station: "", ask: () => Promise.reject(new Error("the engine has not started")), end: () => (ended.value = true) };

const Page = () =>
  ended.value ? (
    <Closed />
  ) : (
    <main>
      <Lesson host={host} lesson={lesson.value} problem={problem.value} />
    </main>
  );

async function begin() {
  try {
    const station = read();
    host.station = station.name;
    setUnits(station.units);
    document.title = `Lesson: ${station.name}`;
    host.ask = askOf(await start(carried("engine")), station);
    lesson.value = await host.ask<LessonTold>({ study: "lesson" });
  } catch (error) {
    problem.value = error instanceof Error ? error.message : String(error);
  }
}

/** After the whole page has been read, since what it carries may stand behind this script. */
function whenRead(then: () => void) {
  if (document.readyState === "loading") addEventListener("DOMContentLoaded", then);
  else then();
}

whenRead(() => {
  if (presents !== null) {
    followLesson(presents);
    render(<Presenter />, document.body);
    return;
  }
  const place = document.body.appendChild(document.createElement("div"));
  render(<Page />, place);
  void begin();
});
