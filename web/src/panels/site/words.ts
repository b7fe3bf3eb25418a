import { capital } from "../../draw/words";

/** "a line", "an inlet". */
export const article = (name: string) => `${/^[aeio]/i.test(name) ? "an" : "a"} ${name}`;

const past: Record<string, string> = {
  add: "Added",
  duplicate: "Duplicated",
  remove: "Removed",
  move: "Moved",
  give: "Gave",
};

/** A step as what was done: "Added line L1" of "add line L1". */
export function done(label: string): string {
  const [verb = "", ...rest] = label.split(" ");
  return [past[verb] ?? capital(verb), ...rest].join(" ");
}

/** Help of a key without the marks around names. */
export const plain = (help: string) => help.replaceAll("`", "");
