import { useState } from "preact/hooks";
import { api } from "../../api/client";
import { save } from "../../api/save";
import { units } from "../../state/look";
import { station } from "../../state/station";
import { toast } from "../../state/toast";

export interface HandoverFile {
  name: string;
  text: string;
  title: string;
  /** Where the text alone does not say what is saved. */
  label?: string;
}

/** A button for each file that is handed over: it is made anew and saved. */
export function HandoverFiles(props: { files: readonly HandoverFile[] }) {
  const [busy, setBusy] = useState("");
  const get = async (name: string) => {
    setBusy(name);
    try {
      const stem = (station.value?.file ?? "station").replace(/\.toml$/, "");
      save(await api.handover(name, units.value), `${stem}-${name}`);
      toast(`Saved ${stem}-${name}.`);
    } catch (error) {
      toast(error instanceof Error ? error.message : String(error));
    }
    setBusy("");
  };
  return (
    <span class="downloads">
      {props.files.map(({ name, text, title, label }) => (
        <button
          type="button"
          class="btn"
          key={name}
          title={title}
          aria-label={label}
          disabled={busy === name}
          onClick={() => void get(name)}
        >
          {text}
        </button>
      ))}
    </span>
  );
}
