import { figure, unitOf, withUnit } from "../../draw/numbers";
import { product, units } from "../../state/look";
import { ofProduct } from "./answers";
import { Scroll } from "../parts/Scroll";
import { Letter } from "../parts/Letter";
import type { RestTold } from "./told/documents";
import { restRows } from "./told/words";

/** The line with every hose shut, and how soon fuel comes when one opens. */
export function AtRest(props: { lines: readonly RestTold[]; of: "A" | null }) {
  const u = units.value;
  const line = ofProduct(props.lines, (l) => l.id, product.value);
  return (
    <section class="chartbox">
      <h2>
        {props.of && <Letter of={props.of} />} Line at rest <span class="dim">every hose shut, then one opens</span>
      </h2>
      {!line && <p class="words">{product.value} has no line of its own.</p>}
      {line?.reason && <p class="words">Not determined: {line.reason}.</p>}
      {line && !line.reason && (
        <>
          <Scroll label="Line at rest">
            <table class="tbl">
              <thead>
                <tr>
                  <th scope="col">Line</th>
                  <th scope="col">Pressure, {unitOf("pressure", u)} gauge</th>
                  <th scope="col">First flow after</th>
                  <th scope="col" class="l">
                    Why not
                  </th>
                </tr>
              </thead>
              <tbody>
                {restRows(line, u).map((row) => (
                  <tr key={row.name}>
                    <th scope="row">{row.name}</th>
                    <td>
                      <span class="fig">{row.pressures}</span>
                    </td>
                    <td>
                      <span class="fig">{row.times}</span>
                    </td>
                    <td class="l">{row.reason}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
          <p class="cap">
            Held by {line.held_by || "nothing that was entered"}: {figure("pressure", u, line.held_pressure_gauge_pa)}{" "}
            {unitOf("pressure", u)} gauge. The line holds {withUnit("volume", u, line.line_volume_m3)}.
            {line.compliance_reason ? ` How it yields to pressure is not determined: ${line.compliance_reason}.` : ""}
            {line.leak_detector_note ? ` ${line.leak_detector_note}.` : ""}
          </p>
        </>
      )}
    </section>
  );
}
