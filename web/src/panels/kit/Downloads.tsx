import { useState } from "preact/hooks";
import { api } from "../../api/client";
import { save } from "../../api/save";
import { units } from "../../state/look";
import { station } from "../../state/station";
import { toast } from "../../state/toast";

const files = [
  { name: "kit.xlsx", text: "Kit as XLSX", title: "Schedule, order, pipe and spares, with an empty column for your part numbers" },
  { name: "kit.csv", text: "CSV", title: "The schedule as comma-separated values" },
  { name: "calendar.ics", text: "Calendar for a phone", title: "What falls due, as a calendar file (iCalendar); taken in again, it updates" },
] as const;

/** Saves the schedule as a table and the calendar as a file. */
export function Downloads() {
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
      {files.map(({ name, text, title }) => (
        <button type="button" class="btn" key={name} title={title} disabled={busy === name} onClick={() => void get(name)}>
          {text}
        </button>
      ))}
    </span>
  );
}
