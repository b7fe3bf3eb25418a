import { span, unitOf, valueIn, withUnit } from "../../draw/numbers";
import { product, units } from "../../state/look";
import { Scroll } from "../parts/Scroll";
import { Letter } from "../parts/Letter";
import type { SpansTold } from "./told/documents";
import { spanRows, type SpanRow } from "./told/words";

/** How far each uncertain thing moves the slowest open hose. */
export function Spans(props: { spans: SpansTold; of: "A" | null }) {
  const u = units.value;
  const flows = props.spans.sets[0]?.flows.filter((f) => f.system.split(" + ").includes(product.value)) ?? [];
  const rows = spanRows(flows, u);
  const known = rows.filter((r) => r.flow !== null);
  const missing = rows.filter((r) => r.flow === null);
  const margins = props.spans.vapor_margins.filter((m) => m.system.split(" + ").includes(product.value));
  return (
    <section class="chartbox">
      <h2>
        {props.of && <Letter of={props.of} />} What is uncertain{" "}
        <span class="dim">and how far it moves the slowest open hose, {unitOf("flow", u)}</span>
      </h2>
      {rows.length === 0 && (
        <p class="words">No value of {product.value} is entered with a low and a high, so there is no range to tell.</p>
      )}
      {known.length > 0 && (
        <Scroll label="What is uncertain">
          <table class="tbl spans">
            <thead>
              <tr>
                <th scope="col">Uncertain</th>
                <th scope="col" class="l">
                  Over
                </th>
                <th scope="col">Slowest, {unitOf("flow", u)}</th>
                <th scope="col" class="l">
                  <span class="vh">Range drawn</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {known.map((row) => (
                <tr key={row.what}>
                  <th scope="row">{row.what}</th>
                  <td class="l">{row.range}</td>
                  <td>
                    <span class="fig">{row.flow && span("flow", u, row.flow[0], row.flow[1])}</span>
                  </td>
                  <td class="l">
                    <RangeBar row={row} all={known} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {missing.map((row) => (
        <p key={row.what} class="words">
          Not determined, {row.what}: {row.reason}.
        </p>
      ))}
      {!props.spans.monotone && known.length > 0 && (
        <p class="words">Between low and high the flow need not lie between those of the ends.</p>
      )}
      {margins.length > 0 && (
        <>
          <h3>Above the vapor pressure</h3>
          {margins.map((m) => (
            <p key={m.place} class="words">
              {m.place}:{" "}
              {m.margin_pa === null ? `not determined, ${m.reason ?? ""}` : withUnit("pressure", u, m.margin_pa)}.
            </p>
          ))}
        </>
      )}
    </section>
  );
}

function RangeBar(props: { row: SpanRow; all: readonly SpanRow[] }) {
  const ends = props.all.flatMap((r) => r.flow ?? []).map((si) => valueIn("flow", units.value, si));
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const room = most - least || 1;
  const at = (si: number) => `${((100 * (valueIn("flow", units.value, si) - least)) / room).toFixed(2)}%`;
  const { flow, likely } = props.row;
  if (!flow) return null;
  return (
    <span class="range-bar" aria-hidden="true">
      <i style={{ left: at(flow[0]), right: `calc(100% - ${at(flow[1])})` }} />
      {likely !== null && <b style={{ left: at(likely) }} />}
    </span>
  );
}
