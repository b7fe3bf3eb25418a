import { narrow, station } from "../../../state/station";
import { hoses } from "../../../state/hoses";
import { ask, asked, entries, entry, pick, place } from "../answer/choice";
import { byArrows } from "../../parts/arrows";
import { Entry } from "./Entry";
import { placesOf, type Ask, type Entry as Listed } from "../answer/kinds";

/** The seven kinds, and the station's own entries in their place. */
export function Pick() {
  const now = entry.value;
  const all = entries.value;
  const move = byArrows(all.map((e) => e.key), now?.key ?? "", pick);
  return (
    <div class="pick" role="radiogroup" aria-label="Incident" onKeyDown={move}>
      {all.map((e) => (
        <button
          type="button"
          role="radio"
          key={e.key}
          aria-checked={e.key === now?.key}
          tabIndex={e.key === now?.key ? 0 : -1}
          onClick={() => pick(e.key)}
        >
          <b>{e.kind.name}</b>
          <span>{about(e)}</span>
        </button>
      ))}
    </div>
  );
}

function about(e: Listed): string {
  if (!e.said) return e.kind.about;
  const { id, at } = e.said;
  return `In the station's file${id ? ` as ${id}` : ""}${at ? `, at ${at}` : ""}`;
}

/** A value of the file as it is typed there, told in a line. */
export const said = (text: string | undefined) => {
  const range = /likely\s*=\s*"([^"]*)"/.exec(text ?? "");
  const low = /low\s*=\s*"([^"]*)"/.exec(text ?? "")?.[1];
  const high = /high\s*=\s*"([^"]*)"/.exec(text ?? "")?.[1];
  return range ? `${low ?? "?"} to ${high ?? "?"}` : (text ?? "");
};

const words: Record<Exclude<Ask, "open">, { label: string; key: string; none: string; hint: string }> = {
  stop_at: {
    label: "Pumps stopped after",
    key: "stop_at",
    none: "nobody",
    hint: "From the incident on, as 60 s or 2 min. Empty: as the file says, else nobody stops them.",
  },
  for: {
    label: "Counted for",
    key: "counts_until",
    none: "as is usual",
    hint: "As 10 min or 30 d. Empty: as the file says, else as is usual for the kind.",
  },
  open_area: {
    label: "Opening",
    key: "open_area",
    none: "as 0.02 in2",
    hint: "The area through which fuel escapes, as 0.02 in2 or 13 mm2. Empty: as the file says.",
  },
};

/** Where it happens and what is asked of it. On a phone in words. */
export function Setup() {
  const e = entry.value;
  if (!e) return null;
  if (narrow.value) return <SetupWords />;
  const places = placesOf(e.kind, station.value?.parts ?? []);
  return (
    <>
      <SetupWords onPaper />
      <div class="setup">
        <label class="entry">
          <span>At</span>
          <select class="btn" value={place.value} onChange={(x) => ask({ at: x.currentTarget.value })}>
            {e.kind.places.map((kind) => (
              <optgroup label={kind}>
                {places
                  .filter((p) => p.kind === kind)
                  .map((p) => (
                    <option value={p.id} key={p.id}>
                      {p.id}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        </label>
        {e.kind.asks.map((what) =>
          what === "open" ? (
            <OpenHoses file={e.said?.["open"]} />
          ) : (
            <Entry
              key={`${e.key} ${what}`}
              label={words[what].label}
              value={asked.value[what]}
              placeholder={said(e.said?.[words[what].key]) || words[what].none}
              hint={words[what].hint}
              onCommit={(text) => ask({ [what]: text })}
            />
          ),
        )}
      </div>
    </>
  );
}

const listOf = (text: string | undefined) => [...(text ?? "").matchAll(/"([^"]*)"/g)].map((m) => m[1] ?? "");

function OpenHoses({ file }: { file: string | undefined }) {
  const open = asked.value.open ?? listOf(file);
  const all = hoses.value;
  const toggle = (id: string) => {
    ask({ open: open.includes(id) ? open.filter((h) => h !== id) : [...open, id] });
  };
  return (
    <details class="entry hoses-open">
      <summary>
        <span>Hoses open elsewhere</span>
        <span class="btn">{open.length ? open.join(", ") : "none"}</span>
      </summary>
      <div class="pop" role="group" aria-label="Hoses open elsewhere">
        {all.map((h) => (
          <label key={h.path}>
            <input type="checkbox" checked={open.includes(h.id)} onChange={() => toggle(h.id)} />
            {h.id}
          </label>
        ))}
        {asked.value.open && (
          <button type="button" class="btn" onClick={() => ask({ open: null })}>
            As the file says
          </button>
        )}
      </div>
    </details>
  );
}

function SetupWords(props: { onPaper?: boolean }) {
  const e = entry.value;
  if (!e) return null;
  const a = asked.value;
  const one = (what: Exclude<Ask, "open">) => {
    const text = a[what] || said(e.said?.[words[what].key]);
    return e.kind.asks.includes(what) && text ? [`${words[what].label.toLowerCase()} ${text}`] : [];
  };
  const open = a.open ?? listOf(e.said?.["open"]);
  const parts = [
    `At ${place.value}`,
    ...one("stop_at"),
    ...one("for"),
    ...one("open_area"),
    ...(open.length ? [`hoses open elsewhere: ${open.join(", ")}`] : []),
  ];
  return <p class={`setup-words${props.onPaper ? " on-paper" : ""}`}>{parts.join("; ")}.</p>;
}
