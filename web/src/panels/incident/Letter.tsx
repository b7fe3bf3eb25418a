/** The mark of a choice: A square, B round. */
export const Letter = ({ letter, small }: { letter: "A" | "B"; small?: boolean }) => (
  <span class={`letter ${letter}${small ? " small" : ""}`}>{letter}</span>
);
