/** Words as they are shown. Nothing here knows of the page. */

/** With a capital at the beginning. */
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** As a sentence of its own; nothing stays nothing. */
export const sentence = (text: string) => (text === "" || /[.?]$/.test(text) ? capital(text) : `${capital(text)}.`);

/** "1 hose", "2 hoses" */
export const count = (n: number, what: string) => `${n} ${what}${n === 1 ? "" : "s"}`;
