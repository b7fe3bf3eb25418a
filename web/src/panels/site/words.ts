/** With a capital at the beginning. */
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** As a sentence: with a capital and a full stop. */
export function sentence(text: string): string {
  const begun = capital(text);
  return begun === "" || /[.?]$/.test(begun) ? begun : `${begun}.`;
}
