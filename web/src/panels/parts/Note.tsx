import type { ComponentChildren } from "preact";
import type { ErrorAnswer } from "../../api/types";
import { sentence } from "../../draw/words";
import { alive } from "../../state/station";
import { StatusShape } from "./status";

interface NoteProps {
  tone: "bad" | "warn" | "info";
  role?: "status" | "alert";
  class?: string;
  children: ComponentChildren;
}

/** What is to be known before the rest is read: what failed or is refused (bad), what is missing (warn, info). */
export const Note = (props: NoteProps) => (
  <p class={`note ${props.tone} ${props.class ?? ""}`} role={props.role}>
    <StatusShape state={props.tone === "bad" ? "falls short" : "not determined"} />
    <span>{props.children}</span>
  </p>
);

/** An error and the next step. */
export const ErrorWords = ({ error, hint }: ErrorAnswer) => (
  <>
    <b>{sentence(error)}</b> {sentence(hint)}
  </>
);

/** The question was refused: what still holds. That the server is gone is said by the shell. */
export function Refusal(props: { error: string | null; of?: string; old: boolean; class?: string }) {
  if (!props.error || !alive.value) return null;
  return (
    <Note tone="bad" role="status" class={props.class ?? ""}>
      <b>
        {props.of ? `${props.of}: ` : ""}
        {sentence(props.error)}
      </b>{" "}
      {props.old && "What you see is from before."}
    </Note>
  );
}
