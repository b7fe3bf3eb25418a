import { unquoted, listText, textsOf, formOf, unitWordsOf } from "../../../state/entry";
import { units } from "../../../state/look";
import { shelfFor } from "../../../state/entry-shelf";

/** What is entered at a key, whether it stands in the file already or not. */
interface Entered {
  id: string;
  label: string;
  field: { key: string; kind: string; table: string | null; choices: string[] | null };
  /** As typed, without quotes. */
  value: string;
  bad?: boolean;
  says?: string;
  /** It may be left empty again. */
  open?: boolean;
  /** Each change of it. */
  onDraft: (value: string) => void;
  /** It stands: Enter, leaving the field, or a choice. */
  onDone: (value: string) => void;
  /** Leaving the field, where that is other than Enter. */
  onLeave?: (value: string) => void;
  onCancel: () => void;
}

/** The control for a value, by its kind. */
export function ValueInput(props: Entered) {
  const form = formOf(props.field);
  if (form === "choice" || form === "reference") return <Choice {...props} options={props.field.choices ?? []} />;
  if (form === "flag" && flagWords[props.value] && !props.open) return <Flag {...props} />;
  if (form === "flag") return <Choice {...props} options={["true", "false"]} words={flagWords} />;
  if (form === "references") return <References {...props} />;
  if (form === "position") return <Place {...props} />;
  return <Text {...props} />;
}

const flagWords: Record<string, string> = { true: "yes", false: "no" };

const marks = (props: Entered) => ({
  "aria-invalid": props.bad || undefined,
  "aria-describedby": props.says,
});

const keys = (props: Entered) => (event: KeyboardEvent) => {
  const input = event.currentTarget as HTMLInputElement;
  if (event.key === "Enter") {
    event.preventDefault();
    props.onDone(input.value);
  }
  if (event.key === "Escape") {
    event.stopPropagation();
    props.onCancel();
    input.select();
  }
};

function Text(props: Entered) {
  const shelf = shelfFor(props.field.kind, props.field.key);
  const list = shelf.length ? `${props.id}-shelf` : undefined;
  return (
    <span class={`in${props.bad ? " bad" : ""}`}>
      <input
        id={props.id}
        value={props.value}
        autocomplete="off"
        spellcheck={false}
        list={list}
        placeholder={props.field.kind === "date" ? "YYYY-MM-DD" : unitWordsOf(props.field.kind, units.value)}
        {...marks(props)}
        onInput={(e) => props.onDraft(e.currentTarget.value)}
        onKeyDown={keys(props)}
        onBlur={(e) => (props.onLeave ?? props.onDone)(e.currentTarget.value)}
      />
      {list && (
        <datalist id={list}>
          {shelf.map((s) => (
            <option key={s.id} value={s.id}>
              {s.status}
            </option>
          ))}
        </datalist>
      )}
    </span>
  );
}

function Choice(props: Entered & { options: string[]; words?: Record<string, string> }) {
  const known = props.value === "" || props.options.includes(props.value);
  return (
    <span class={`in sel${props.bad ? " bad" : ""}`}>
      <select id={props.id} value={props.value} {...marks(props)} onChange={(e) => props.onDone(e.currentTarget.value)}>
        {(props.value === "" || props.open) && <option value="">{props.open ? "not stated" : "choose"}</option>}
        {!known && <option value={props.value}>{props.value}</option>}
        {props.options.map((o) => (
          <option key={o} value={o}>
            {props.words?.[o] ?? o}
          </option>
        ))}
      </select>
    </span>
  );
}

/** A fact that is stated, one way or the other. */
function Flag(props: Entered) {
  return (
    <span class="check">
      <input
        type="checkbox"
        id={props.id}
        checked={props.value === "true"}
        {...marks(props)}
        onChange={(e) => props.onDone(String(e.currentTarget.checked))}
      />
      <span aria-hidden="true">{flagWords[props.value]}</span>
    </span>
  );
}

/** Several ids of the station, each with a box. */
function References(props: Entered) {
  const chosen = textsOf(props.value) ?? [];
  const all = [...new Set([...(props.field.choices ?? []), ...chosen])];
  const toggle = (id: string) => props.onDone(listText(all.filter((o) => (o === id) !== chosen.includes(o))));
  return (
    <span class="boxes" role="group" aria-label={props.label} id={props.id}>
      {all.map((o) => (
        <label class="check" key={o}>
          <input type="checkbox" checked={chosen.includes(o)} onChange={() => toggle(o)} />
          {o}
        </label>
      ))}
      {all.length === 0 && <span class="faint">none to choose yet</span>}
    </span>
  );
}

/** Of a place its two lengths are to the right and upward from the site's own origin; of anything else, two sizes. */
const namesOf = (key: string) =>
  (key.split(".").at(-1) ?? key) === "position"
    ? ([["To the right", "→"], ["Upward", "↑"]] as const)
    : ([["One way", "1"], ["The other way", "2"]] as const);

/** Two lengths. */
function Place(props: Entered) {
  const [first, second] = namesOf(props.field.key);
  const [x = "", y = ""] = textsOf(props.value) ?? [];
  const both = (right: string, up: string) => (right.trim() || up.trim() ? listText([right, up]) : "");
  const one = ([name, sign]: readonly [string, string], value: string, text: (typed: string) => string, id: string) => (
    <span class={`in${props.bad ? " bad" : ""}`}>
      <span class="faint" aria-hidden="true">
        {sign}
      </span>
      <input
        id={id}
        aria-label={`${props.label}: ${name.toLowerCase()}`}
        value={unquoted(value)}
        placeholder={unitWordsOf("position", units.value)}
        autocomplete="off"
        {...marks(props)}
        onInput={(e) => props.onDraft(text(e.currentTarget.value))}
        onKeyDown={(e) => keys({ ...props, onDone: (typed) => props.onDone(text(typed)) })(e)}
        onBlur={(e) => {
          const to = e.relatedTarget;
          const stays = to instanceof Element && to.closest(".place") === e.currentTarget.closest(".place");
          if (!stays) (props.onLeave ?? props.onDone)(text(e.currentTarget.value));
        }}
      />
    </span>
  );
  return (
    <span class="place">
      {one(first, x, (typed) => both(typed, y), props.id)}
      {one(second, y, (typed) => both(x, typed), `${props.id}-up`)}
    </span>
  );
}
