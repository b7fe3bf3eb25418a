import { useMemo } from "preact/hooks";
import { clockOf, stretchedText } from "../../draw/clock";
import { sentence } from "../../draw/words";
import { withHint } from "../../api/client";
import type { Want } from "../../api/types";
import { useStanding, type Standing } from "../../state/ask";
import { sheet } from "../../state/look";
import { alive, station } from "../../state/station";
import { Head } from "../shell/Shell";
import { Note } from "../parts/Note";
import { Barriers, WithAndWithout } from "./Barriers";
import { choiceA, choiceB, entry, place, secondAsk, twoChoices, want } from "./answer/choice";
import { placesOf, type Kind } from "./answer/kinds";
import { HeadA, HeadB } from "./ask/Choices";
import { Compare, Range } from "./replay/Compare";
import { Courses } from "./replay/Courses";
import type { IncidentAnswer, IncidentDocument } from "./answer/documents";
import { Events } from "../replay/Events";
import { Ledger } from "./Ledger";
import { Player } from "../replay/Player";
import { Scene, sceneWidth, type SceneAnswer } from "./replay/Scene";
import { Pick, Setup } from "./ask/Setup";
import { Spread } from "./Spread";
import { Basis, Figures, Service } from "./Told";
import { viewOf, type View } from "./answer/view";

const sceneOf = (want: Want): Want => {
  const { study: _, ...rest } = want;
  return { ...rest, drawing: "scene", width: sceneWidth };
};

/** What is told and drawn of one choice: asked for at once, so that the engine computes it once. */
interface Told {
  answer: IncidentAnswer | undefined;
  scene: SceneAnswer | undefined;
  error: string | null;
  age: 0 | 1 | 2;
}

const both = (want: Want): Want[] => [want, sceneOf(want)];

function told(standing: Standing<unknown>): Told {
  const [answer, scene] = standing.answers ?? [];
  return { answer: answer as IncidentAnswer, scene: scene as SceneAnswer, error: standing.error, age: standing.age };
}

/** Choice A with all its runs; choice B where it asks for itself. */
function useTold(): { first: Told; second: Told | null } {
  const first = told(useStanding(() => want.value && { wants: both(want.value) }));
  const second = told(
    useStanding(() => {
      const asked = secondAsk.value;
      return asked && { wants: both(asked.want), edits: asked.edits };
    }),
  );
  return { first, second: secondAsk.value ? second : null };
}

/** The first thing, above every number; it cannot be closed. */
const Caution = () => (
  <p class="caution">
    <b>First:</b> stop the pump, clear people away, call the fire service. Figures are from a model and are ranges at
    best. A barrier counts only where it is assured.
  </p>
);

/** What is told instead of an answer; null: there is one. */
function problemOf(answer: IncidentAnswer | undefined, error: string | null): string | null {
  if (answer?.error) return `${sentence(answer.error)} ${sentence(answer.hint ?? "")}`.trim();
  if (answer?.document?.result.problem) return sentence(answer.document.result.problem);
  return alive.value ? error : null; // that nobody answers stands above the sheet
}

export function Incident() {
  const { first, second } = useTold();
  const { answer } = first;
  const document = answer?.document;
  const other = second?.answer?.document;
  const [a, b, two] = [choiceA.value, choiceB.value, twoChoices.value];
  const view = useMemo(
    () => (document ? viewOf(document, other ?? null, a, b, two) : null),
    [document, other, a, b, two],
  );
  const problem = problemOf(answer, first.error);
  const scenes = { a: first.scene, b: second ? second.scene : first.scene };
  const now = entry.value;
  const nowhere = now && station.value && placesOf(now.kind, station.value.parts).length === 0 ? now.kind : null;
  const about = now && `${now.kind.name} at ${place.value}. ${stretchedText(view?.clock ?? clockOf(600))}`;
  return (
    <>
      <Head title="Incident" about={view ? about : (now?.kind.about ?? "")} />
      <Caution />
      <div class={`inc${first.age === 2 ? " old" : ""}`}>
        <Pick />
        <div class="mid">
          {nowhere ? <Nowhere kind={nowhere} /> : <Setup />}
          {!nowhere && problem && (
            <Note tone="warn" role="status">
              {problem}
            </Note>
          )}
          {document?.warnings.map((w) => (
            <Note tone="info">{withHint(w)}</Note>
          ))}
          {document && view ? (
            <Replay
              document={document}
              view={view}
              scenes={scenes}
              problem={second && problemOf(second.answer, second.error)}
            />
          ) : (
            !problem && <div class="skel-box" aria-hidden="true" />
          )}
        </div>
        {view && (
          <aside class="side" aria-label="Figures at the playhead">
            <div>
              <Compare view={view} />
              <Range view={view} />
            </div>
            <Events view={view} />
          </aside>
        )}
        {view && (
          <div class="rest">
            <WithAndWithout view={view} />
            <Ledger view={view} />
            <Figures view={view} />
            <Barriers view={view} />
            <Spread />
            <Service view={view} />
            <Basis view={view} />
          </div>
        )}
      </div>
    </>
  );
}

/** The station has no part at which this could happen. */
function Nowhere({ kind }: { kind: Kind }) {
  return (
    <div class="empty">
      <h2>No {kind.places.join(" or ")} yet</h2>
      <p>It happens at one of them. Add it on the Site sheet; here you will see what escapes, and what each barrier saves.</p>
      <button type="button" class="btn go edit" onClick={() => (sheet.value = "site")}>
        Go to Site
      </button>
    </div>
  );
}

interface ReplayProps {
  document: IncidentDocument;
  view: View;
  scenes: { a: SceneAnswer | undefined; b: SceneAnswer | undefined };
  problem: string | null;
}

function Replay({ document, view, scenes, problem }: ReplayProps) {
  const { a, b } = scenes;
  const asksItself = twoChoices.value && choiceB.value !== null && choiceB.value.is !== "run";
  return (
    <>
      <div class={`scenes${view.b || asksItself ? "" : " single"}`}>
        <figure class="scene">
          <HeadA document={document} view={view} />
          <Scene side={view.a} view={view} answer={a} beside={b} />
        </figure>
        <figure class="scene">
          <HeadB document={document} view={view} problem={problem} />
          {view.b && <Scene side={view.b} view={view} answer={b} beside={a} />}
        </figure>
      </div>
      {a && (
        <p class="cap scene-note">
          {"svg" in a ? a.remarks.join(" ") : "This kind has no scene; its courses and figures tell what happens."}
        </p>
      )}
      <Player view={view} of="incident" />
      <Courses view={view} />
    </>
  );
}
