import { useEffect, useMemo } from "preact/hooks";
import { clockText, ticksOf, tickText } from "../../draw/clock";
import { courseText } from "../../draw/course_values";
import { capital, sentence } from "../../draw/words";
import { lastWords, sceneValue, sceneValues, stageOf, type Stage } from "../../state/lesson/replay";
import { act, perform, shared, shownIn } from "../../state/lesson/session";
import type { ReplayTold, SceneTold } from "../../state/lesson/told";
import { play, playing, seek, setStage, time } from "../../state/player";
import { Picture, PictureWords } from "./Picture";

/** A part of one station twice: failing, and working. */
export function Replay({ replay, picture }: { replay: ReplayTold; picture: string }) {
  const stage = useMemo(() => stageOf(replay), [replay]);
  useEffect(() => {
    setStage({ ...stage, marks: stage.events });
    time.value = 0;
    if (!matchMedia("(prefers-reduced-motion: reduce)").matches) play();
    return () => setStage(null);
  }, [stage]);
  return (
    <div class="les-replay">
      {replay.caution && <p class="les-caution">{sentence(replay.caution)}</p>}
      <header class="les-title">
        <h1>{replay.title}</h1>
        {replay.at && <p class="les-where">at {replay.at}</p>}
      </header>
      <RestsOn scenes={replay.scenes} />
      <div class="les-scenes">
        {replay.scenes.map((scene, i) => (
          <Scene key={scene.name} scene={scene} picture={picture} id={`scene-${i}`} />
        ))}
      </div>
      <PlayBar stage={stage} />
    </div>
  );
}

/** What neither the file nor a source gives, of both scenes: the first, and how many more. */
function RestsOn({ scenes }: { scenes: SceneTold[] }) {
  const [first, ...more] = new Set(scenes.flatMap((scene) => scene.rests_on));
  if (first === undefined) return null;
  return (
    <p class="les-rests">
      Rests on: {first}
      {more.length > 0 && ` (and ${more.length} more)`}
    </p>
  );
}

function Scene({ scene, picture, id }: { scene: SceneTold; picture: string; id: string }) {
  const at = time.value;
  return (
    <section class={scene.works ? "les-scene works" : "les-scene"} aria-label={scene.name}>
      <h2>{capital(scene.name)}</h2>
      <div class="les-drawn">
        <Picture picture={picture} values={sceneValues(scene, at)} id={id} />
        <PictureWords picture={picture} values={sceneValues(scene, at)} />
      </div>
      <p class="happens">{sentence(lastWords(scene, at))}</p>
      <dl>
        <Courses scene={scene} at={at} />
        {scene.told.map((one) => (
          <div key={one.label}>
            <dt>{one.label}</dt>
            <dd>{shownIn(one) ?? (one.quantity === "time" ? "never" : "not determined")}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** A scene has room for so many rows; courses at the playhead take what results leave, one at least. */
const mostRows = 4;
const mostCourses = 2;

function Courses({ scene, at }: { scene: SceneTold; at: number }) {
  const room = Math.min(mostCourses, Math.max(1, mostRows - scene.told.length));
  const rows = scene.courses.slice(0, room).map((c) => ({
    label: c.label,
    text: courseText(c.quantity, shared.value.units, sceneValue(scene, c.values, at)),
  }));
  return (
    <>
      {rows.map(
        (row) =>
          row.text !== null && (
            <div class="now" key={row.label}>
              <dt>{row.label}</dt>
              <dd>{row.text}</dd>
            </div>
          ),
      )}
    </>
  );
}

/** Steps of the scrub along the scale. */
const steps = 1000;

function PlayBar({ stage }: { stage: Stage }) {
  const at = time.value;
  const player = (action: "toggle" | "previous" | "next") => () => perform({ of: "player", action });
  const percent = (t: number) => `${100 * stage.placeOf(t)}%`;
  return (
    <div class="les-player" role="group" aria-label="Player">
      <button type="button" class="btn" title="," onClick={player("previous")}>
        Event back
      </button>
      <button type="button" class="btn go play-btn" title="Space" onClick={player("toggle")}>
        {playing.value ? "Pause" : "Play"}
      </button>
      <button type="button" class="btn" title="." onClick={player("next")}>
        Event on
      </button>
      <span class="clock" role="timer" aria-live="off">
        {clockText(at)}
      </span>
      <div class="scale">
        <input
          type="range"
          min="0"
          max={steps}
          aria-label="Time in the replay"
          aria-valuetext={clockText(at)}
          value={Math.round(stage.placeOf(at) * steps)}
          onInput={(e) => seek(stage.timeOf(Number(e.currentTarget.value) / steps))}
        />
        <div class="ticks" aria-hidden="true">
          {stage.events.map((t) => (
            <i key={t} style={{ left: percent(t) }} />
          ))}
          {ticksOf(stage, 0.12).map((t) => (
            <span key={t} style={{ left: percent(t) }}>
              {tickText(t)}
            </span>
          ))}
        </div>
      </div>
      <button type="button" class="btn" onClick={() => act({ do: "close" })}>
        Back to the page
      </button>
    </div>
  );
}
