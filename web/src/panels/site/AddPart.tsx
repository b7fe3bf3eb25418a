import { useEffect } from "preact/hooks";
import { capital } from "../../draw/words";
import { firstForm, idFor, kindName, together, type NewKind } from "../../state/entry-kinds";
import { partOf, station } from "../../state/station";
import { adding, addPart, kindsNow, ownersOf, startAdding } from "./adding";
import { Menu } from "./Menu";
import { TableForm } from "./entry/TableForm";

/** Along the course first: what a station begins with. */
const first = ["product", "tank", "pump", "line", "branch", "dispenser", "dispenser.inlet", "dispenser.hose"];

export function AddMenu() {
  const kinds = kindsNow();
  const begun = first.flatMap((header) => kinds.find((k) => k.header === header) ?? []);
  const there = (kind: NewKind) => station.value?.parts.some((p) => p.path === kind.header) ?? false;
  const others = kinds.filter((k) => !first.includes(k.header) && (k.list || !there(k)));
  const item = (kind: NewKind, apart: boolean) => ({
    text: (
      <>
        {kindName(kind.header)}
        {kind.owner && <span class="faint"> of a {kindName(kind.owner)}</span>}
      </>
    ),
    disabled: kind.owner !== null && ownersOf(kind).length === 0,
    apart,
    onChoose: () => startAdding(kind.header),
  });
  return (
    <Menu
      class="edit"
      name={
        <>
          <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M8 3v10M3 8h10" /></svg>
          Add a part
        </>
      }
      items={[...begun.map((k) => item(k, false)), ...others.map((k, i) => item(k, i === 0))]}
    />
  );
}

/** The form of the part that is being added; stands in place of the properties. */
export function AddPart() {
  useEffect(() => focusProperties, []);
  const now = adding.value;
  const s = station.value;
  if (!now || !s) return null;
  const { kind, owner } = now;
  const owners = ownersOf(kind);
  const ownerPart = owner ? (partOf(owner) ?? null) : null;
  const name = kindName(kind.header);
  const keys = firstForm(s.tables, kind);
  const start: Record<string, string> = { id: idFor(s, kind, ownerPart) };
  for (const key of keys) if (key.kind === "reference") start[key.key] = only(s.parts, key.key);
  Object.assign(start, now.start);
  return (
    <aside class="insp" aria-label={`New ${name}`}>
      <div class="top one">
        <div>
          <p class="over">{kind.owner ? `New, of a ${kindName(kind.owner)}` : "New"}</p>
          <h2>{capital(name)}</h2>
        </div>
      </div>
      {kind.owner && (
        <div class="field">
          <label for="new-owner">Belongs to</label>
          <span class="in sel">
            <select
              id="new-owner"
              value={owner ?? ""}
              onChange={(e) => (adding.value = { ...now, owner: e.currentTarget.value })}
            >
              {owners.map((p) => (
                <option key={p.path} value={p.path}>
                  {p.id}
                </option>
              ))}
            </select>
          </span>
        </div>
      )}
      <TableForm
        key={`${kind.header} ${owner ?? ""} ${Object.values(now.start).join()}`}
        id={`new-${kind.header}`}
        keys={keys}
        start={start}
        verb={`Add the ${name}`}
        about={`${together[kind.header] ?? ""} What is left empty is left out; it can be entered later.`.trim()}
        onSubmit={(values) => addPart(kind, owner, values)}
        onCancel={() => (adding.value = null)}
      />
    </aside>
  );
}

/** What follows is the part itself, where it stands on the sheet by then. */
export const focusProperties = () => void setTimeout(() => document.getElementById("part-shown")?.focus());

/** The id of the only part there is to refer to; empty where there is none or a choice. */
function only(parts: readonly { kind: string; id: string }[], kind: string): string {
  const all = parts.filter((p) => p.kind === kind);
  return all.length === 1 ? (all[0]?.id ?? "") : "";
}
