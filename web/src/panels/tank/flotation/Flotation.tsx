import type { ComponentChildren } from "preact";
import type { DrawingAnswer, ErrorAnswer, Want } from "../../../api/types";
import { amount, digits, figure, unitOf, withUnit, withUnitOr } from "../../../draw/numbers";
import { sentence } from "../../../draw/words";
import { useStanding } from "../../../state/ask";
import { units } from "../../../state/look";
import { editable, station } from "../../../state/station";
import { Ask } from "../../containment/Ask";
import { useWidth } from "../../replay/width";
import { Drawing } from "../../parts/Drawing";
import { EmptyArt } from "../../parts/EmptyArt";
import { Note, Refusal } from "../../parts/Note";
import { Wide } from "../../parts/Wide";
import { addOnSite } from "../../site/adding";
import { Head, UndoButtons } from "../../shell/Shell";
import { useLast, type Told } from "../answer";
import { Requirements } from "../Requirements";
import { asked, roomOf } from "../state";
import { flotationParts } from "../values/shown";
import { ViewValues } from "../values/ViewValues";
import type { FlotationDocument, FlotationState, TankFlotation } from "./documents";

const entered = () => {
  const { waterLevel, filled, factor } = asked;
  return {
    ...(waterLevel.value ? { water_level: waterLevel.value } : {}),
    ...(filled.value ? { filled: filled.value } : {}),
    ...(factor.value ? { factor: factor.value } : {}),
  };
};

const shownOf = (tanks: readonly TankFlotation[]) => tanks.find((t) => t.tank === asked.flotationTank.value) ?? tanks[0];

export function Flotation() {
  const now = useStanding<Told<FlotationDocument>>(() => ({
    wants: [{ study: "flotation", units: units.value, ...entered() }],
  }));
  const { document, problem } = useLast(now.answers?.[0]);
  const tank = shownOf(document?.result.tanks ?? []);
  return (
    <>
      <Head title="Tank" about={tank ? `${tank.tank} against the ground water.` : ""}>
        <UndoButtons />
      </Head>
      <p class="caution">
        <b>Never empty a tank in wet ground without an engineer's word.</b> What holds it down is a licensed engineer's to
        judge; these figures take ground and water as entered.
      </p>
      <Refusal error={now.error} old={document !== null} />
      {problem && <Note tone="bad">{problem}</Note>}
      {!document && !problem && <div class="skel-box" aria-hidden="true" />}
      {document && !tank && <Nothing />}
      {document && tank && <Known document={document} tank={tank} />}
    </>
  );
}

function Nothing() {
  const tanks = flotationParts(station.value?.parts ?? [], "");
  return (
    <div class="split">
      <div class="col">
        <div class="empty">
          <EmptyArt />
          <h2>{tanks.length ? "No tank has its weight and cover entered" : "No tank is entered"}</h2>
          <p>
            With its empty mass, cover, slab and backfill this view says whether an empty tank floats, at which level of
            the ground water, and what ballast it takes.
          </p>
          {editable.value && tanks.length === 0 && (
            <button type="button" class="btn go edit" onClick={() => addOnSite("tank")}>
              Add a tank on the Site sheet
            </button>
          )}
        </div>
      </div>
      {tanks.length > 0 && (
        <aside class="insp" aria-label="Flotation">
          <div class="top one">
            <div>
              <p class="over">Stop 3 of 11</p>
              <h2>Flotation</h2>
            </div>
          </div>
          <ViewValues of={tanks} open />
        </aside>
      )}
    </div>
  );
}

function Known({ document, tank }: { document: FlotationDocument; tank: TankFlotation }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const [whole, half] = [roomOf(width - 32), roomOf(width / (width < 760 ? 1 : 2) - 32)];
  const want = (drawing: string, room: number): Want => ({
    drawing,
    tank: tank.tank,
    width: room,
    units: units.value,
    ...entered(),
  });
  const drawn = useStanding<DrawingAnswer | ErrorAnswer>(
    () =>
      width > 0
        ? { wants: [want("flotation", whole), want("factor-by-water", half), want("factor-by-fill", half)] }
        : null,
    `${tank.tank} ${width > 0} ${whole} ${half}`,
  );
  const [section, byWater, byFill] = drawn.answers ?? [];
  const state = tank.empty ?? tank.water_at_grade;
  return (
    <div class="split">
      <div class="col" ref={box}>
        {tank.problems.map((p) => (
          <Note tone="warn" key={p}>
            {sentence(p)}
          </Note>
        ))}
        <div class="part">
          <Drawing answer={section} age={drawn.age} label="Tank, slab and ground water, to scale" />
        </div>
        <div class="halves even">
          <div>
            <h2>Factor against the level of the ground water</h2>
            <Drawing answer={byWater} age={drawn.age} label="Factor against the level of the ground water" />
          </div>
          {tank.by_fill && tank.by_fill.length > 0 && (
            <div>
              <h2>Factor against what is in the tank</h2>
              <Drawing answer={byFill} age={drawn.age} label="Factor against what is in the tank" />
            </div>
          )}
        </div>
        {state && <Balance state={state} />}
        <Requirements findings={document.findings.filter((f) => f.subject.includes(tank.tank))} />
        <section class="part" aria-label="Taken for granted">
          <h2>Taken for granted</h2>
          <ul class="cautions">
            {[...tank.assumed, ...tank.left_out, ...document.cautions].map((words) => (
              <li key={words}>{sentence(words)}</li>
            ))}
          </ul>
        </section>
      </div>
      <Panel document={document} tank={tank} />
    </div>
  );
}

const below = (si: number | null | undefined, none: string) =>
  si === null || si === undefined ? none : `${withUnit("length", units.value, si)} below grade`;

function Balance({ state }: { state: FlotationState }) {
  const system = units.value;
  const force = (si: number) => figure("force", system, si);
  return (
    <section class="part" aria-label="Balance of forces">
      <h2>
        Balance of forces <span class="n">{unitOf("force", system)}, water {below(state.water_level_m, "")}</span>
      </h2>
      <Wide label="Balance of forces, table">
        <table class="tbl">
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">Weight in air</th>
              <th scope="col">Submerged weight</th>
            </tr>
          </thead>
          <tbody>
            {state.bodies.map((b) => (
              <tr key={b.part}>
                <th scope="row">{sentence(b.part).replace(/\.$/, "")}</th>
                <td>{force(b.weight_n)}</td>
                <td>{force(b.submerged_weight_n)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row">Lifts</th>
              <td>{force(state.buoyant_force_n)}</td>
              <td>–</td>
            </tr>
            <tr>
              <th scope="row">
                <b>Holds down</b>
              </th>
              <td>
                <b>{force(state.hold_down_force_n)}</b>
              </td>
              <td>–</td>
            </tr>
          </tbody>
        </table>
      </Wide>
    </section>
  );
}

function Factors({ state, title }: { state: FlotationState; title: ComponentChildren }) {
  const factor = (f: number | null) => (f === null ? "not determined" : digits(f, 2));
  return (
    <>
      <h3 class="grp">{title}</h3>
      <dl class="reads">
        {[state.hold_down, state.total, state.submerged].map((f) => (
          <>
            <dt>
              <small>{sentence(f.definition)}</small>
            </dt>
            <dd>{factor(f.factor)}</dd>
          </>
        ))}
      </dl>
    </>
  );
}

function Panel({ document, tank }: { document: FlotationDocument; tank: TankFlotation }) {
  const system = units.value;
  const volume = (si: number | null | undefined) =>
    si === null || si === undefined ? "not determined" : `${amount(system, si)}\u00A0${unitOf("volume", system)}`;
  const tanks = document.result.tanks;
  const known = station.value !== null;
  return (
    <aside class="insp" aria-label={`Flotation of ${tank.tank}`}>
      <div class="top one">
        <div>
          <p class="over">Stop 3 of 11</p>
          <h2>Tank {tank.tank}</h2>
        </div>
      </div>
      {tanks.length > 1 && (
        <p class="txt">
          <label>
            Show{" "}
            <select class="btn" value={tank.tank} onChange={(e) => (asked.flotationTank.value = e.currentTarget.value)}>
              {tanks.map((t) => (
                <option key={t.tank} value={t.tank}>
                  {t.tank}
                </option>
              ))}
            </select>
          </label>
        </p>
      )}
      <ViewValues of={flotationParts(station.value?.parts ?? [], tank.tank)} />
      <h3 class="grp">Asked with</h3>
      {known && (
        <>
          <Ask
            label="Water below grade"
            value={asked.waterLevel.value}
            placeholder={tank.water_level_m === null ? "not entered" : withUnit("length", system, tank.water_level_m)}
            onCommit={(t) => (asked.waterLevel.value = withUnitOr(t, unitOf("length", system)))}
          />
          <Ask
            label="In the tank"
            value={asked.filled.value}
            placeholder="empty"
            onCommit={(t) => (asked.filled.value = withUnitOr(t, unitOf("volume", system)))}
          />
          <Ask
            label="Factor wanted"
            value={asked.factor.value}
            placeholder={tank.factor_wanted === null ? "none" : digits(tank.factor_wanted, 2)}
            onCommit={(t) => (asked.factor.value = t.trim())}
          />
        </>
      )}
      {tank.empty && <Factors state={tank.empty} title="Empty, at this level" />}
      {tank.filled && <Factors state={tank.filled} title={`With ${volume(tank.filled.filled_m3)} in it`} />}
      {tank.water_at_grade && <Factors state={tank.water_at_grade} title="Empty, water at grade" />}
      <h3 class="grp">Levels and ballast</h3>
      <dl class="reads">
        <dt>Finished and empty, it lifts with water at</dt>
        <dd>{tank.problems.length ? "not determined" : below(tank.lifts_at_m, "at no level up to grade")}</dd>
        <dt>Empty in the open hole, it lifts with water at</dt>
        <dd>{tank.open_hole ? below(tank.open_hole.lifts_at_m, "at no level up to grade") : "not determined"}</dd>
        {tank.open_hole?.ballast_m3 !== undefined && (
          <>
            <dt>Ballast in the open hole</dt>
            <dd>{volume(tank.open_hole.ballast_m3)}</dd>
          </>
        )}
        {tank.empty?.missing_contents_m3 !== undefined && tank.factor_wanted !== null && (
          <>
            <dt>In the tank for the factor wanted</dt>
            <dd>{tank.empty?.missing_contents_m3 === 0 ? "none" : volume(tank.empty?.missing_contents_m3)}</dd>
          </>
        )}
      </dl>
    </aside>
  );
}
