import { useEffect, useId, useState } from "preact/hooks";

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
  const [text, setText] = useState(props.value);
  useEffect(() => setText(props.value), [props.value]);
  const commit = () => text.trim() !== props.value && props.onCommit(text.trim());
  return (
    <label class="entry" title={props.hint}>
      <span>{props.label}</span>
      <input
        class="btn"
        value={text}
        placeholder={props.placeholder}
        list={props.list ? id : undefined}
        autocomplete="off"
        spellcheck={false}
        onInput={(e) => setText(e.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(e) => {
          if (e.key === "Enter") commit();
          if (e.key === "Escape") setText(props.value);
        }}
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
