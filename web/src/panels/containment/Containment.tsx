import { useEffect, useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import { unitOf } from "../../draw/numbers";
import { sentence } from "../../draw/words";
import { useStanding } from "../../state/ask";
import { selection, sheet, units } from "../../state/look";
import { editable } from "../../state/station";
import { Note, Refusal } from "../parts/Note";
import { Head } from "../shell/Shell";
import { Ask } from "./Ask";
import type { ContainmentDocument } from "./documents";
import { Drains } from "./Drains";
import { Fills } from "./Fills";
import { inflowWords, inShort, sumpAt, usualInflows, withUnit } from "./rows";
import { deadFor, drawWidth, inflow, roomFor } from "./state";
import { SumpDrawing } from "./SumpDrawing";
import { SumpPanel } from "./SumpPanel";

type Answer = { document: ContainmentDocument } | ErrorAnswer | DrawingAnswer;

/** The first to be shown: the largest of the usual ones. */
const usual = () => usualInflows[units.value].at(-1) ?? "";
const asked = () => inflow.value || usual();

/** What the engine could not do, with its own names of the two entries put in words. */
const told = ({ error, hint }: ErrorAnswer) =>
  [error.replace(/^inflows /, "the inflow ").replace(/^sensor_dead_for /, "the time "), hint]
    .map(sentence)
    .join(" ")
    .trim();

type Drawn = DrawingAnswer | ErrorAnswer;
interface Shown {
  document: ContainmentDocument | null;
  drawn: Drawn | undefined;
}

/** The last that could be computed; a refused entry leaves it standing. */
function useLast(told: Answer | undefined, drawn: Drawn | undefined): Shown & { problem: ErrorAnswer | null } {
  const last = useRef<Shown>({ document: null, drawn: undefined });
  if (told && "document" in told) last.current = { document: told.document, drawn };
  return { ...last.current, problem: told && "error" in told ? told : null };
}

/** Keeps the room for the drawing as its column has it. */
function useRoom(there: boolean) {
  const column = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!column.current) return;
    const watch = new ResizeObserver(([entry]) => {
      if (entry) drawWidth.value = roomFor(entry.contentRect.width - 32);
    });
    watch.observe(column.current);
    return () => watch.disconnect();
  }, [there]);
  return column;
}

function NoSump() {
  return (
    <div class="empty">
      <svg viewBox="0 0 220 110" fill="none" stroke="currentColor" aria-hidden="true">
        <path d="M10 24H66M154 24H210" stroke-width="2.5" />
        <path d="M66 24L78 92H142L154 24" stroke-width="2" stroke-dasharray="5 4" />
        <path d="M20 60H72M148 60H200" stroke-width="1.5" stroke-dasharray="2 4" />
      </svg>
      <h2>No sump is entered</h2>
      <p>
        With a sump on a tank or under a dispenser, this sheet draws it to scale and says what it holds, how soon it
        fills and what drains into it.
      </p>
      {editable.value && (
        <button type="button" class="btn go edit" onClick={() => (sheet.value = "site")}>
          Add a sump on the Site sheet
        </button>
      )}
    </div>
  );
}

export function Containment() {
  const now = useStanding<Answer>(() => {
    const dead = deadFor.value ? { sensor_dead_for: deadFor.value } : {};
    const others = usualInflows[units.value].filter((one) => one !== asked());
    return {
      wants: [
        { study: "containment", inflows: [asked(), ...others], ...dead, units: units.value },
        { drawing: "sumps", inflows: [asked()], ...dead, width: drawWidth.value, units: units.value },
      ],
    };
  });
  const [first, second] = now.answers ?? [];
  const { document, drawn, problem } = useLast(first, second as Drawn | undefined);
  const column = useRoom(document !== null);
  const { sumps = [], joints = [], lines = [] } = document?.result ?? {};
  const chosen = sumpAt(sumps, selection.value.part) ?? sumps[0];
  const said = document ? inflowWords(document.options.inflows_m3_per_s[0] ?? 0, units.value) : asked();
  const old = now.age === 2;
  const of = (word: string) => (problem?.error.includes(word) ? told(problem) : null);
  const deadProblem = of("sensor_dead_for");
  const inflowProblem = deadProblem ? null : of("inflow");
  return (
    <>
      <Head title="Containment" about={document ? inShort(sumps, joints, lines) : ""}>
        {(sumps.length > 0 || problem) && (
          <div class="asks">
            <Ask
              label="Inflow"
              value={inflow.value}
              placeholder={usual()}
              list={usualInflows[units.value]}
              problem={inflowProblem}
              kept={said}
              onCommit={(t) => (inflow.value = withUnit(t, unitOf("flow", units.value)))}
            />
            <Ask
              label="Sensors dead for"
              value={deadFor.value}
              placeholder="no time"
              problem={deadProblem}
              onCommit={(t) => (deadFor.value = withUnit(t, "h"))}
            />
          </div>
        )}
      </Head>
      {problem && !inflowProblem && !deadProblem && (
        <Note tone="bad" role="status">
          {told(problem)} {document ? "What you see is from before." : ""}
        </Note>
      )}
      <Refusal error={now.error} old={document !== null} />
      {!document && !problem && <div class="skel-box" aria-hidden="true" />}
      {document && (
        <div class={`split${sumps.length ? "" : " bare"}`}>
          <div class="col" ref={column}>
            {sumps.length === 0 ? (
              <NoSump />
            ) : (
              <>
                <SumpDrawing answer={drawn} old={old} sumps={sumps} chosen={chosen} />
                {drawn && "remarks" in drawn && drawn.remarks.length > 0 && (
                  <p class="txt remarks">{drawn.remarks.join(" ")}</p>
                )}
                <Fills sumps={sumps} said={said} chosen={chosen} old={old} />
              </>
            )}
            <Drains joints={joints} lines={lines} />
            <p class="txt cautions">{document.cautions.join(" ")}</p>
          </div>
          {chosen && <SumpPanel sump={chosen} said={said} />}
        </div>
      )}
    </>
  );
}
