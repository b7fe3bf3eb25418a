import { amount, figure, siOf, unitOf, withUnit, withUnitOr } from "../../../draw/numbers";
import { clockText } from "../../../draw/clock";
import { sentence } from "../../../draw/words";
import { units } from "../../../state/look";
import { station } from "../../../state/station";
import { Note } from "../../parts/Note";
import { Ask } from "../../containment/Ask";
import type { KnownTank, Tank, TankPlace } from "../documents";
import { chosenTank, depth, rate, stickAt } from "../state";
import { depthParts } from "../values/shown";
import { ViewValues } from "../values/ViewValues";

/** What a stick is read to, in the unit shown. */
const least = { us: 0.125, si: 1 };

interface Props {
  tank: KnownTank;
  tanks: readonly Tank[];
  stick: TankPlace | undefined;
  /** Of the depth asked for, and of the rate. */
  problem: string | null;
  refused: string | null;
}

/** What is in the tank at the depth line. */
export function Figures({ tank, tanks, stick, problem, refused }: Props) {
  const system = units.value;
  const { now } = tank;
  const volume = (si: number | null) => (si === null ? "not determined" : `${amount(system, si)}\u00A0${unitOf("volume", system)}`);
  const here = now && stick ? figure("bore", system, stick.depth_m) : "";
  const rows = tank.chart.rows;
  const near = now ? rows.findIndex((r) => r.volume_m3 >= now.volume_m3) : -1;
  const [above, below] = [rows[near], rows[near - 1]];
  const eighth = above && below ? ((above.volume_m3 - below.volume_m3) / (above.depth_m - below.depth_m)) * siOf("bore", system, least[system]) : null;
  return (
    <aside class="insp" aria-label={`Tank ${tank.id}`}>
      <TankTop tank={tank} tanks={tanks} />
      <h3 class="grp">At the line</h3>
      {stick && (
        <Ask
          label={`Depth at the ${stick.what.replaceAll(", ", " and ")}`}
          value={depth.value}
          placeholder={here ? `${here} ${unitOf("bore", system)}` : "not read"}
          problem={problem}
          onCommit={(text) => (depth.value = /[a-z"]/i.test(text) || text === "" ? text : `${text} ${unitOf("bore", system)}`)}
        />
      )}
      {!now && <Note tone="warn">{sentence(tank.not_read ?? "the level is not known")}</Note>}
      {now && (
        <>
          <p class="cap">{now.by_option ? "As asked for." : "The last reading."}</p>
          <dl class="reads">
            <dt>Volume</dt>
            <dd>{volume(now.volume_m3)}</dd>
            <dt>Full</dt>
            <dd>{figure("share", system, now.share)} %</dd>
            <dt>Ullage</dt>
            <dd>{volume(now.ullage_m3)}</dd>
            {tank.rooms.map((room) => (
              <>
                <dt>Order room to {figure("share", system, room.share, 0)} %</dt>
                <dd>{room.room_m3 !== null && room.room_m3 < 0 ? "none, passed" : volume(room.room_m3)}</dd>
              </>
            ))}
            <dt>Water</dt>
            <dd>{now.water_m3 === null ? "not entered" : volume(now.water_m3)}</dd>
            {eighth !== null && (
              <>
                <dt>{system === "us" ? "1/8 in" : "1 mm"} of depth is</dt>
                <dd>{volume(eighth)}</dd>
              </>
            )}
          </dl>
        </>
      )}
      <h3 class="grp">The tank</h3>
      <Ask
        label="Delivery rate"
        value={rate.value}
        placeholder={
          tank.delivery_rate_m3_per_s === null ? "not entered" : withUnit("flow", system, tank.delivery_rate_m3_per_s, 0)
        }
        problem={refused}
        onCommit={(text) => (rate.value = withUnitOr(text, unitOf("flow", system)))}
      />
      <dl class="reads">
        <dt>Holds</dt>
        <dd>{volume(tank.capacity_m3)}</dd>
        <dt>Pitch</dt>
        <dd>{tank.pitch ? `${figure("share", system, tank.pitch, 2)} %` : "level"}</dd>
        {tank.from_90_to_95_s !== null && tank.delivery_rate_m3_per_s !== null && (
          <>
            <dt>From 90 to 95 % at {withUnit("flow", system, tank.delivery_rate_m3_per_s, 0)}</dt>
            <dd>{clockText(tank.from_90_to_95_s)}</dd>
          </>
        )}
      </dl>
      {tank.places.length > 1 && (
        <>
          <h3 class="grp">Dips</h3>
          <dl class="reads">
            {tank.places.map((p) => (
              <>
                <dt>
                  <button type="button" class="link" onClick={() => (stickAt.value = p.what)}>
                    {p.what.replaceAll(", ", " and ")}
                  </button>
                </dt>
                <dd>{p.depth_m === null ? "–" : withUnit("bore", system, p.depth_m)}</dd>
              </>
            ))}
          </dl>
        </>
      )}
    </aside>
  );
}

/** Which tank it is, another one to be chosen, and its values. */
export function TankTop({ tank, tanks, open = false }: { tank: Tank; tanks: readonly Tank[]; open?: boolean }) {
  return (
    <>
      <div class="top one">
        <div>
          <p class="over">{["Stop 3 of 11", tank.product].filter(Boolean).join(", ")}</p>
          <h2>Tank {tank.id}</h2>
        </div>
      </div>
      {tanks.length > 1 && (
        <p class="txt">
          <label>
            Show{" "}
            <select class="btn" value={tank.id} onChange={(e) => (chosenTank.value = e.currentTarget.value)}>
              {tanks.map((t) => (
                <option key={t.id} value={t.id}>
                  {[t.id, t.product].filter(Boolean).join(", ")}
                </option>
              ))}
            </select>
          </label>
        </p>
      )}
      <ViewValues of={depthParts(station.value?.parts ?? [], tank.tank, tank.id)} open={open} />
    </>
  );
}
