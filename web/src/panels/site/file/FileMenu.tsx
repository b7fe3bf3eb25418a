import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { api } from "../../../api/client";
import { editable, newSite, openSite, saveAs, station } from "../../../state/station";
import { toast } from "../../../state/toast";
import { useReturnFocus } from "../focus";
import { Menu } from "../Menu";

type Asked = "open" | "new" | "save-as" | "text";
/** The dialog that is open; null: none is. */
export const asked = signal<Asked | null>(null);

export function FileMenu() {
  const can = editable.value;
  const show = (what: Asked) => ({ onChoose: () => (asked.value = what) });
  return (
    <Menu
      class="edit"
      name="File"
      items={[
        { text: "Open a station of this folder", ...show("open"), disabled: !can },
        { text: "New station", ...show("new"), disabled: !can },
        { text: "Save under another name", ...show("save-as"), disabled: !can },
        { text: "Text of the file", ...show("text"), apart: true },
        { text: "Export the file", onChoose: exportFile, apart: true },
        { text: "Copy the text", onChoose: () => void copyText() },
      ]}
    />
  );
}

function exportFile() {
  const s = station.value;
  if (!s) return;
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([s.text], { type: "application/toml" }));
  link.download = s.file;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

async function copyText() {
  try {
    await navigator.clipboard.writeText(station.value?.text ?? "");
    toast("The text of the file is copied.");
  } catch {
    toast("The browser did not let it be copied. Open the text of the file and copy it there.");
  }
}

interface Sites {
  names: string[];
  templates: { id: string; text: string }[];
}

/** The dialogs of the menu. */
export function FileDialog() {
  const [sites, setSites] = useState<Sites | null>(null);
  const what = asked.value;
  useEffect(() => {
    if (what === "open" || what === "new" || what === "save-as") {
      api.sites().then(setSites, () => setSites({ names: [], templates: [] }));
    }
  }, [what]);
  if (what === "open") return <Open sites={sites} />;
  if (what === "new") return <Named sites={sites} fresh />;
  if (what === "save-as") return <Named sites={sites} />;
  return null;
}

const close = () => (asked.value = null);

export function Dialog(props: { title: string; class?: string; children: ComponentChildren }) {
  useReturnFocus();
  return (
    <dialog
      class={`file ${props.class ?? ""}`}
      aria-label={props.title}
      ref={(d) => {
        if (d && !d.open) d.showModal();
      }}
      onClose={close}
    >
      <h2>{props.title}</h2>
      {props.children}
    </dialog>
  );
}

function Open(props: { sites: Sites | null }) {
  const now = station.value?.file;
  const open = async (name: string) => {
    if (await openSite(name)) toast(`${name} is open.`);
    close();
  };
  return (
    <Dialog title="Open a station">
      {!props.sites && <p class="dim">Reading the folder.</p>}
      <ul class="names">
        {props.sites?.names.map((name) => (
          <li key={name}>
            <button type="button" disabled={name === now} onClick={() => void open(name)}>
              {name}
              {name === now && <span class="faint"> open now</span>}
            </button>
          </li>
        ))}
      </ul>
      <div class="formfoot">
        <button type="button" class="btn" onClick={close}>
          Close
        </button>
      </div>
    </Dialog>
  );
}

const withEnding = (name: string) => (name.trim().endsWith(".toml") ? name.trim() : `${name.trim()}.toml`);

/** Why a name cannot be taken; null: it can. */
function nameProblem(typed: string, taken: readonly string[]): string | null {
  const name = withEnding(typed);
  if (!typed.trim()) return "Type a name.";
  if (/[/\\]/.test(name)) return "A name has no slashes; it stands in the folder of the open station.";
  if (name.startsWith(".")) return "A name does not begin with a dot.";
  if (new TextEncoder().encode(name).length > 100) return "A name has at most 100 characters.";
  return taken.includes(name) ? `${name} is there already. Take another name.` : null;
}

/** What a template says of itself in its first line. */
const begins = (text: string) => /^#\s*(.*)/.exec(text)?.[1] ?? "Nothing in it yet.";

/** A name, and for a new station what it begins with. */
function Named(props: { sites: Sites | null; fresh?: boolean }) {
  const [name, setName] = useState("");
  const [template, setTemplate] = useState("");
  const [told, setTold] = useState(false);
  const templates = props.sites?.templates ?? [];
  const chosen = template || templates[0]?.id || "empty";
  const problem = nameProblem(name, props.sites?.names ?? []);
  const shown = told ? problem : null;
  const go = async () => {
    setTold(true);
    if (problem) return;
    const file = withEnding(name);
    if (!(await (props.fresh ? newSite(file, chosen) : saveAs(file)))) return;
    toast(props.fresh ? `${file} is new and open.` : `Saved as ${file}, which is open now.`);
    close();
  };
  return (
    <Dialog title={props.fresh ? "New station" : "Save under another name"}>
      <form
        noValidate
        onSubmit={(e) => {
          e.preventDefault();
          void go();
        }}
      >
        <div class="field">
          <label for="file-name">Name of the file</label>
          <span class={`in${shown ? " bad" : ""}`}>
            <input
              id="file-name"
              value={name}
              autocomplete="off"
              autofocus
              aria-invalid={shown !== null}
              aria-describedby="file-says"
              onInput={(e) => setName(e.currentTarget.value)}
            />
          </span>
          <span class={`hint${shown ? " bad" : ""}`} id="file-says" role={shown ? "alert" : undefined}>
            {shown ?? "In the folder of the open station; .toml is added."}
          </span>
        </div>
        {props.fresh && (
          <fieldset class="templates">
            <legend>Begin with</legend>
            {templates.map((t) => (
              <label class="check" key={t.id}>
                <input type="radio" name="template" checked={t.id === chosen} onChange={() => setTemplate(t.id)} />
                <span>
                  {t.id.replaceAll("-", " ")}
                  <small>{begins(t.text)}</small>
                </span>
              </label>
            ))}
          </fieldset>
        )}
        <div class="formfoot">
          <button type="submit" class="btn go">
            {props.fresh ? "Make the station" : "Save"}
          </button>
          <button type="button" class="btn" onClick={close}>
            Cancel
          </button>
        </div>
      </form>
    </Dialog>
  );
}
