import type { Field, Part } from "../../api/types";
import { capital } from "../../draw/words";
import { formOf, fullLabelOf, labelOf, refusal } from "../../state/entry";
import { tableText, withItem } from "../../state/entry-blocks";
import { select, selection } from "../../state/look";
import { partOf, station, tryEdit } from "../../state/station";
import { toast } from "../../state/toast";
import { addOnSite, kindsNow } from "./adding";
import { TableForm } from "./entry/TableForm";
import { plain } from "./words";

/** Values that could be entered; one click puts a field in. */
export function Absent(props: { fields: readonly Field[]; part: Part; onAdd: (f: Field) => void }) {
  const kinds = kindsNow();
  const header = props.part.path.split(".")[0] ?? "";
  const isPart = (f: Field) => props.part.of === null && kinds.some((k) => k.header === `${header}.${f.key}`);
  // A part of its own has its form on the Site sheet.
  const add = (f: Field) => (isPart(f) ? addOnSite(`${header}.${f.key}`, props.part.path) : props.onAdd(f));
  if (!props.fields.length) return null;
  return (
    <details class="more">
      <summary>
        Add a value <span class="faint">{props.fields.length} not entered</span>
      </summary>
      <ul>
        {props.fields.map((f) => (
          <li key={f.path}>
            <button type="button" onClick={() => add(f)}>
              <span>{fullLabelOf(f.key)}</span>
              <small>{plain(f.help)}</small>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** A table of a part that has none of it yet, or one more of a list: its own small form. */
export function NewTable(props: { field: Field; list?: string | null; onGone: () => void }) {
  const { field } = props;
  const all = station.value?.tables[field.table ?? ""] ?? [];
  const keys = all.filter((k) => formOf(k) !== "table" && formOf(k) !== "list");
  const name = labelOf(field.key).toLowerCase();
  return (
    <div class="newtable">
      <h4>{capital(name)}</h4>
      <TableForm
        id={`new-${field.path}`}
        keys={keys}
        verb={`Enter the ${name}`}
        about={`${plain(field.help)} What is left empty is left out.`}
        onCancel={props.onGone}
        onSubmit={async (values) => {
          const table = tableText(values);
          if (!table) return "Enter one value or more.";
          const value = props.list ? withItem(props.list, table) : formOf(field) === "list" ? `[${table}]` : table;
          const problem = await tryEdit(`enter ${name}`, [{ path: field.path, value }]);
          if (problem !== null) return refusal(problem, null);
          toast(`Entered ${name}. Ctrl+Z undoes it.`);
          props.onGone();
          const made = partOf(field.path);
          if (made) select(made.stop ?? selection.value.stop, made.path);
          return null;
        }}
      />
    </div>
  );
}
