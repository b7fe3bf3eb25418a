export type State = "meets" | "close" | "falls short" | "not determined" | "does not apply";
export const stateWords: Record<State, string> = {
  meets: "Meets",
  close: "Close",
  "falls short": "Falls short",
  "not determined": "Not determined",
  "does not apply": "Does not apply",
};
const tones: Record<State, string> = {
  meets: "ok",
  close: "warn",
  "falls short": "bad",
  "not determined": "none",
  "does not apply": "none",
};
export const toneOf = (state: State) => tones[state];

/** Disc with tick, triangle, octagon with cross, dashed ring, short bar: a shape to each state. */
export function StatusShape(props: { state: State; size?: number }) {
  const size = props.size ?? 14;
  return (
    <svg class={`st ${tones[props.state]}`} viewBox="0 0 16 16" width={size} height={size} aria-hidden="true">
      {props.state === "meets" && (
        <>
          <circle cx="8" cy="8" r="7" class="fill" />
          <path d="M4.6 8.2l2.4 2.4 4.4-5" class="cut" />
        </>
      )}
      {props.state === "close" && (
        <>
          <path d="M8 1.2L15.4 14.4H.6Z" class="fill" />
          <path d="M8 6v4M8 11.4v1.4" class="cut" />
        </>
      )}
      {props.state === "falls short" && (
        <>
          <path d="M5 1h6l4 4v6l-4 4H5l-4-4V5Z" class="fill" />
          <path d="M5.4 5.4l5.2 5.2M10.6 5.4l-5.2 5.2" class="cut" />
        </>
      )}
      {props.state === "not determined" && <circle cx="8" cy="8" r="6.2" class="ring" />}
      {props.state === "does not apply" && <path d="M3 8h10" class="bar" />}
    </svg>
  );
}
