import type { Edit } from "../../api/types";
import { edit, editable } from "../../state/station";

/** Makes edits as one step that can be undone; nothing where there are none. */
export function TryIt(props: { edits: Edit[]; label: string; at: string }) {
  if (!props.edits.length) return null;
  return (
    <button
      type="button"
      class="btn edit"
      disabled={!editable.value}
      title={
        editable.value
          ? `At ${props.at}; one step that can be undone`
          : "To read only: open the address that the program printed"
      }
      onClick={() => void edit(props.label, props.edits)}
    >
      Try it
    </button>
  );
}
