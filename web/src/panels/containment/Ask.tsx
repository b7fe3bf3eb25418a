import { useEffect, useId, useState } from "preact/hooks";
import { narrow } from "../../state/station";

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
  const [text, setText] = useState(props.value);
  useEffect(() => setText(props.value), [props.value]);
  if (narrow.value) {
    return (
      <p class="ask">
        {props.label} {props.value || props.placeholder}
      </p>
    );
  }
  const commit = () => text.trim() !== props.value && props.onCommit(text.trim());
  return (
    <div class="ask">
      <label for={id}>{props.label}</label>
      <span class={`in${props.problem ? " bad" : ""}`}>
        <input
          id={id}
          value={text}
          placeholder={props.placeholder}
          list={props.list ? `${id}-list` : undefined}
          autocomplete="off"
          spellcheck={false}
          aria-invalid={props.problem ? true : undefined}
          aria-describedby={props.problem ? `${id}-problem` : undefined}
          onInput={(e) => {
            setText(e.currentTarget.value);
            if (props.list?.includes(e.currentTarget.value)) props.onCommit(e.currentTarget.value);
          }}
          onBlur={commit}
          onKeyDown={(e) => {
            if (e.key === "Enter") commit();
            if (e.key === "Escape") setText(props.value);
          }}
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
