import { useId } from "preact/hooks";
import { useTyped } from "../../parts/typing";

/** A text that the engine reads: committed on Enter or when it is left, Esc puts it back. */
export function Entry(props: {
  label: string;
  value: string;
  placeholder?: string;
  list?: readonly string[];
  hint?: string;
  onCommit: (text: string) => void;
}) {
  const id = useId();
  const typed = useTyped(props.value, props.onCommit);
  return (
    <label class="entry" title={props.hint}>
      <span>{props.label}</span>
      <input
        class="btn"
        {...typed}
        placeholder={props.placeholder}
        list={props.list ? id : undefined}
      />
      {props.list && (
        <datalist id={id}>
          {props.list.map((one) => (
            <option value={one} />
          ))}
        </datalist>
      )}
    </label>
  );
}
