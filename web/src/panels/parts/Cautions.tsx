/** What an answer leaves out, and who decides. */
export function Cautions(props: { of: readonly string[] | undefined }) {
  if (!props.of?.length) return null;
  return (
    <ul class="cautions">
      {props.of.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
