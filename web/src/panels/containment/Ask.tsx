import { useId } from "preact/hooks";
import { narrow } from "../../state/station";
import { useTyped } from "../parts/typing";

/** What the sheet is asked with: committed on Enter or when it is left, Esc puts it back. What the engine could not
 * read is said under it. */
export function Ask(props: {
  label: string;
  value: string;
  placeholder: string;
  list?: readonly string[];
  problem?: string | null;
  /** What holds meanwhile. */
  kept?: string;
  onCommit: (text: string) => void;
}) {
  const id = useId();
  const typed = useTyped(props.value, props.onCommit, props.list);
  if (narrow.value) {
    return (
      <p class="ask">
        {props.label} {props.value || props.placeholder}
      </p>
    );
  }
  return (
    <div class="ask">
      <label for={id}>{props.label}</label>
      <span class={`in${props.problem ? " bad" : ""}`}>
        <input
          id={id}
          {...typed}
          placeholder={props.placeholder}
          list={props.list ? `${id}-list` : undefined}
          aria-invalid={props.problem ? true : undefined}
          aria-describedby={props.problem ? `${id}-problem` : undefined}
        />
      </span>
      {props.list && (
        <datalist id={`${id}-list`}>
          {props.list.map((one) => (
            <option value={one} key={one} />
          ))}
        </datalist>
      )}
      {props.problem && (
        <p class="hint bad" id={`${id}-problem`} role="alert">
          {props.problem}
          {props.kept ? ` Kept ${props.kept}.` : ""}
        </p>
      )}
    </div>
  );
}
