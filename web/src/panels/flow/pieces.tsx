import type { ComponentChildren } from "preact";
import { unitOf, type Quantity, type UnitSystem } from "../../draw/numbers";
import type { Freshness } from "../../state/ask";
import { ErrorWords, Note } from "../parts/Note";
import { Scroll } from "../parts/Scroll";
import type { DrawingAnswer, ErrorAnswer } from "../../api/types";

/** What is shown of an answer by its age: in faint ink while a new one is on its way, in placeholders of its own shape
 * when that takes long. */
export function Aged(props: { as: Freshness; class?: string; children: ComponentChildren; lines?: number }) {
  if (props.as === "none") return <div class={props.class} aria-busy="true" />;
  const empty = props.as === "waiting" && !props.children;
  return (
    <div class={`${props.class ?? ""} aged ${props.as}`} aria-busy={props.as === "waiting"}>
      {empty ? Array.from({ length: props.lines ?? 4 }, (_, i) => <div key={i} class="skel" />) : props.children}
    </div>
  );
}

/** Holds the place of a number that is not there yet. */
export const Place = () => (
  <span class="fig" aria-hidden="true">
    00.0
  </span>
);

export function Fig(props: { text: string; what?: Quantity; units?: UnitSystem }) {
  return (
    <>
      <span class="fig">{props.text}</span>
      {props.what && props.units && <span class="u">{unitOf(props.what, props.units)}</span>}
    </>
  );
}

/** Why there is no answer, and the next step. */
export const NoAnswer = (props: { answer: ErrorAnswer }) => (
  <Note tone="info">
    <ErrorWords {...props.answer} />
  </Note>
);

/** A table behind a chart, shut until asked for. */
export function Behind(props: { title: string; children: ComponentChildren; open?: boolean }) {
  return (
    <details class="behind" open={props.open}>
      <summary>{props.title}</summary>
      <Scroll label={props.title}>{props.children}</Scroll>
    </details>
  );
}

/** The sentences that go with a drawing. */
export function Remarks(props: { answer: DrawingAnswer | ErrorAnswer | undefined }) {
  if (!props.answer || !("remarks" in props.answer)) return null;
  return <p class="cap">{props.answer.remarks.join(" ")}</p>;
}
