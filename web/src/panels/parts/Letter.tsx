/** The mark of a choice: A square, B round. */
export const Letter = (props: { of: "A" | "B"; small?: boolean }) => (
  <span class={`letter ${props.of}${props.small ? " small" : ""}`}>{props.of}</span>
);
