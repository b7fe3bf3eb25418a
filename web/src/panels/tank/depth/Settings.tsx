import { capital, sentence } from "../../../draw/words";
import { figure, unitOf, withUnit } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { Note } from "../../parts/Note";
import { Wide } from "../../parts/Wide";
import { asCalledHere } from "../answer";
import type { Device, DeviceSet, Tank } from "../documents";

const deviceWords: Record<Device, string> = { shutoff: "Shutoff", alarm: "Alarm", restriction: "Restriction" };

/** Where overfill devices belong by each published route, beside what is set. */
export function Settings({ tank }: { tank: Tank }) {
  const system = units.value;
  const { settings, wrong, set_now: set, remarks } = tank.overfill;
  const depth = (si: number | null) => figure("bore", system, si);
  const percent = (share: number | null) => (share === null ? "–" : `${figure("share", system, share)}\u00A0%`);
  const chart = (device: Device, share: number | null) =>
    wrong.find((w) => w.device === device && w.set_by === "level chart" && share !== null && Math.abs(w.share - share) < 1e-9);
  const thumb = wrong.filter((w) => w.set_by !== "level chart");
  return (
    <section class="part" aria-label="Where the settings belong">
      <h2>
        Where the settings belong <span class="n">{unitOf("bore", system)}</span>
      </h2>
      <p class="cap">
        Depths, each at its device's own place. The routes A, B and C of 40 CFR 280.20(c)(1)(ii) are alternatives: one of
        them is enough.
      </p>
      <Wide label="Settings, table">
        <table class="tbl words settings">
          <thead>
            <tr>
              <th scope="col">Route</th>
              <th scope="col" class="l">Device</th>
              <th scope="col">Belongs at</th>
              <th scope="col">Share</th>
              <th scope="col">Level chart sets</th>
              <th scope="col">which is</th>
              <th scope="col">Set now</th>
              <th scope="col">which is</th>
            </tr>
          </thead>
          <tbody>
            {settings.map((s) => {
              const wrongly = chart(s.device, s.share);
              const why = s.impossible ?? s.enter;
              return (
                <tr key={s.route + s.device + s.asks}>
                  <th scope="row">{s.route}</th>
                  <td class="l">
                    {deviceWords[s.device]}
                    <small>{s.asks.replace(/ %/g, "\u00A0%")}</small>
                  </td>
                  {why ? (
                    <td class="l" colSpan={4}>
                      {s.impossible ? "Impossible here: " : "Not determined: "}
                      {asCalledHere(why)}
                    </td>
                  ) : (
                    <>
                      <td>{depth(s.depth_m)}</td>
                      <td>{percent(s.share)}</td>
                      <td>{wrongly ? depth(wrongly.depth_m) : "–"}</td>
                      <td class={wrongly?.late ? "badt" : ""}>{wrongly ? percent(wrongly.true_share) : "–"}</td>
                    </>
                  )}
                  <Now set={set.find((d) => d.device === s.device)} wanted={s.share} />
                </tr>
              );
            })}
            {thumb.map((w) => (
              <tr key={w.set_by + w.device}>
                <th scope="row">–</th>
                <td class="l">
                  {deviceWords[w.device]}
                  <small>
                    {figure("share", system, w.share, 0)} % of the diameter, a rule of thumb
                  </small>
                </td>
                <td>–</td>
                <td>–</td>
                <td>{depth(w.depth_m)}</td>
                <td class={w.late ? "badt" : ""}>{percent(w.true_share)}</td>
                <td>–</td>
                <td>–</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      {set.length === 0 && <p class="txt">No overfill device is entered for this tank.</p>}
      {set
        .filter((d) => !settings.some((s) => s.device === d.device))
        .map((d) => (
          <p class="txt" key={d.what}>
            {capital(d.what)}
            {d.depth_m !== null ? ` at ${withUnit("bore", system, d.depth_m)}` : ""}: {percent(d.share)} full,{" "}
            {withUnit("volume", system, d.volume_m3)}.
          </p>
        ))}
      {wrong
        .filter((w) => w.late)
        .map((w) => (
          <Note tone="bad" key={w.set_by + w.device + w.share}>
            Set by {w.set_by === "level chart" ? "a level chart" : "a share of the diameter"}, the {w.device} would act at{" "}
            <b>{percent(w.true_share)}</b>, not {figure("share", system, w.share, 0)} %.
          </Note>
        ))}
      {remarks.map((r) => (
        <p class="txt" key={r}>
          {sentence(r)}
        </p>
      ))}
    </section>
  );
}

/** A device as it is set now; late where it acts past the share that a route wants. */
function Now({ set, wanted }: { set: DeviceSet | undefined; wanted: number | null }) {
  if (!set) {
    return (
      <>
        <td>–</td>
        <td>–</td>
      </>
    );
  }
  const late = wanted !== null && set.share > wanted + 1e-6;
  return (
    <>
      <td>{set.depth_m === null ? "–" : figure("bore", units.value, set.depth_m)}</td>
      <td class={late ? "badt" : ""}>{figure("share", units.value, set.share)}&nbsp;%</td>
    </>
  );
}
