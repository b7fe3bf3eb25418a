import { sentence } from "../../../draw/words";
import { unitOf, valueIn } from "../../../draw/numbers";
import { useStanding } from "../../../state/ask";
import { product, units } from "../../../state/look";
import { editable, station } from "../../../state/station";
import { useWidth } from "../../replay/width";
import { EmptyArt } from "../../parts/EmptyArt";
import { Note, Refusal } from "../../parts/Note";
import type { Finding } from "../../parts/finding";
import { addOnSite } from "../../site/adding";
import { Head, UndoButtons } from "../../shell/Shell";
import { isKnown, type KnownTank, type Tank, type TankDocument, type TankPlace } from "../documents";
import { useLast, type Told } from "../answer";
import { Requirements } from "../Requirements";
import { chosenTank, depth, rate, stickAt } from "../state";
import { Curve } from "./Curve";
import { Figures, TankTop } from "./Figures";
import { Sections } from "./Sections";
import { Settings } from "./Settings";

type Answer = Told<TankDocument>;

const ratedAt = () => (rate.value ? { rate: rate.value } : {});

/** The tank that is shown: the chosen one, else the first of the product. */
function shownOf(tanks: readonly Tank[]): Tank | undefined {
  return tanks.find((t) => t.id === chosenTank.value && t.product === product.value) ?? tanks.find((t) => t.product === product.value) ?? tanks[0];
}

function NoTank() {
  return (
    <div class="empty">
      <EmptyArt />
      <h2>No tank is entered</h2>
      <p>With a tank's sizes this view draws it to scale and says what is in it, what can be ordered and where overfill devices belong.</p>
      {editable.value && (
        <button type="button" class="btn go edit" onClick={() => addOnSite("tank")}>
          Add a tank on the Site sheet
        </button>
      )}
    </div>
  );
}

/** Volume, dips and settings of a tank; a depth line that can be dragged. */
export function Depth() {
  const plain = useStanding<Answer>(() => ({ wants: [{ study: "tank", units: units.value, ...ratedAt() }] }));
  const first = useLast(plain.answers?.[0]);
  const tanks = first.document?.result.tanks ?? [];
  const one = shownOf(tanks);
  const stick = one?.places.find((p) => p.what === stickAt.value) ?? one?.places[0];
  const [id, at] = [one?.id ?? "", stick?.what ?? ""];
  const asked = useStanding<Answer>(
    () =>
      id && at && depth.value
        ? { wants: [{ study: "tank", tank: id, depth: depth.value, at: placeWord(at), units: units.value, ...ratedAt() }] }
        : null,
    `${id} ${at}`,
  );
  const second = useLast(depth.value ? asked.answers?.[0] : undefined);
  const told = depth.value ? second.document?.result.tanks.find((t) => t.id === id) : undefined;
  const tank = told ?? one;
  return (
    <>
      <Head title="Tank" about={tank ? aboutOf(tank) : ""}>
        <UndoButtons />
      </Head>
      <p class="caution">
        <b>First:</b> never empty a tank in wet ground without an engineer's word. Figures advise; the equipment's listing
        and local code decide.
      </p>
      <Refusal error={plain.error} old={first.document !== null} />
      {!first.document && !first.problem && <div class="skel-box" aria-hidden="true" />}
      {first.problem && !rate.value && <Note tone="bad">{first.problem}</Note>}
      {first.document && !tank && <NoTank />}
      {tank && !isKnown(tank) && <Unknown tank={tank} tanks={tanks} />}
      {tank && isKnown(tank) && (
        <Known
          tank={tank}
          tanks={tanks}
          stick={tank.places.find((p) => p.what === at) ?? stick}
          findings={(first.document?.findings ?? []).filter((f) => f.subject.includes(id))}
          problem={second.problem}
          refused={rate.value ? first.problem : null}
        />
      )}
    </>
  );
}

const aboutOf = (tank: Tank) =>
  `${tank.id}${tank.product ? `, ${tank.product}` : ""}.${tank.problem ? "" : " Drag the line, use the arrow keys, or type a depth."}`;

/** A tank that cannot be drawn: what is missing, and where to enter it. */
function Unknown({ tank, tanks }: { tank: Tank; tanks: readonly Tank[] }) {
  return (
    <div class="split">
      <div class="col">
        <div class="empty">
          <EmptyArt />
          <h2>Tank {tank.id} cannot be drawn yet</h2>
          <p>{sentence(tank.problem ?? "its sizes are not entered")}</p>
          <p>With them this view says what is in it, what can be ordered and where overfill devices belong.</p>
        </div>
      </div>
      <aside class="insp" aria-label={`Tank ${tank.id}`}>
        <TankTop tank={tank} tanks={tanks} open />
      </aside>
    </div>
  );
}

interface KnownProps {
  tank: KnownTank;
  tanks: readonly Tank[];
  stick: TankPlace | undefined;
  findings: readonly Finding[];
  /** Of the depth asked for, and of the rate. */
  problem: string | null;
  refused: string | null;
}

function Known({ tank, tanks, stick, findings, problem, refused }: KnownProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const [half, curveWidth] = useWidth<HTMLDivElement>();
  const tone = station.value?.products.find((p) => p.id === tank.product)?.tone ?? "";
  return (
    <div class="split">
      <div class="col" ref={box}>
        {stick && (
          <Sections tank={tank} tone={tone} width={width} stick={stick} level={tank.now?.level_m ?? null} onDepth={setDepth} />
        )}
        <div class="halves">
          <div>
            <h2>
              Volume against depth at the {tank.chart.place.replaceAll(", ", " and ")} <span class="n">{unitOf("volume", units.value)}</span>
            </h2>
            <div ref={half}>
              <Curve tank={tank} stick={stick} width={curveWidth} />
            </div>
          </div>
          <Settings tank={tank} />
        </div>
        <Requirements findings={findings} />
      </div>
      <Figures tank={tank} tanks={tanks} stick={stick} problem={problem} refused={refused} />
    </div>
  );
}

/** A depth as the engine reads it. */
function setDepth(si: number) {
  const text = valueIn("bore", units.value, si).toFixed(3);
  depth.value = `${Number(text)} ${unitOf("bore", units.value)}`;
}

/** "fill" of "fill F1": as the engine takes it. */
const placeWord = (what: string) => what.split(/[ ,]/)[0] ?? what;
