import type { FunctionComponent } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Cautions } from "../parts/Cautions";
import { Note, Refusal } from "../parts/Note";
import { Seg } from "../parts/Seg";
import { withHint } from "../../api/client";
import { Head, UndoButtons } from "../shell/Shell";
import { count } from "../../draw/words";
import { freshness } from "../../state/ask";
import { chosenHose, hoses, openChoice, openHoses, secondChoice, type OpenPreset } from "../../state/hoses";
import { narrow } from "../../state/station";
import { product, sheet } from "../../state/look";
import {
  beside,
  drawWidth,
  shownHose,
  slowestOf,
  stateOf,
  systemOf,
  useA,
  useB,
  useCompared,
  useLong,
} from "./answers";
import { AtRest } from "./AtRest";
import { keepIn, type Choice } from "./choice";
import { Compared } from "./Compared";
import { GradeLine } from "./GradeLine";
import { PressureBudget } from "./PressureBudget";
import { Reading, totalWords } from "./Reading";
import { EmptyArt } from "../parts/EmptyArt";
import { documentOf, errorOf, type FlowDocument } from "./told/documents";
import { HoseTable } from "./HoseTable";
import { Keep } from "./Keep";
import { Ladder } from "./Ladder";
import { Spans } from "./Spans";
import { WorstStates } from "./WorstStates";
import { Aged, NoAnswer } from "./pieces";
import { Pumps } from "./Pumps";
import { SecondChoice } from "./SecondChoice";
import { reasonsOf, shownWords } from "./told/words";

type Preset = OpenPreset | "own";

function Presets() {
  const choice = openChoice.value;
  const value: Preset = Array.isArray(choice) ? "own" : choice;
  const open = openHoses.value.length;
  if (narrow.value)
    return (
      <p class="words">
        {count(open, "hose")} of {hoses.value.length} open.
      </p>
    );
  return (
    <Seg<Preset>
      label="Sets of open hoses"
      value={value}
      onChange={(v) => v !== "own" && (openChoice.value = v)}
      options={[
        { value: "all", text: "All", title: "Every hose of the station" },
        { value: "each", text: "Each", title: "One hose of each product at each dispenser" },
        { value: "none", text: "None", title: "No hose open" },
        ...(value === "own" ? [{ value: "own" as const, text: `${open} open`, title: "Your own choice" }] : []),
      ]}
    />
  );
}

export function Flow() {
  const a = useA();
  const b = useB();
  const long = useLong();
  const compared = useCompared();
  if (!hoses.value.length) return <NoHose />;
  const hasB = secondChoice.value.length > 0;
  const choiceA: Choice = { of: hasB ? "A" : null, answers: a.answers, as: freshness(a) };
  const failed = errorOf(a.answers?.[0]);
  const choiceB: Choice | null = hasB ? { of: "B", answers: b.answers, as: freshness(b) } : null;
  return (
    <>
      <Head title="Flow" about="Open the hoses you want and read the line">
        <Presets />
        <UndoButtons />
      </Head>
      <div class="flow">
        <Left a={choiceA} b={choiceB} />
        {failed ? (
          <div class="r">
            <NoAnswer answer={failed} />
          </div>
        ) : (
          <div class="r">
            <Refusal error={a.error} of={hasB ? "A" : ""} old={a.answers !== null} />
            {hasB && <Refusal error={b.error} of="B" old={b.answers !== null} />}
            <Width />
            <Reading a={choiceA} b={choiceB} />
            <Warnings choice={choiceA} />
            <Reasons choice={choiceA} />
            <Pair a={choiceA} b={choiceB} of={GradeLine} />
            <Pair a={choiceA} b={choiceB} of={PressureBudget} />
            {hasB && <Compared now={compared} keep={keepIn(choiceA)} />}
            <Refusal error={long.error} old={long.answers !== null} />
            <Ladder now={long} of={choiceA.of ? "A" : null} />
            <Later now={long} of={choiceA.of ? "A" : null} />
          </div>
        )}
      </div>
    </>
  );
}

/** What can be chosen, and what each hose and each pump does. */
function Left(props: { a: Choice; b: Choice | null }) {
  const [a, b] = [stateOf(props.a.answers?.[0]), props.b && stateOf(props.b.answers?.[0])];
  const slowest = slowestOf(systemOf(a, product.value))?.id ?? null;
  return (
    <div class="l">
      <Keep />
      <Aged as={props.a.as === "none" ? "waiting" : props.a.as}>
        <h2 class="with-line">Open hoses</h2>
        <HoseTable a={a} b={b} keep={keepIn(props.a)} slowest={slowest} waiting={props.a.answers === null} />
      </Aged>
      <Aged as={props.a.as}>{a && <Pumps state={a} of={props.a.of} />}</Aged>
      {props.b && b && (
        <Aged as={props.b.as}>
          <Pumps state={b} of="B" />
        </Aged>
      )}
      <SecondChoice />
    </div>
  );
}

/** The drawings are laid out for the room that there is. */
function Width() {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!box.current) return undefined;
    const watch = new ResizeObserver(([entry]) => {
      const room = Math.floor(entry?.contentRect.width ?? 0);
      if (room > 0 && Math.abs(room - drawWidth.value) > 4) drawWidth.value = room;
    });
    watch.observe(box.current);
    return () => watch.disconnect();
  }, []);
  return <div ref={box} class="room" />;
}

/** What the engine says of its own answer. */
function Warnings(props: { choice: Choice }) {
  const { warnings = [] } = documentOf<FlowDocument>(props.choice.answers?.[0]) ?? {};
  return warnings.map((w) => (
    <Note key={w.message} tone="info">
      {withHint(w)}
    </Note>
  ));
}

function Reasons(props: { choice: Choice }) {
  const state = stateOf(props.choice.answers?.[0]);
  const system = systemOf(state, product.value);
  const reasons = reasonsOf(state?.systems ?? []);
  return (
    <Aged as={props.choice.as} class="reasons">
      <p class="words">
        {totalWords(system)}
        {` ${shownWords(shownHose(system, chosenHose.value), chosenHose.value !== null, product.value)}`}
      </p>
      {reasons.map((r) => (
        <p key={r} class="words">
          {r}
        </p>
      ))}
    </Aged>
  );
}

/** The same of A and of B: beside each other where there is room. */
function Pair(props: { a: Choice; b: Choice | null; of: FunctionComponent<{ choice: Choice }> }) {
  const One = props.of;
  if (!props.b) return <One choice={props.a} />;
  return (
    <div class={`pair${beside.value ? " beside" : ""}`}>
      <One choice={props.a} />
      <One choice={props.b} />
    </div>
  );
}

function Later(props: { now: ReturnType<typeof useLong>; of: "A" | null }) {
  const answer = props.now.answers?.[0];
  const result = documentOf<FlowDocument>(answer)?.result;
  const error = errorOf(answer);
  return (
    <Aged as={freshness(props.now)} lines={8}>
      {error && <NoAnswer answer={error} />}
      {result && (
        <>
          <WorstStates result={result} of={props.of} />
          {result.spans && <Spans spans={result.spans} of={props.of} />}
          <AtRest lines={result.lines_at_rest ?? []} of={props.of} />
          <section class="chartbox" aria-label="Before you act on it">
            <Cautions of={documentOf<FlowDocument>(answer)?.cautions} />
          </section>
        </>
      )}
    </Aged>
  );
}

function NoHose() {
  return (
    <>
      <Head title="Flow" about="" />
      <div class="empty">
        <EmptyArt />
        <h2>No hose yet</h2>
        <p>
          A flow needs a dispenser with an inlet and a hose. Add one on the Site sheet; here you will see what each hose
          gives and where its pressure goes.
        </p>
        <button type="button" class="btn go" onClick={() => (sheet.value = "site")}>
          Go to Site
        </button>
      </div>
    </>
  );
}
