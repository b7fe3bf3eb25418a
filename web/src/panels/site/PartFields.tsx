import { signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import type { Field, Part } from "../../api/types";
import { formOf, groupOf, labelOf } from "../../state/entry";
import { listIn } from "../../state/entry-blocks";
import { edit, editable, station } from "../../state/station";
import { toast } from "../../state/toast";
import type { Finding } from "../parts/finding";
import { Absent, NewTable } from "./Absent";
import { FieldRow } from "./entry/FieldRow";
import { ruledOf } from "./Findings";
import { allWords, entered, giveTable, othersLike } from "./giving";

/** A value that is not entered yet and is to be asked for, by its path. */
export const wantedField = signal<string | null>(null);

interface PartFieldsProps {
  part: Part;
  findings: readonly Finding[];
  /** Of its fields, those that are shown, in order; all of them where it is left out. */
  only?: (fields: readonly Field[]) => readonly Field[];
}

/** The values of a part, in groups, and those that could be entered. */
export function PartFields({ part, findings, only = (all) => all }: PartFieldsProps) {
  const [fresh, setFresh] = useState<readonly string[]>([]);
  const wanted = wantedField.value;
  useEffect(() => {
    if (!wanted || !part.fields.some((f) => f.path === wanted)) return;
    wantedField.value = null;
    setFresh((now) => [...now, wanted]);
  }, [wanted, part]);
  const fields = only(part.fields);
  const there = fields.filter((f) => f.text !== null || f.required || fresh.includes(f.path));
  const absent = fields.filter((f) => !there.includes(f));
  const groups = [...new Set(there.map((f) => groupOf(f.key)))];
  const gone = (path: string) => setFresh((now) => now.filter((p) => p !== path));
  return (
    <>
      {groups.map((group) => (
        <section key={group} class="group">
          <GroupHead part={part} group={group} />
          {there
            .filter((f) => groupOf(f.key) === group)
            .map((f) =>
              isTable(f) ? (
                <NewTable key={f.path} field={f} onGone={() => gone(f.path)} />
              ) : (
                <FieldRow
                  key={f.path}
                  field={f}
                  ruled={ruledOf(f, findings)}
                  fresh={fresh.includes(f.path) && f.text === null}
                  onGone={() => gone(f.path)}
                />
              ),
            )}
        </section>
      ))}
      {editable.value && (
        <>
          <MoreOfLists part={part} fields={fields} />
          <Absent fields={absent} part={part} onAdd={(f) => setFresh((now) => [...now, f.path])} />
        </>
      )}
    </>
  );
}

const empty = { text: null, us: null, si: null, line: null, problem: null };

/** Lists of tables that the part has written in brackets, each with the way to add one more to it. */
function MoreOfLists(props: { part: Part; fields: readonly Field[] }) {
  const { part } = props;
  const [open, setOpen] = useState<string | null>(null);
  const s = station.value;
  const lists = (s?.tables[part.kind] ?? []).flatMap((k) => {
    if (formOf(k) !== "list" || !props.fields.some((f) => f.key.startsWith(`${k.key}.`))) return [];
    const text = listIn(s?.text ?? "", part.path, k.key);
    return text ? [{ key: k, text }] : [];
  });
  return (
    <>
      {lists.map(({ key, text }) =>
        open === key.key ? (
          <NewTable
            key={key.key}
            field={{ ...key, ...empty, path: `${part.path}.${key.key}` }}
            list={text}
            onGone={() => setOpen(null)}
          />
        ) : (
          <p key={key.key}>
            <button type="button" class="link" onClick={() => setOpen(key.key)}>
              Add to {labelOf(key.key).toLowerCase()}
            </button>
          </p>
        ),
      )}
    </>
  );
}

const isTable = (f: Field) =>
  f.text === null && (formOf(f) === "table" || formOf(f) === "list" || (f.kind === "pipe" && f.table !== null));

function GroupHead(props: { part: Part; group: string }) {
  const { part, group } = props;
  if (!group) return <h3 class="grp">Set</h3>;
  const name = group.split(".").map(labelOf).join(", ");
  const path = `${part.path}.${group}`;
  const others = othersLike(part).length;
  const all = async () => {
    const problem = await giveTable(group, entered(part, group), part);
    if (problem) toast(problem);
  };
  const remove = () => edit(`remove ${name.toLowerCase()} of ${part.id}`, [{ path, remove: true }]);
  return (
    <h3 class="grp with">
      {name}
      {editable.value && (
        <span>
          {!group.includes(".") && others > 0 && (
            <button type="button" class="link" onClick={() => void all()}>
              Give to {allWords(part)}
            </button>
          )}
          <button type="button" class="link" onClick={() => void remove()}>
            Remove<span class="vh"> {name.toLowerCase()}</span>
          </button>
        </span>
      )}
    </h3>
  );
}
