import { digits, figure, span, unitOf, valueIn, type UnitSystem } from "../../draw/numbers";
import { chooseHose, chosenHose, hoses, openHoses, toggleHose } from "../../state/hoses";
import { product, units } from "../../state/look";
import { narrow, station } from "../../state/station";
import type { StateTold } from "./told/documents";
import { Place } from "./pieces";
import { barEnd, flowDecimals, hoseNotes, hoseRows, type HoseRow } from "./told/rows";

const toneOf = (id: string) => station.value?.products.find((p) => p.id === id)?.tone ?? "regular";

export function Swatches(props: { products: readonly string[] }) {
  return (
    <span class="sws" title={props.products.join(" and ")}>
      {props.products.map((p) => (
        <i key={p} class={`sw ${toneOf(p)}`} />
      ))}
    </span>
  );
}

/** Every hose: open or shut, what it gives, and what is to be said of it. B is shown beside A where there is one. */
export function HoseTable(props: {
  a: StateTold | null;
  b: StateTold | null;
  keep: number | null;
  slowest: string | null;
  /** Nothing is known yet: places are held for the flows. */
  waiting: boolean;
}) {
  const u = units.value;
  const rows = hoseRows(hoses.value, props.a);
  const rowsB = props.b ? hoseRows(hoses.value, props.b) : null;
  const both = [...rows, ...(rowsB ?? [])];
  const end = barEnd(both, props.keep, u);
  const decimals = flowDecimals(both, props.keep, u);
  return (
    <table class="hoses">
      <caption class="vh">Hoses: open or shut, and the flow that each gives</caption>
      <thead>
        <tr>
          <th scope="col">Hose</th>
          <th scope="col">Open</th>
          <th scope="col" colSpan={2}>
            Delivers, {unitOf("flow", u)}
            {props.keep !== null && `, tick at ${figure("flow", u, props.keep)}`}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => (
          <Row
            key={row.id}
            row={row}
            b={rowsB?.[i] ?? null}
            end={end}
            keep={props.keep}
            decimals={decimals}
            slowest={props.slowest === row.id}
            waiting={props.waiting}
          />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  row: HoseRow;
  b: HoseRow | null;
  end: number;
  keep: number | null;
  decimals: number;
  slowest: boolean;
  waiting: boolean;
}

function Row(props: RowProps) {
  const { row } = props;
  const u = units.value;
  const open = openHoses.value.includes(row.id);
  const course = row.products.includes(product.value) ? product.value : row.products[0];
  const notesOf = (one: HoseRow | null) => (open && one?.told ? hoseNotes(one.told, props.keep, u) : []);
  const notes = props.b
    ? [...notesOf(row).map((n) => `A ${n}`), ...notesOf(props.b).map((n) => `B ${n}`)]
    : notesOf(row);
  const shown = chosenHose.value === row.id;
  return (
    <tr class={`${row.first ? "first" : ""}${props.slowest ? " worst" : ""}${shown ? " shown" : ""}`}>
      <th scope="row">
        <button
          type="button"
          class="hose-name"
          aria-pressed={shown}
          title={shown ? "Show the course to the slowest open hose" : `Show the course to ${row.id}`}
          onClick={() => chooseHose(shown ? null : row.id, course)}
        >
          <Swatches products={row.products} />
          <span>{row.id}</span>
        </button>
      </th>
      <td>
        {narrow.value ? (
          <span class={open ? "" : "faint"}>{open ? "open" : "shut"}</span>
        ) : (
          <button
            type="button"
            role="switch"
            class="valve"
            aria-checked={open}
            aria-label={`${row.id} open`}
            onClick={() => toggleHose(row.id)}
          >
            {open ? "open" : "shut"}
          </button>
        )}
      </td>
      <td class="bars">
        {open && <Bar row={row} end={props.end} keep={props.keep} units={u} />}
        {open && props.b && <Bar row={props.b} end={props.end} keep={props.keep} units={u} b />}
        {notes.map((note) => (
          <small key={note}>{note}</small>
        ))}
        {props.slowest && !notes.length && <small>the slowest</small>}
      </td>
      <td class="flow-cell">
        <Flow row={row} open={open} decimals={props.decimals} units={u} waiting={props.waiting} />
        {open && props.b && (
          <span class="of-b">
            <Flow row={props.b} open decimals={props.decimals} units={u} waiting={false} />
          </span>
        )}
      </td>
    </tr>
  );
}

/** A bar to the flow, a whisker over its range, ticks at what is to be kept and at the cap. */
function Bar(props: { row: HoseRow; end: number; keep: number | null; units: UnitSystem; b?: boolean }) {
  const told = props.row.told;
  if (!told || told.hose_flow_m3_per_s === null) return null;
  const at = (si: number) => `${Math.min(100, (100 * valueIn("flow", props.units, si)) / props.end).toFixed(2)}%`;
  const [low, high] = [told.hose_flow_low_m3_per_s, told.hose_flow_high_m3_per_s];
  const tone = props.b ? "b" : toneOf(props.row.products[0] ?? "");
  return (
    <span class="fb fig" aria-hidden="true">
      <i class={tone} style={{ width: at(told.hose_flow_m3_per_s) }} />
      {low !== null && high !== null && high > low && (
        <u style={{ left: at(low), width: `calc(${at(high)} - ${at(low)})` }} />
      )}
      {props.keep !== null && <b style={{ left: at(props.keep) }} />}
      {told.rule_cap_m3_per_s !== null && valueIn("flow", props.units, told.rule_cap_m3_per_s) <= props.end && (
        <b class="cap-tick" style={{ left: at(told.rule_cap_m3_per_s) }} />
      )}
    </span>
  );
}

function Flow(props: { row: HoseRow; open: boolean; decimals: number; units: UnitSystem; waiting: boolean }) {
  const { told, reason } = props.row;
  if (!props.open) return <span class="faint">shut</span>;
  const flow = told?.hose_flow_m3_per_s ?? null;
  if (props.waiting && !told) return <Place />;
  if (!told || flow === null) {
    return (
      <span class="faint" title={reason ?? undefined}>
        not determined
      </span>
    );
  }
  const { decimals } = props;
  const [low, high] = [told.hose_flow_low_m3_per_s, told.hose_flow_high_m3_per_s];
  const range = low !== null && high !== null ? span("flow", props.units, low, high, decimals) : "";
  return (
    <>
      <span class="fig">{digits(valueIn("flow", props.units, flow), decimals)}</span>
      {range.includes(" to ") && <small class="fig">{range}</small>}
    </>
  );
}
