import { unitOf, withUnit } from "../../draw/numbers";
import { sentence } from "../../draw/words";
import { sheet, units } from "../../state/look";
import { StatusShape } from "../parts/status";
import { curveOf } from "./curve";
import type { Sump } from "./documents";
import { inflowWords, shapeOf, spanWords, wordOf } from "./rows";

function Filling({ sump, said }: { sump: Sump; said: string }) {
  const curve = curveOf(sump, units.value);
  if (!curve) return null;
  return (
    <>
      <h3 class="grp">Filling at {said}</h3>
      <svg class="chart fillcurve" viewBox={`0 0 ${curve.width} ${curve.height}`} role="img" aria-label={curve.summary}>
        <text x="0" y="10">
          Volume, {unitOf("volume", units.value)}
        </text>
        {curve.up.map((t) => (
          <g key={t.text}>
            <path d={`M${curve.left} ${t.y}H${curve.width - 14}`} class="grid" />
            <text x={curve.left - 6} y={t.y + 4} text-anchor="end">
              {t.text}
            </text>
          </g>
        ))}
        {curve.across.map((t) => (
          <text key={t.text} x={t.x} y={curve.foot + 14} text-anchor="middle">
            {t.text}
          </text>
        ))}
        <text x={curve.width - 14} y={curve.foot + 28} text-anchor="end">
          height above the floor, {unitOf("bore", units.value)}
        </text>
        <path d={curve.path} class="fillline" />
        {curve.marks.map((m) => (
          <g key={m.text}>
            <circle cx={m.x} cy={m.y} r="4" class="fillmark" />
            <text x={m.textX} y={m.textY} text-anchor={m.anchor} class="i halo">
              {m.text}
            </text>
          </g>
        ))}
      </svg>
    </>
  );
}

/** The same sump at the usual inflows. */
function OtherInflows({ sump }: { sump: Sump }) {
  const others = sump.fills.slice(1);
  if (others.length === 0 || sump.points.length === 0) return null;
  return (
    <>
      <h3 class="grp">At other inflows</h3>
      <div>
        <table class="tbl">
          <thead>
            <tr>
              <th scope="col">Inflow</th>
              <th scope="col">Sensor wet</th>
              <th scope="col">Lowest seal</th>
              <th scope="col">Brim</th>
            </tr>
          </thead>
          <tbody>
            {others.map((fill) => (
              <tr key={fill.inflow_m3_per_s}>
                <th scope="row">{inflowWords(fill.inflow_m3_per_s, units.value)}</th>
                <td>{spanWords(fill.to_sensor_s)}</td>
                <td>{spanWords(fill.to_lowest_seal_s)}</td>
                <td>{spanWords(fill.to_brim_s)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

/** The chosen sump: whether it is counted on and why not, how it fills, and what was entered. */
export function SumpPanel({ sump, said }: { sump: Sump; said: string }) {
  const shown = (what: "bore" | "volume", si: number | null) =>
    si === null ? "not entered" : withUnit(what, units.value, si);
  const reasons = sump.problem ? [sump.problem] : sump.reasons;
  return (
    <aside class="insp" aria-label="Chosen sump">
      <div class="top one">
        <div>
          <h3>Stop 6 of 11</h3>
          <h2>{sump.of === "tank" ? `On tank ${sump.owner}` : `Under ${sump.owner}`}</h2>
        </div>
      </div>
      <div class={`note ${sump.holds === "assured" ? "ok" : sump.holds === "not assured" ? "bad" : "info"}`}>
        <StatusShape state={shapeOf[sump.holds]} />
        <div>
          <b>{wordOf[sump.holds]}.</b> {sump.holds === "assured" && "All that it takes to be counted on was entered."}
          {reasons.map((reason) => ` ${sentence(reason)}`)}
        </div>
      </div>
      <Filling sump={sump} said={said} />
      <OtherInflows sump={sump} />
      <h3 class="grp">Reads now</h3>
      <dl class="reads">
        <dt>Depth</dt>
        <dd>{shown("bore", sump.depth_m)}</dd>
        <dt>Sensor above the floor</dt>
        <dd>{shown("bore", sump.sensor_height_m)}</dd>
        <dt>Lowest seal above the floor</dt>
        <dd>{shown("bore", sump.lowest_seal_m)}</dd>
        <dt>Holds to the sensor</dt>
        <dd>{shown("volume", sump.at_sensor_m3)}</dd>
        <dt>Holds to the lowest seal</dt>
        <dd>{shown("volume", sump.at_lowest_seal_m3)}</dd>
        <dt>Holds to the brim</dt>
        <dd>{sump.brim_m3 === null ? "not determined" : withUnit("volume", units.value, sump.brim_m3)}</dd>
      </dl>
      <p class="txt">
        <button type="button" class="link edit" onClick={() => (sheet.value = "site")}>
          Enter or change its values on the Site sheet
        </button>
      </p>
    </aside>
  );
}
