import { useMemo } from "preact/hooks";
import { clockText } from "../../draw/clock";
import { listed } from "../../draw/tracks";
import { seek, time } from "../../state/player";
import type { PlayView } from "./view";

/** What happens, in order; each line is also a way to its moment. */
export function Events({ view }: { view: PlayView }) {
  const all = useMemo(() => listed(view.a.trace, view.b?.trace ?? null), [view]);
  const now = time.value;
  return (
    <div>
      <h2>Events</h2>
      <ol class="evlog">
        {all.map(({ who, event }) => (
          <li class={event.time_s <= now ? "past" : ""}>
            <button type="button" onClick={() => seek(event.time_s)}>
              <span class="t">{clockText(event.time_s)}</span>
              {view.b ? <Who who={who} /> : <span />}
              <span>
                {event.what}
                {event.of && !event.what.includes(event.of) ? <i class="of"> {event.of}</i> : null}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </div>
  );
}

function Who({ who }: { who: "A" | "B" | "both" }) {
  if (who !== "both") return <span class={`who-ab ${who}`}>{who}</span>;
  return (
    <span class="who-ab X">
      <span aria-hidden="true">–</span>
      <span class="vh">A and B</span>
    </span>
  );
}
