import type { Part } from "../../../api/types";
import { unquoted } from "../../../state/entry";

/** One of the seven kinds. */
export interface Kind {
  id: string;
  name: string;
  about: string;
  /** Kinds of parts at which it happens. */
  places: readonly string[];
  /** What can be asked of it beside the place. */
  asks: readonly Ask[];
}
export type Ask = "open" | "stop_at" | "for" | "open_area";

const usual: readonly Ask[] = ["open", "stop_at", "for"];
const opening: readonly Ask[] = ["open_area", ...usual];

export const kinds: readonly Kind[] = [
  {
    id: "struck",
    name: "Dispenser struck",
    about: "A vehicle breaks the dispenser off at its shear grooves",
    places: ["dispenser", "inlet"],
    asks: usual,
  },
  {
    id: "drive-off",
    name: "Drive-off",
    about: "A vehicle drives off with the nozzle in its tank",
    places: ["hose", "dispenser"],
    asks: usual,
  },
  {
    id: "sump-fire",
    name: "Sump fire",
    about: "A leak under a dispenser burns",
    places: ["dispenser", "inlet"],
    asks: opening,
  },
  {
    id: "crack",
    name: "Crack",
    about: "A leak that nobody sees at once",
    places: ["line", "dispenser", "inlet"],
    asks: opening,
  },
  { id: "line-break", name: "Line break", about: "The line is cut", places: ["line"], asks: opening },
  { id: "overfill", name: "Overfill", about: "A drop that the tank has no room for", places: ["tank"], asks: ["for"] },
  {
    id: "nozzle-left-open",
    name: "Nozzle left open",
    about: "A nozzle that does not shut",
    places: ["hose", "dispenser"],
    asks: usual,
  },
];

/** A kind as it can be picked: as the file's own entry says, or as such. */
export interface Entry {
  key: string;
  kind: Kind;
  /** What the file says, by key, as typed; null: the file has no entry of this kind. */
  said: Record<string, string> | null;
}

function saidBy(part: Part): Record<string, string> {
  const out: Record<string, string> = {};
  for (const field of part.fields) if (field.text !== null) out[field.key] = unquoted(field.text);
  return out;
}

/** The seven kinds; one that the file has entries for stands there once for each. */
export function entriesOf(parts: readonly Part[]): Entry[] {
  const own = parts.filter((p) => p.kind === "incident").map(saidBy);
  return kinds.flatMap((kind): Entry[] => {
    const told = own.filter((said) => said["kind"] === kind.id);
    if (!told.length) return [{ key: kind.id, kind, said: null }];
    return told.map((said, i) => ({ key: `${kind.id} ${said["id"] ?? i}`, kind, said }));
  });
}

export interface Place {
  id: string;
  kind: string;
}

/** Ids of the parts at which a kind can happen, each once. */
export function placesOf(kind: Kind, parts: readonly Part[]): Place[] {
  const seen = new Set<string>();
  return kind.places.flatMap((place) =>
    parts
      .filter((p) => p.kind === place && !seen.has(p.id) && seen.add(p.id))
      .map((p) => ({ id: p.id, kind: place })),
  );
}
