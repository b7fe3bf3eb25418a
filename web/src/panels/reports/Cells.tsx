import { narrow } from "../../state/station";
import { withCell } from "./choice";
import type { TitleCell } from "./documents";
import { kept } from "./state";

/** The title cells, kept in this browser for this station. */
export function Cells(props: { cells: TitleCell[] }) {
  return (
    <>
      <h2>Title cells</h2>
      {props.cells.map((cell) => (
        <Cell key={cell.name} cell={cell} />
      ))}
      {!narrow.value && <p class="hint">Kept in this browser for this station.</p>}
    </>
  );
}

function Cell({ cell }: { cell: TitleCell }) {
  const id = `cell-${cell.name.replaceAll(" ", "-")}`;
  const text = kept.value.cells[cell.name] ?? "";
  if (narrow.value) {
    return (
      <p class="field">
        <span class="dim">{cell.label}</span> <span>{text || cell.text || cell.when_empty}</span>
      </p>
    );
  }
  const empty = text.trim() === "" && cell.text === "";
  return (
    <div class="field">
      <label for={id}>{cell.label}</label>
      <span class="in">
        <input
          id={id}
          value={text}
          placeholder={cell.text}
          maxLength={120}
          autocomplete="off"
          aria-describedby={empty ? `${id}-hint` : undefined}
          onInput={(e) => (kept.value = withCell(kept.value, cell.name, e.currentTarget.value))}
        />
      </span>
      {empty && cell.name === "checked by" && (
        <span class="hint" id={`${id}-hint`}>
          Left blank, so the page says “{cell.when_empty}”.
        </span>
      )}
    </div>
  );
}
