import type { DrawingAnswer, ErrorAnswer, Want } from "../../../api/types";
import { amount, digits, figure, unitOf, withUnit, withUnitOr } from "../../../draw/numbers";
import { capital, sentence } from "../../../draw/words";
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
import { asCalledHere, useLast, type Told } from "../answer";
import { Requirements } from "../Requirements";
import { asked, roomOf } from "../state";
import { vaporParts } from "../values/shown";
import { ViewValues } from "../values/ViewValues";
import type { ProductCare, ProductVapor, VaporDocument } from "./documents";

const entered = () => (asked.temperature.value ? { temperature: asked.temperature.value } : {});

/** A mass in a month. */
const mass = (si: number | null) => (si === null ? "not determined" : `${digits(si, si < 10 ? 2 : 0)}\u00A0kg`);

export function Vapor() {
  const now = useStanding<Told<VaporDocument>>(() => ({ wants: [{ study: "vapor", units: units.value, ...entered() }] }));
  const { document, problem } = useLast(now.answers?.[0]);
  const none = document && document.result.products.length === 0;
  return (
    <>
      <Head title="Tank" about="What leaves as vapor, what rules and tests ask, and what happens to the fuel.">
        <UndoButtons />
      </Head>
      <Refusal error={now.error} old={document !== null} />
      {problem && <Note tone="bad">{problem}</Note>}
      {!document && !problem && <div class="skel-box" aria-hidden="true" />}
      {none && (
        <div class="empty">
          <EmptyArt />
          <h2>No product is entered</h2>
          <p>With products, tanks and what is sold in a month this view tells what is lost as vapor.</p>
        </div>
      )}
      {document && !none && <Known document={document} />}
    </>
  );
}

function Known({ document }: { document: VaporDocument }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const room = roomOf(width / (width < 760 ? 1 : 2) - 32);
  const want = (drawing: string): Want => ({ drawing, width: room, units: units.value, ...entered() });
  const drawn = useStanding<DrawingAnswer | ErrorAnswer>(
    () => (width > 0 ? { wants: [want("vapor-pressure"), want("static-test")] } : null),
    `${width > 0} ${room}`,
  );
  const [pressure, test] = drawn.answers ?? [];
  const { products, product_care: care } = document.result;
  return (
    <div class="split">
      <div class="col" ref={box}>
        <div class="halves even">
          <div>
            <h2>True vapor pressure against temperature</h2>
            <Drawing answer={pressure} age={drawn.age} label="True vapor pressure against temperature" />
          </div>
          <div>
            <h2>Static pressure test: least pressure after five minutes</h2>
            <Drawing answer={test} age={drawn.age} label="Target of the static pressure test against ullage" />
          </div>
        </div>
        {products.map((p) => (
          <Losses product={p} key={p.product} />
        ))}
        <Requirements findings={document.findings} />
        <Care care={care} />
        <p class="txt cautions">{document.cautions.join(" ")}</p>
      </div>
      <Panel document={document} />
    </div>
  );
}

function Losses({ product }: { product: ProductVapor }) {
  if (!product.losses.length) return null;
  return (
    <section class="part" aria-label={`Vapor of ${product.product}`}>
      <h2>
        {capital(product.product)}, lost in a month: {mass(product.lost_kg_per_month)}
      </h2>
      <Wide label={`Vapor of ${product.product}, table`}>
        <table class="tbl losses">
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col" class="l">By</th>
              <th scope="col">g in a liter</th>
              <th scope="col">In a month</th>
              <th scope="col" class="l">Standing</th>
              <th scope="col" class="l">Counts here</th>
            </tr>
          </thead>
          <tbody>
            {product.losses.map((loss) => (
              <tr key={loss.where + loss.by}>
                <th scope="row">{capital(loss.where)}</th>
                <td class="l">
                  {loss.by}
                  {loss.missing && <small>{asCalledHere(loss.missing)}</small>}
                </td>
                <td>{loss.mass_per_volume_kg_per_m3 === null ? "–" : digits(loss.mass_per_volume_kg_per_m3, 3)}</td>
                <td>{loss.mass_per_month_kg === null ? "–" : mass(loss.mass_per_month_kg)}</td>
                <td class="l">{loss.status}</td>
                <td class="l">{loss.here === null ? "not determined" : loss.here ? "yes" : "no"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </section>
  );
}

/** What happens to the fuel in the tank, and to the tank by the fuel. */
function Care({ care }: { care: ProductCare }) {
  const system = units.value;
  return (
    <section class="part" aria-label="Product care">
      <h2>Product care</h2>
      <ul class="statuslist">
        {care.water.map((w) => (
          <li key={`water ${w.tank}`}>
            <b>{w.tank}</b>, {w.product}: {sentence(w.words)}
          </li>
        ))}
        {care.stock.map((s) => (
          <li key={`stock ${s.tank} ${s.compartment}`}>
            <b>{s.tank}</b>: {sentence(s.words)}
            {s.change_m3 !== null ? ` Change ${amount(system, s.change_m3)} ${unitOf("volume", system)}.` : ""}
          </li>
        ))}
        {care.tanks.map((t) => (
          <li key={`material ${t.tank}`}>
            <b>{t.tank}</b>, {t.product}: {sentence(t.words)}
          </li>
        ))}
      </ul>
      {care.materials.length > 0 && (
        <details>
          <summary>Materials and ethanol fuels, by published guidance</summary>
          <Wide label="Materials, table">
            <table class="tbl words">
              <thead>
                <tr>
                  <th scope="col">Material</th>
                  <th scope="col" class="l">With E85</th>
                  <th scope="col" class="l">Source</th>
                </tr>
              </thead>
              <tbody>
                {care.materials.map((m) => (
                  <tr key={m.material}>
                    <th scope="row">{capital(m.material)}</th>
                    <td class="l">{m.with_e85}</td>
                    <td class="l">{m.source}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Wide>
        </details>
      )}
    </section>
  );
}

function Panel({ document }: { document: VaporDocument }) {
  const system = units.value;
  const { gasoline_throughput_m3_per_month: sold, tier, gasoline_nozzles, products, tests } = document.result;
  return (
    <aside class="insp" aria-label="Vapor">
      <div class="top one">
        <div>
          <p class="over">Stop 11 of 11</p>
          <h2>Vapor</h2>
        </div>
      </div>
      <ViewValues of={vaporParts(station.value?.parts ?? [])} />
      <h3 class="grp">Asked with</h3>
      <Ask
        label="Temperature of the fuels"
        value={asked.temperature.value}
        placeholder="as entered"
        onCommit={(t) => (asked.temperature.value = withUnitOr(t, system === "us" ? "degF" : "degC"))}
      />
      <h3 class="grp">The station</h3>
      <dl class="reads">
        <dt>Gasoline in a month</dt>
        <dd>{sold === null ? "not entered" : `${figure("volume", system, sold, 0)}\u00A0${unitOf("volume", system)}`}</dd>
        <dt>Tier of 40 CFR 63 CCCCCC</dt>
        <dd>{tier ?? "not determined"}</dd>
        <dt>Gasoline nozzles</dt>
        <dd>{gasoline_nozzles}</dd>
      </dl>
      {editable.value && !station.value?.parts.some((p) => p.kind === "operations") && (
        <p class="txt">
          <button type="button" class="link edit" onClick={() => addOnSite("operations")}>
            Enter what is sold on the Site sheet
          </button>
        </p>
      )}
      {products.map((p) => (
        <>
          <h3 class="grp">{capital(p.product)}</h3>
          <dl class="reads">
            <dt>Temperature</dt>
            <dd>{p.temperature_k === null ? "not entered" : withUnit("temperature", system, p.temperature_k)}</dd>
            <dt>True vapor pressure, absolute</dt>
            <dd>
              {p.true_vapor_pressure_absolute_pa === null
                ? "not determined"
                : withUnit("pressure", system, p.true_vapor_pressure_absolute_pa, 2)}
            </dd>
            <dt>Lost in a month</dt>
            <dd>{mass(p.lost_kg_per_month)}</dd>
            <dt>with stage I</dt>
            <dd>{mass(p.with_stage_one_kg_per_month)}</dd>
            <dt>without stage I</dt>
            <dd>{mass(p.without_stage_one_kg_per_month)}</dd>
          </dl>
        </>
      ))}
      {tests.length > 0 && (
        <>
          <h3 class="grp">Static pressure test</h3>
          <dl class="reads">
            {tests.map((t) => (
              <>
                <dt>{t.tank}, least after five minutes</dt>
                <dd>{t.target_gauge_pa === null ? "not determined" : `${digits(t.target_gauge_pa, 0)}\u00A0Pa`}</dd>
              </>
            ))}
          </dl>
        </>
      )}
    </aside>
  );
}
