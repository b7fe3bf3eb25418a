import { useState } from "preact/hooks";
import { capital } from "../../draw/words";
import { StatusShape } from "../parts/status";
import { Wide } from "../parts/Wide";
import type { DrainLine, Joint } from "./documents";
import { countWords, drains, shapeOf, wordOf, type Drain } from "./rows";

/** As many are named alone; more are counted first. */
const few = 3;

function Row({ drain }: { drain: Drain }) {
  return (
    <tr>
      <td class="l state">
        <StatusShape state={shapeOf[drain.holds]} /> {wordOf[drain.holds]}
      </td>
      <th scope="row" class="l">
        {drain.from.length > few && <b>{countWords(drain)}</b>}
        <span class={drain.from.length > few ? "names" : ""}>{drain.from.join(", ")}</span>
      </th>
      <td class="l">{capital(drain.goes)}</td>
    </tr>
  );
}

/** Where fuel goes from each joint and between the walls of each run: what is not assured one by one, the rest in one
 * line that opens. */
export function Drains(props: { joints: readonly Joint[]; lines: readonly DrainLine[] }) {
  const [open, setOpen] = useState(false);
  const all = drains(props.joints, props.lines);
  const good = all.filter((d) => d.holds === "assured");
  const assured = {
    joints: good.reduce((n, d) => n + d.joints, 0),
    runs: good.reduce((n, d) => n + d.runs, 0),
  };
  const others = all.length > good.length;
  return (
    <section class="cell bt" aria-labelledby="drains-title">
      <h2 id="drains-title">
        What drains where <span class="dim n">from each joint, and between the walls of each run</span>
      </h2>
      {all.length === 0 && <p class="dim">No line is entered, so there is no joint and no run.</p>}
      {all.length > 0 && (
        <Wide label="What drains where">
          <table class="tbl drains">
            <thead class="vh">
              <tr>
                <th scope="col">State</th>
                <th scope="col">From</th>
                <th scope="col">Fuel goes</th>
              </tr>
            </thead>
            <tbody>
              {all
                .filter((d) => d.holds !== "assured" || open)
                .map((d) => (
                  <Row key={d.holds + d.goes} drain={d} />
                ))}
              {good.length > 0 && (
                <tr>
                  <td class="l state">
                    <StatusShape state="meets" /> Assured
                  </td>
                  <th scope="row" class="l">
                    {others ? "The other " : ""}
                    {countWords(assured)}
                  </th>
                  <td class="l">
                    Each drains into a sump that is assured.{" "}
                    <button type="button" class="link" aria-expanded={open} onClick={() => setOpen(!open)}>
                      {open ? "Fold up" : "Show each"}
                    </button>
                  </td>
                </tr>
              )}
            </tbody>
          </table>
        </Wide>
      )}
    </section>
  );
}
