import type { ComponentChildren, FunctionComponent } from "preact";
import { useStanding } from "../../state/ask";
import { keepFlow } from "../../state/hoses";
import { keyListOpen } from "../../state/keys";
import {
  letterKeys, practiceColors, product, select, selection, setProduct, setUnits, setView, sheet, sheets, theme, units,
  viewOf, viewsOf, type SheetId,
} from "../../state/look";
import { alive, editable, narrow, recordsRead, redo, saving, station, undo } from "../../state/station";
import { toastText } from "../../state/toast";
import { hasKey } from "../../api/client";
import { partAt } from "../../api/station";
import type { Diagnostic } from "../../api/types";
import { addedBy, addWords, startAdding } from "../site/adding";
import { Note } from "../parts/Note";
import { Seg } from "../parts/Seg";
import { StatusShape } from "../parts/status";

function Mark() {
  return (
    <span class="mark">
      <svg viewBox="0 0 42 30" fill="none" stroke="currentColor" aria-hidden="true">
        <path d="M0 10H10M14 10H30M34 10H42" stroke-width="2.4" />
        <path class="mark-line" d="M12 2V22a4 4 0 0 0 4 4H28a4 4 0 0 0 4-4V2" stroke-width="3.4" />
        <path class="mark-line" d="M28 6l4-4 4 4" stroke-width="2.4" />
      </svg>
    </span>
  );
}

interface Findings {
  document?: { findings: { state: string }[] };
}

/** How many findings fall short or are close; opens the checks. */
function FindingsCount() {
  const now = useStanding<Findings>(() => ({
    after: recordsRead.value,
    wants: [{ study: "findings", ...(keepFlow.value ? { keep: keepFlow.value } : {}) }],
  }));
  const findings = now.answers?.[0]?.document?.findings;
  if (!findings) return null;
  const count = (state: string) => findings.filter((f) => f.state === state).length;
  const [short, close] = [count("falls short"), count("close")];
  return (
    <button type="button" class="btn quiet counts hide-s" onClick={() => (sheet.value = "checks")} title="Open the checks">
      {short > 0 && (
        <span class="chip">
          <StatusShape state="falls short" /> {short} {short === 1 ? "falls" : "fall"} short
        </span>
      )}
      {close > 0 && (
        <span class="chip">
          <StatusShape state="close" /> {close} close
        </span>
      )}
      {short + close === 0 && <span class="chip">{findings.length ? "no finding falls short" : "no findings"}</span>}
    </button>
  );
}

function TitleBar() {
  const s = station.value;
  return (
    <header class="bar">
      <Mark />
      <div class="who">
        <b>{s?.name || s?.file || "forecourse"}</b>
        <span>
          {s ? s.file : "opening"}
          {saving.value ? ", saving" : ""}
        </span>
      </div>
      <span class="sp" />
      <FindingsCount />
      <div class="ctlset">
        {s && s.products.length > 1 && (
          <Seg
            label="Product"
            class="hide-s"
            value={product.value}
            onChange={setProduct}
            options={s.products.map((p) => ({
              value: p.id,
              text: (
                <>
                  <i class={`sw ${p.tone}`} />
                  {p.id}
                </>
              ),
            }))}
          />
        )}
        <Seg
          label="Units"
          value={units.value}
          onChange={setUnits}
          options={[
            { value: "us", text: "US" },
            { value: "si", text: "SI" },
          ]}
        />
        <button
          type="button"
          class="btn hide-s hide-m"
          aria-pressed={practiceColors.value}
          title="Colors by API RP 1637; those of gasoline grades and diesel are from memory, not verified"
          onClick={() => (practiceColors.value = !practiceColors.value)}
        >
          API RP 1637
        </button>
        <button type="button" class="btn" onClick={() => (theme.value = theme.value === "dark" ? "light" : "dark")}>
          {theme.value === "dark" ? "Light" : "Dark"}
        </button>
      </div>
    </header>
  );
}

function Index() {
  return (
    <nav class="nav" aria-label="Sheets">
      {sheets.map((s) => (
        <a
          key={s.id}
          href={`?sheet=${s.id}`}
          aria-current={sheet.value === s.id ? "page" : undefined}
          onClick={(e) => {
            e.preventDefault();
            sheet.value = s.id;
          }}
        >
          <i>{s.key}</i>
          {s.name}
        </a>
      ))}
      <span class="gap" />
      <button type="button" class="btn quiet hide-s" onClick={() => (keyListOpen.value = true)}>
        <span class="kbd">?</span> Keys
      </button>
    </nav>
  );
}

/** Undo and redo, for the head of a sheet that changes data. */
export function UndoButtons() {
  const s = station.value;
  if (!editable.value) return null;
  return (
    <>
      <button type="button" class="btn ico edit" disabled={!s?.undo} title={s?.undo ? `Undo: ${s.undo}` : "Nothing to undo"} aria-label="Undo" onClick={undo}>
        <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M6 3L2.5 6.5L6 10M3 6.5H10a3.5 3.5 0 0 1 0 7H7" /></svg>
      </button>
      <button type="button" class="btn ico edit" disabled={!s?.redo} title={s?.redo ? `Do again: ${s.redo}` : "Nothing to do again"} aria-label="Do again" onClick={redo}>
        <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M10 3L13.5 6.5L10 10M13 6.5H6a3.5 3.5 0 0 0 0 7H9" /></svg>
      </button>
    </>
  );
}

/** Head of a sheet: its name, a line about what it shows, and what can be done. */
/** The views of a sheet, beside its title. */
function Views(props: { of: SheetId }) {
  const views = viewsOf[props.of];
  if (!views) return null;
  return (
    <Seg
      label="View"
      class="views-of"
      value={viewOf(props.of)}
      onChange={(view) => setView(props.of, view)}
      options={views.map((v) => ({ value: v.id, text: v.name }))}
    />
  );
}

export function Head(props: { title: string; about: ComponentChildren; children?: ComponentChildren }) {
  return (
    <div class="head">
      <h1>{props.title}</h1>
      <Views of={sheet.value} />
      <p>{props.about}</p>
      <span class="sp" />
      {props.children}
    </div>
  );
}

const keyList: [string, string][] = [
  ["1 2 3 4 5 6 7 8 9 0", "open a sheet"],
  ["w", "the lesson"],
  ["v", "next view of the sheet; with Shift the one before"],
  ["[ ]", "stop of the course, back and on"],
  ["Arrows", "move the focused part on the plan; Shift: five steps"],
  ["Enter", "select"],
  ["Space", "play or pause an incident or a delivery"],
  [", .", "event back and on"],
  ["u", "units"],
  ["Ctrl+Z", "undo; with Shift: do again"],
  ["?", "this list"],
];

function KeyList() {
  if (!keyListOpen.value) return null;
  const close = () => (keyListOpen.value = false);
  return (
    <dialog
      class="keys"
      aria-label="Keys"
      ref={(d) => {
        if (d && !d.open) d.showModal();
      }}
      onClose={close}
    >
      <h2>Keys</h2>
      <dl>
        {keyList.map(([k, what]) => (
          <>
            <dt>
              {k.split(" ").map((one) => (
                <span class="kbd">{one}</span>
              ))}
            </dt>
            <dd>{what}</dd>
          </>
        ))}
      </dl>
      <label class="check">
        <input
          type="checkbox"
          checked={letterKeys.value}
          onChange={(e) => (letterKeys.value = e.currentTarget.checked)}
        />
        Keys without Ctrl are on
      </label>
      <form method="dialog">
        <button class="btn go">Close</button>
      </form>
    </dialog>
  );
}

/** What is wrong in the file, and the way to mend it where there is one. */
function Mend(props: { told: Diagnostic }) {
  const d = props.told;
  const toAdd = editable.value ? addedBy(d.hint) : null;
  const part = partAt(station.value?.parts ?? [], d.path);
  const show = () => {
    if (part) select(part.stop ?? selection.value.stop, part.path);
    sheet.value = "site";
  };
  const add = () => {
    sheet.value = "site";
    if (toAdd) startAdding(toAdd.header, null, toAdd.start);
  };
  return (
    <li>
      Line {d.line}: <bdi>{d.message}</bdi>
      {d.hint && !toAdd ? `; ${d.hint}` : ""}.{" "}
      {toAdd && (
        <button type="button" class="link" onClick={add}>
          {addWords(toAdd.header, toAdd.start)}
        </button>
      )}
      {!toAdd && part && (
        <button type="button" class="link" onClick={show}>
          Show {part.id}
        </button>
      )}
    </li>
  );
}

function Notes() {
  const s = station.value;
  const errors = s?.diagnostics.filter((d) => d.severity === "error") ?? [];
  return (
    <>
      {!alive.value && (
        <Note tone="bad" role="status">
          The server does not answer. What you see is from before; a retry is made each second.
        </Note>
      )}
      {s && !hasKey && (
        <Note tone="info">To read only. To edit, open the address that the program printed.</Note>
      )}
      {s && hasKey && narrow.value && (
        <Note tone="info">To read only on a narrow screen. Edit on a wider one.</Note>
      )}
      {errors.length > 0 && (
        <div class="note bad" role="status">
          <StatusShape state="falls short" />
          <div>
            <b>{errors.length === 1 ? "One thing in the file must be mended." : `${errors.length} things in the file must be mended.`}</b>
            <ul>
              {errors.slice(0, 4).map((d) => (
                <Mend key={`${d.line}:${d.column}:${d.message}`} told={d} />
              ))}
              {errors.length > 4 && <li>And {errors.length - 4} more; all of them stand below the text of the file.</li>}
            </ul>
          </div>
        </div>
      )}
    </>
  );
}

export function Shell(props: { panels: Record<SheetId, FunctionComponent> }) {
  const Panel = props.panels[sheet.value];
  return (
    <>
      <a class="skip" href="#main">
        Skip to the sheet
      </a>
      <div class="app">
        <TitleBar />
        <div class="grade" aria-hidden="true" />
        <Index />
        <main class="main" id="main" tabIndex={-1}>
          <div class={`sheet ${sheet.value}-sheet`}>
            <Notes />
            {station.value && <Panel key={sheet.value} />}
          </div>
        </main>
      </div>
      <KeyList />
      <div class={`toast ${toastText.value ? "on" : ""}`} role="status">
        {toastText.value}
      </div>
    </>
  );
}
