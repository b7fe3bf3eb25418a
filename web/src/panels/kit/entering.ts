import { api, Refused } from "../../api/client";
import { sentence } from "../../draw/words";
import { alive, recordsRead } from "../../state/station";
import { toast } from "../../state/toast";
import type { Duty } from "./documents";
import { recordRows, subjectsOf, type Typed } from "./rows";

/** Writes a test of one or of several parts, as one step; resolves to why not, or null when it is on the disk. */
export async function recordTest(duties: readonly Duty[], typed: Typed): Promise<string | null> {
  const made = recordRows(duties, typed);
  if (!made) return "These records do not hold this; enter it in the site file.";
  try {
    await api.enterRecords(made.kind, made.rows);
    ++recordsRead.value;
    toast(`Recorded${subjectsOf(duties) ? ` for ${subjectsOf(duties)}` : ""}. Take back the last entry undoes it.`);
    return null;
  } catch (error) {
    if (error instanceof Refused) return `${sentence(error.message)} ${sentence(error.hint)}`.trim();
    alive.value = false;
    return "The server does not answer; nothing was stored.";
  }
}
