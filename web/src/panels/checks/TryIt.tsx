import type { Edit } from "../../api/types";
import { edit, editable } from "../../state/station";

/**
 * Makes edits as one step that can be undone; nothing where there are none. What is work is entered once it is done,
 * not to see what it does.
 */
export function TryIt(props: { edits: Edit[]; label: string; at: string; work?: boolean }) {
  if (!props.edits.length) return null;
  const at = props.work ? `Only after it is done at ${props.at}` : `At ${props.at}`;
  return (
    <button
      type="button"
      class="btn edit"
      disabled={!editable.value}
      title={
        editable.value
          ? `${at}; one step that can be undone`
          : "To read only: open the address that the program printed"
      }
      onClick={() => void edit(props.label, props.edits)}
    >
      {props.work ? "Enter it as done" : "Try it"}
    </button>
  );
}
