/** With a capital at the beginning. */
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** As a sentence: with a capital and a full stop. */
export function sentence(text: string): string {
  const begun = capital(text);
  return begun === "" || /[.?]$/.test(begun) ? begun : `${begun}.`;
}

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
