import { useEffect, useMemo } from "preact/hooks";
import { clockText, ticksOf, tickText } from "../../draw/clock";
import { lastEvent } from "../../draw/curve_trace";
import { marksOf } from "../../draw/tracks";
import { sheetKeys } from "../../state/keys";
import { letterKeys } from "../../state/look";
import { playing, seek, setStage, speed, speeds, step, time, toggle } from "../../state/player";
import { Seg } from "../parts/Seg";
import { useWidth } from "./width";
import { sidesOf, type PlaySide, type PlayView } from "./view";

const icons = {
  previous: "M4 3V13M13 3L6 8L13 13Z",
  next: "M12 3V13M3 3L10 8L3 13Z",
  play: "M4 2.5L13 8L4 13.5Z",
  pause: "M4.5 3V13M11.5 3V13",
};

const Icon = ({ name }: { name: keyof typeof icons }) => (
  <svg viewBox="0 0 16 16" aria-hidden="true" class={name}>
    <path d={icons[name]} />
  </svg>
);

/** What takes the Space key for itself. */
const pressable = "button, a, input, select, textarea, summary, dialog, [contenteditable], [tabindex]:not(main)";

/** Space plays, unless what has the focus is pressed with it. */
function onSpace(event: KeyboardEvent) {
  const target = event.target instanceof Element ? event.target : null;
  const scrub = target instanceof HTMLInputElement && target.type === "range";
  if (event.key !== " " || event.ctrlKey || event.altKey || event.metaKey || !letterKeys.value) return;
  if (target?.closest(pressable) && !scrub) return;
  event.preventDefault();
  toggle();
}

function useKeys() {
  useEffect(() => {
    sheetKeys.set(",", () => step(-1));
    sheetKeys.set(".", () => step(1));
    addEventListener("keydown", onSpace);
    return () => {
      sheetKeys.delete(",");
      sheetKeys.delete(".");
      removeEventListener("keydown", onSpace);
    };
  }, []);
}

/** Steps of the scrub along the scale. */
const scrubSteps = 1000;

/** `of`: what is played, as the scrub is called. */
export function Player({ view, of }: { view: PlayView; of: string }) {
  useKeys();
  useEffect(() => setStage({ ...view.clock, marks: view.marks }), [view]);
  useEffect(() => () => setStage(null), []);
  return (
    <section class="timeline" aria-label="Player">
      <div class="ctl">
        <button
          type="button"
          class="btn ico"
          aria-label="Previous event"
          title="Previous event (,)"
          onClick={() => step(-1)}
        >
          <Icon name="previous" />
        </button>
        <button type="button" class="btn go play-btn" onClick={toggle} title="Space">
          <Icon name={playing.value ? "pause" : "play"} />
          {playing.value ? "Pause" : "Play"}
        </button>
        <button type="button" class="btn ico" aria-label="Next event" title="Next event (.)" onClick={() => step(1)}>
          <Icon name="next" />
        </button>
        <Clock />
        <Now view={view} />
        <Seg
          label="Speed"
          value={speed.value}
          onChange={(s) => (speed.value = s)}
          options={speeds.map((value) => ({ value, text: `${value}×` }))}
        />
      </div>
      <Scrub view={view} of={of} />
      <Tracks view={view} />
    </section>
  );
}

const Clock = () => (
  <span class="clock" role="timer" aria-live="off">
    {clockText(time.value)}
  </span>
);

/** What happened last, for each choice where they differ. */
function Now({ view }: { view: PlayView }) {
  const said = sidesOf(view).map((s) => lastEvent(s.trace, time.value)?.what ?? "");
  const [a, b] = said;
  return <span class="now">{b === undefined || a === b ? a : `A: ${a}. B: ${b}`}</span>;
}

function Scrub({ view, of }: { view: PlayView; of: string }) {
  const place = view.clock.placeOf(time.value);
  return (
    <input
      type="range"
      min="0"
      max={scrubSteps}
      step="1"
      aria-label={`Time in the ${of}`}
      aria-valuetext={clockText(time.value)}
      value={Math.round(place * scrubSteps)}
      onInput={(e) => seek(view.clock.timeOf(Number(e.currentTarget.value) / scrubSteps))}
    />
  );
}

const left = 8;

/** The events of each choice along the scale of the scrub. */
function Tracks({ view }: { view: PlayView }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const sides = sidesOf(view);
  const foot = 18 + 24 * sides.length;
  const x = (t: number) => left + view.clock.placeOf(t) * (width - 2 * left);
  return (
    <div ref={box} class="tracks">
      {width > 0 && (
        <svg class="chart" width={width} height={foot + 6} aria-hidden="true">
          {sides.map((side, i) => (
            <Track side={side} view={view} width={width} y={14 + 24 * i} />
          ))}
          {ticksOf(view.clock, 48 / width).map((t) => (
            <text x={x(t)} y={foot + 2} text-anchor={t === 0 ? "start" : x(t) > width - 30 ? "end" : "middle"}>
              {tickText(t)}
            </text>
          ))}
          <TrackHead x={x} height={foot - 12} />
        </svg>
      )}
    </div>
  );
}

const TrackHead = ({ x, height }: { x: (t: number) => number; height: number }) => (
  <path class="playhead" d={`M${x(time.value)} 2V${height}`} />
);

function Track({ side, view, width, y }: { side: PlaySide; view: PlayView; width: number; y: number }) {
  const marks = useMemo(() => marksOf(side.trace, view.clock, left, width - left), [side, view, width]);
  const now = time.value;
  return (
    <g class={`track ${side.letter}`}>
      <path d={`M${left} ${y}H${width - left}`} class="rail" />
      {marks.map((m) => {
        const past = m.time <= now ? "past" : "";
        const words = m.events.map((e) => `${clockText(e.time_s)}: ${e.what}`).join("\n");
        return (
          <g class={`event ${past}`} onClick={() => seek(m.time)}>
            <title>{words}</title>
            {side.letter === "A" ? (
              <rect x={m.x - 5} y={y - 5} width="10" height="10" />
            ) : (
              <circle cx={m.x} cy={y} r="5.5" />
            )}
            {m.events.length > 1 && (
              <text x={m.x} y={y + 3.5} text-anchor="middle" class="count">
                {m.events.length}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
