import { effect, signal } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import { cutaway, cutawayWords, hasCutaway, namedIn } from "../../draw/cutaway/cutaway";
import { shared } from "../../state/lesson/session";

export type Values = Readonly<Record<string, number | null>>;

/** How far dashes run in a second, in units of the drawing. */
const pace = 60;
/** A picture moves from one state to another in this time, ms. */
const moveTime = 420;
const little = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Values that something runs by. */
const running = ["flow", "escape", "vapor", "vent", "in", "out", "leak", "through", "space", "runs"];
const runs = (values: Values) => running.some((name) => Math.abs(values[name] ?? 0) > 0.005);

/** How far all dashes have gone; one for all pictures, so that they run alike. */
const gone = signal(0);
let watchers = 0;

function run(last: number) {
  requestAnimationFrame((now) => {
    if (!watchers) return;
    if (!shared.peek().place.blank) gone.value += (pace * Math.min(100, now - last)) / 1000;
    run(now);
  });
}

/** Lets dashes run while a picture shows something that runs. */
function useDashes(on: boolean) {
  useEffect(() => {
    if (!on || little()) return;
    if (++watchers === 1) run(performance.now());
    return () => void --watchers;
  }, [on]);
}

/** Between two sets of values; what one of them lacks comes at once. */
export function valuesBetween(from: Values, to: Values, share: number): Values {
  const at = (name: string, value: number | null) => {
    const was = from[name];
    return was === null || was === undefined || value === null ? value : was + (value - was) * share;
  };
  return Object.fromEntries(Object.entries(to).map(([name, value]) => [name, at(name, value)]));
}

const eased = (share: number) => 1 - (1 - share) ** 3;

/** The values on their way to new ones; at once on another page, or where little motion is asked for. */
function useMoved(values: Values, of: string, moves: boolean): Values {
  const [at, setAt] = useState(values);
  const last = useRef({ of, at: values });
  last.current.at = at;
  useEffect(() => {
    const from = last.current.at;
    if (last.current.of !== of || !moves || little()) {
      last.current.of = of;
      setAt(values);
      return;
    }
    const start = performance.now();
    let frame = requestAnimationFrame(function next(now) {
      const share = Math.min(1, Math.max(0, (now - start) / moveTime));
      setAt(valuesBetween(from, values, eased(share)));
      if (share < 1) frame = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(frame);
  }, [values, of, moves]);
  return moves && last.current.of === of ? at : values;
}

const known = (values: Values): Record<string, number> =>
  Object.fromEntries(Object.entries(values).filter((one): one is [string, number] => one[1] !== null));

interface Props {
  /** Id of the picture. */
  picture: string;
  values: Values;
  /** Tells it apart from another of the same page. */
  id: string;
  /** New values are moved to; else they are shown at once, as those of a player. */
  moves?: boolean;
}

/** The cutaway of a page in a state. */
export function Picture({ picture, values, id, moves = false }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const at = useMoved(values, picture, moves);
  useDashes(runs(values));
  useEffect(
    () =>
      effect(() => {
        const to = box.current;
        if (to && hasCutaway(picture)) to.innerHTML = cutaway(picture, known(at), { dash: gone.value, id });
      }),
    [picture, at, id],
  );
  if (!hasCutaway(picture)) return <p class="les-no-picture">This page has no picture.</p>;
  return <div class="les-picture" role="img" aria-label={cutawayWords(picture, known(values))} ref={box} />;
}

/** What the picture of a page names, in words that a small picture has no room for. */
export function PictureWords({ picture, values }: { picture: string; values: Values }) {
  if (!hasCutaway(picture)) return null;
  return (
    <ul class="les-named">
      {namedIn(cutaway(picture, known(values))).map(({ name, state }) => (
        <li key={name} class={state ? "" : "bad"}>
          {name} {state && <b>{state}</b>}
        </li>
      ))}
    </ul>
  );
}
