import type { ComponentChildren } from "preact";
import { unitOf, type Quantity, type UnitSystem } from "../../draw/numbers";
import { alive } from "../../state/station";
import { Scroll } from "../parts/Scroll";
import { StatusShape } from "../parts/status";
import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import type { Freshness } from "./answers";
import { sentence } from "./told/words";

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
export function NoAnswer(props: { answer: ErrorAnswer }) {
  return (
    <p class="note info">
      <StatusShape state="not determined" />
      <span>
        <b>{sentence(props.answer.error)}</b> {props.answer.hint && sentence(props.answer.hint)}
      </span>
    </p>
  );
}

/** The question was refused: what still holds. That the server is gone is said by the shell. */
export function Refusal(props: { error: string | null; of?: string; old: boolean }) {
  if (!props.error || !alive.value) return null;
  return (
    <p class="note bad" role="status">
      <StatusShape state="falls short" />
      <span>
        <b>
          {props.of ? `${props.of}: ` : ""}
          {sentence(props.error)}
        </b>{" "}
        {props.old && "What you see is from before."}
      </span>
    </p>
  );
}

export function Letter(props: { of: "A" | "B" }) {
  return <span class={`letter ${props.of}`}>{props.of}</span>;
}

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
