/** Generic parts and pipes of the shelf, from the same files as the program's own. */
import partsText from "../../../shelf/parts.toml?raw";
import pipesText from "../../../shelf/pipes.toml?raw";
import { blocksOf } from "./entry-blocks";

interface OnShelf {
  id: string;
  /** "nozzle"; of a pipe its construction. */
  kind: string;
  /** "illustrative", "published" or "common practice". */
  status: string;
}

const wordIn = (body: string, key: string) => new RegExp(`^${key}\\s*=\\s*"([^"]*)"`, "m").exec(body)?.[1] ?? "";

function shelfOf(text: string, kindKey: string): OnShelf[] {
  return blocksOf(text).map((b) => {
    const body = text.slice(b.begin, b.end);
    return { id: wordIn(body, "id"), kind: wordIn(body, kindKey), status: wordIn(body, "status") };
  });
}

const parts = shelfOf(partsText, "kind");
const pipes = shelfOf(pipesText, "construction");

/** What the shelf has for a key; empty where a value is never one of the shelf. */
export function shelfFor(kind: string, key: string): OnShelf[] {
  const last = key.split(".").at(-1) ?? key;
  if (last === "nominal") return pipes;
  return kind === "part" ? parts.filter((p) => p.kind === last) : [];
}
