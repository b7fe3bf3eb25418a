import { useMemo, useRef } from "preact/hooks";
import type { ErrorAnswer, Want } from "../../../api/types";
import { evenText } from "../../../draw/clock";
import { sentence } from "../../../draw/words";
import { useStanding } from "../../../state/ask";
import { sheet, units } from "../../../state/look";
import { editable, station } from "../../../state/station";
import { EmptyArt } from "../../parts/EmptyArt";
import { Note, Refusal } from "../../parts/Note";
import { Events } from "../../replay/Events";
import { Player } from "../../replay/Player";
import { addOnSite } from "../../site/adding";
import { Head, UndoButtons } from "../../shell/Shell";
import { asCalledHere } from "../answer";
import type { Tank, TankDocument } from "../documents";
import { Band } from "./Band";
import { Compare } from "./Compare";
import { Courses } from "./Courses";
import type { DeliveryDocument } from "./documents";
import { HeadA, HeadB } from "./Heads";
import { Rest } from "./Rest";
import { Scene } from "./scene/Scene";
import { Setup } from "./Setup";
import { deliveryParts } from "../values/shown";
import { ViewValues } from "../values/ViewValues";
import { asked, choiceA, choiceB, wantOf } from "./state";
import { viewOf, type DropView } from "./view";
import { broughtWords, undeterminedWords } from "./words";

type Answer = { document: DeliveryDocument } | ErrorAnswer;
type TankAnswer = { document: TankDocument } | ErrorAnswer;

/** The first thing, above every number; it cannot be closed. */
const Caution = () => (
  <p class="caution">
    <b>Never open a stalled drop under pressure.</b> Close the compartment valve, wait, let the hose drain. The driver
    stays with the drop.
  </p>
);

const hasDelivery = () => station.value?.parts.some((p) => p.kind === "delivery") ?? false;

/** The delivery and the tanks it fills: asked for at once. */
function useTold() {
  const now = useStanding<unknown>(() => {
    if (!hasDelivery()) return null;
    const wants: Want[] = [
      { ...wantOf(asked.value), units: units.value },
      { study: "tank", units: units.value },
    ];
    return { wants };
  });
  const [answer, tank] = (now.answers ?? []) as [Answer?, TankAnswer?];
  const tanks = tank && "document" in tank ? tank.document.result.tanks : [];
  return { now, answer, tanks };
}

/** The last that could be told; a question that is refused leaves it standing. */
function useLast(answer: Answer | undefined) {
  const last = useRef<DeliveryDocument | undefined>(undefined);
  if (answer && "document" in answer) last.current = answer.document;
  const refused = answer && "error" in answer ? asCalledHere(`${sentence(answer.error)} ${sentence(answer.hint)}`.trim()) : null;
  return { document: last.current, refused };
}

/** A tanker unloads: rate, levels and pressure of the vapor, two runs side by side. */
export function Delivery() {
  const { now, answer, tanks } = useTold();
  const { document, refused } = useLast(answer);
  const [a, b] = [choiceA.value, choiceB.value];
  const view = useMemo(() => (document ? viewOf(document, a, b) : null), [document, a, b]);
  const problem = document?.result.problem;
  const about = view ? `${broughtWords(view.a.run, units.value)}. ${evenText}` : "";
  if (!hasDelivery()) return <NoDelivery />;
  return (
    <>
      <Head title="Tank" about={about}>
        <UndoButtons />
      </Head>
      <Caution />
      <div class={`inc dlv${now.age === 2 ? " old" : ""}`}>
        <div class="mid">
          <Setup run={view?.a.run} />
          <Refusal error={now.error} old={view !== null} />
          {refused && (
            <Note tone="bad" role="status">
              {refused} {view && "What you see is from before."}
            </Note>
          )}
          {problem && !view && <Missing text={asCalledHere(sentence(problem))} />}
          {problem && view && <Problem text={asCalledHere(`Not determined: ${problem}.`)} />}
          <Notes document={document} view={view} />
          {view ? (
            <Replay view={view} tanks={tanks} />
          ) : (
            !problem && !refused && !now.error && <div class="skel-box" aria-hidden="true" />
          )}
        </div>
        <aside class="side" aria-label="Figures at the playhead">
          {view && <Compare view={view} />}
          <div class="insp">
            <ViewValues of={deliveryParts(station.value?.parts ?? [], asked.value.delivery)} open={!view && Boolean(problem)} />
          </div>
          {view && <Events view={view} />}
        </aside>
        {view && <Rest view={view} />}
      </div>
    </>
  );
}

function Problem({ text }: { text: string }) {
  return (
    <Note tone="warn" role="status">
      {text}{" "}
      <button type="button" class="link edit" onClick={() => (sheet.value = "site")}>
        Go to Site
      </button>
    </Note>
  );
}

/** A delivery that cannot be played yet. */
function Missing({ text }: { text: string }) {
  const all = station.value?.parts.filter((p) => p.kind === "delivery") ?? [];
  const delivery = all.find((p) => p.id === asked.value.delivery) ?? all[0];
  const loaded = delivery?.fields.some((f) => f.key.startsWith("compartment."));
  return (
    <div class="empty" role="status">
      <EmptyArt />
      <h2>This delivery is not determined yet</h2>
      <p>{text}</p>
      <p>With it this view plays the drop: rate, levels, pressure of the vapor, and what stays in the hose.</p>
      {editable.value && delivery && !loaded && (
        <button
          type="button"
          class="btn go edit"
          onClick={() => addOnSite("delivery.compartment", delivery.path)}
        >
          Add a compartment on the Site sheet
        </button>
      )}
    </div>
  );
}

/** What is to be known before the numbers are read. */
function Notes({ document, view }: { document: DeliveryDocument | undefined; view: DropView | null }) {
  const open = view?.a.run.ullages.flatMap((u) => undeterminedWords(u) ?? []) ?? [];
  const pressed = [view?.a, view?.b].filter((s) => s?.run.under_pressure);
  return (
    <>
      {pressed.map((s) => (
        <Note tone="bad" key={s?.letter}>
          <b>
            {s?.letter}, {s?.words.toLowerCase()}: it {s?.run.stalled ? "stalls" : "ends"} with its vapor shut in under
            pressure.
          </b>{" "}
          {document?.cautions[0]}
        </Note>
      ))}
      {open.map((text) => (
        <Problem key={text} text={`${text} Enter its vents and its vapor return.`} />
      ))}
    </>
  );
}

/** The station has no delivery. */
function NoDelivery() {
  return (
    <>
      <Head title="Tank" about="" />
      <Caution />
      <div class="empty">
        <EmptyArt />
        <h2>No delivery is entered</h2>
        <p>
          Enter a delivery: the truck's compartments with what each brings and into which tank, its hose, and whether
          vapor goes back to it. This view then plays the drop: rate, levels, pressure of the vapor, and what stays in
          the hose.
        </p>
        {editable.value && (
          <button type="button" class="btn go edit" onClick={() => addOnSite("delivery")}>
            Add a delivery on the Site sheet
          </button>
        )}
      </div>
    </>
  );
}

function Replay({ view, tanks }: { view: DropView; tanks: readonly Tank[] }) {
  return (
    <>
      <div class={`scenes${view.b ? "" : " single"}`}>
        <figure class="scene">
          <HeadA view={view} />
          <Scene side={view.a} view={view} tanks={tanks} />
        </figure>
        <figure class="scene">
          <HeadB view={view} />
          {view.b && <Scene side={view.b} view={view} tanks={tanks} />}
          {!view.b && view.document.result.runs.length === 1 && (
            <p class="scene-words">
              This delivery has no case beside it: where a vent or a vapor return is entered, it is shown without them.
            </p>
          )}
        </figure>
      </div>
      <p class="cap scene-note">Schematic. Levels stand to the scale of their tank, with 90 and 95 % marked.</p>
      <Player view={view} of="delivery" />
      <Band view={view} />
      <Courses view={view} />
    </>
  );
}
