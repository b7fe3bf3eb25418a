import { digits, figure, span, timeSpan, unitOf, withUnit, type Quantity, type UnitSystem } from "../../../draw/numbers";
import { capital, count } from "../../../draw/words";
import type {
  ControlState,
  ControlTold,
  FirstFlow,
  HoseTold,
  PumpTold,
  RestTold,
  SpanTold,
  SystemTold,
  WorstTold,
} from "./documents";

export const listed = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

export function pumpNote(pump: PumpTold): string {
  if (pump.dead_headed) return "runs, delivers nothing";
  if (pump.runs_back) return "fuel runs back through it";
  if (!pump.running) return "off";
  const speed = pump.speed_share ?? 1;
  return speed === 1 ? "" : `at ${digits(speed * 100, 1)}\u00A0% of full speed`;
}

const pressure = (units: UnitSystem, si: number | null) => withUnit("pressure", units, si);
const run = (names: readonly string[]) => listed(names) + (names.length === 1 ? " runs" : " run");
const flows = (units: UnitSystem, s: ControlState) =>
  s.determined
    ? `${withUnit("flow", units, s.total_flow_m3_per_s)} in total at ${pressure(units, s.line_pressure_gauge_pa)}`
    : "not determined";

function leadLag(c: ControlTold, taken: ControlState, units: UnitSystem): string[] {
  if (c.hoses_calling !== null) {
    return [
      `${c.id}: ${listed(c.order)} start in this order, the next when more than ${digits(c.hoses_calling, 0)} hoses call for each pump that runs. ${count(c.hoses_open, "hose")} open: ${run(taken.pumps)}.`,
    ];
  }
  const next =
    c.starts_below_pressure_gauge_pa === null
      ? ""
      : `, the next below ${pressure(units, c.starts_below_pressure_gauge_pa)}`;
  const last =
    c.stops_above_pressure_gauge_pa === null
      ? ""
      : `; the last stops above ${pressure(units, c.stops_above_pressure_gauge_pa)}`;
  const out = [`${c.id}: ${listed(c.order)} start in this order${next}${last}.`];
  const hunting = c.short_cycles_with_state === null ? undefined : c.states[c.short_cycles_with_state];
  if (hunting) {
    out.push(
      `Pump ${hunting.pumps.at(-1) ?? ""} starts and stops in turn: without it ${flows(units, taken)}, with it ${flows(units, hunting)}. Told here without it.`,
    );
  } else {
    out.push(`${run(taken.pumps)}, at a line pressure of ${pressure(units, taken.line_pressure_gauge_pa)}.`);
  }
  return out;
}

function speed(c: ControlTold, taken: ControlState, units: UnitSystem): string {
  const holds = pressure(units, c.holds_pressure_gauge_pa);
  const is = pressure(units, taken.line_pressure_gauge_pa);
  const at = `${c.id}: ${listed(c.order)} at ${digits((c.speed_share ?? NaN) * 100, 1)}\u00A0% of full speed`;
  if (c.pressure === "held") return `${at}; holds ${holds}.`;
  if (c.pressure === "not reached")
    return `${at}, the most it may; line pressure ${is}, the ${holds} to hold is not reached.`;
  if (c.pressure === "passed") return `${at}, the least it may; line pressure ${is}, above the ${holds} to hold.`;
  return `${at}; whether it holds ${holds} is not determined.`;
}

/** What the control of the pumps does with the hoses that are open. */
export function controlWords(c: ControlTold, units: UnitSystem): string[] {
  const taken = c.states[c.state_told];
  if (!taken) return [];
  const out: string[] = [];
  if (c.kind === "lead-lag") out.push(...leadLag(c, taken, units));
  if (c.kind === "alternating")
    out.push(`${c.id}: one pump at a time. Told here with ${listed(taken.pumps)}: ${flows(units, taken)}.`);
  if (c.kind === "variable-speed") out.push(speed(c, taken, units));
  if (c.hoses_open === 0) out.push(`No hose calls: told here is the moment before ${listed(taken.pumps)} switch off.`);
  return out;
}

/** "D2.middle-a, as chosen; 60.0 % of it is regular." Nothing where neither is to be said. */
export function shownWords(hose: HoseTold | null, chosen: boolean, product: string): string {
  if (!hose) return "";
  const blended = hose.share < 1 ? `${digits(hose.share * 100, 1)}\u00A0% of it is ${product}` : "";
  const what = [chosen ? "as chosen" : "", blended].filter((w) => w !== "").join("; ");
  return what ? `Shown: ${hose.id}, ${what}.` : "";
}

/** Why numbers are missing, each reason once. */
export function reasonsOf(systems: readonly SystemTold[]): string[] {
  const out = systems
    .filter((s) => s.status !== "determined" || s.reason)
    .map(
      (s) =>
        `${capital(s.id)}: ${s.status === "determined" ? "" : s.status}${s.reason && s.status !== "determined" ? ", " : ""}${s.reason ?? ""}.`,
    );
  return [...new Set(out)];
}

const proofs: Record<string, string> = {
  argument: "proved by argument",
  enumeration: "proved: every set solved",
  "best found": "best found, not proved",
};
export const proofWords = (proof: string | null) => (proof && proofs[proof]) ?? "–";

const longest = 6;
/** "none open", "D1.a alone", "all 6 open", "all but D1.a", "24 of 36 open" */
export function openWords(open: readonly string[], worst: WorstTold): string {
  if (!open.length) return "none open";
  if (open.length === worst.hose_count) return open.length === 1 ? (open[0] ?? "") : `all ${worst.hose_count} open`;
  if (open.length === 1) return `${open[0]} alone`;
  if (open.length <= longest) return open.join(", ");
  const shut = worst.hoses.map((h) => h.id).filter((id) => !open.includes(id));
  return shut.length <= longest && shut.length
    ? `all but ${shut.join(", ")}`
    : `${open.length} of ${worst.hose_count} open`;
}

const quantities: Record<string, Quantity> = {
  "a length": "length",
  "a pressure": "pressure",
  "a flow": "flow",
  "a temperature": "temperature",
  "a share": "share",
  "a ratio": "share",
  "a speed": "velocity",
  "a volume": "volume",
};

export interface SpanRow {
  what: string;
  range: string;
  /** Of the slowest open hose. */
  flow: [number, number] | null;
  likely: number | null;
  reason: string | null;
}

const named = (s: SpanTold) =>
  s.kind === "level"
    ? `level in ${s.subject}`
    : s.kind === "temperature"
      ? `temperature, ${s.subject}`
      : s.kind === "filter"
        ? `filters, ${s.system}`
        : s.subject;

function rangeOf(s: SpanTold, units: UnitSystem): string {
  if (s.kind === "filter") return s.at_high ? "as entered to loaded" : "";
  if (s.low_si === null || s.high_si === null) return "";
  const small = s.quantity === "a length" && Math.max(Math.abs(s.low_si), Math.abs(s.high_si)) < 0.5;
  const what = small ? "bore" : quantities[s.quantity ?? ""];
  if (!what) return "as entered";
  return `${span(what, units, s.low_si, s.high_si)}\u00A0${unitOf(what, units)}`;
}

/** How far each uncertain thing moves the slowest open hose: widest first, what is not determined last. */
export function spanRows(spans: readonly SpanTold[], units: UnitSystem): SpanRow[] {
  const rows = spans.map((s): SpanRow => {
    const ends = [s.at_low, s.at_likely, s.at_high]
      .map((e) => e?.slowest_flow_m3_per_s ?? null)
      .filter((v) => v !== null);
    const known = s.reason === null && ends.length > 0;
    return {
      what: named(s),
      range: known ? rangeOf(s, units) : "",
      flow: known ? [Math.min(...ends), Math.max(...ends)] : null,
      likely: s.at_likely?.slowest_flow_m3_per_s ?? null,
      reason: s.reason,
    };
  });
  const width = (r: SpanRow) => (r.flow ? r.flow[1] - r.flow[0] : -1);
  return foldReasons(rows.sort((a, b) => width(b) - width(a)));
}

function foldReasons(rows: readonly SpanRow[]): SpanRow[] {
  const out: SpanRow[] = [];
  for (const row of rows) {
    const same = row.reason && out.find((r) => r.reason === row.reason);
    if (same) same.what += `; ${row.what}`;
    else out.push({ ...row });
  }
  return out;
}

interface RestRow {
  name: string;
  pressures: string;
  times: string;
  reason: string;
}
const ends = (values: readonly (number | null)[]) => {
  const known = values.filter((v) => v !== null);
  return known.length ? ([Math.min(...known), Math.max(...known)] as const) : null;
};
function times(flows: readonly FirstFlow[]): string {
  const known = ends(flows.map((f) => f.time_s));
  if (!known) return "not determined";
  const [from, to] = known.map(timeSpan);
  const told = flows.filter((f) => f.time_s !== null).length;
  return (
    (from === to ? (from ?? "") : `${from} to ${to}`) +
    (told < flows.length ? ` (${told} of ${flows.length} hoses)` : "")
  );
}

/** Held, decayed, empty: pressures along the line and the time to first flow. */
export function restRows(rest: RestTold, units: UnitSystem): RestRow[] {
  const pressures = (values: readonly (number | null)[]) => {
    const known = ends(values);
    return known ? span("pressure", units, known[0], known[1]) : "–";
  };
  const row = (name: string, flows: readonly FirstFlow[], values: readonly (number | null)[]): RestRow => {
    const reasons = [...new Set(flows.map((f) => f.reason).filter((r) => r !== null))].join("; ");
    const atOnce = flows.every((f) => f.time_s === null) && ends(flows.map((f) => f.time_without_leak_detector_s));
    const were = atOnce ? `; were it open at once, ${[...new Set(atOnce.map(timeSpan))].join(" to ")}` : "";
    return { name, pressures: pressures(values), times: times(flows), reason: reasons + (reasons ? were : "") };
  };
  return [
    row(
      "held",
      rest.hoses.map((h) => h.first_flow_held),
      rest.places.map((p) => p.held_pressure_gauge_pa),
    ),
    row(
      "decayed",
      rest.hoses.map((h) => h.first_flow_decayed),
      rest.places.map((p) => p.decayed_pressure_gauge_pa),
    ),
    row(
      "empty",
      rest.hoses.map((h) => h.first_flow_empty),
      [],
    ),
  ];
}

/** "keeps 8 gpm with up to 6 of 8 open" */
export function keepsWords(keeps: number, all: number, keep: number, units: UnitSystem): string {
  const decimals =
    [0, 1].find((d) => Number(figure("flow", units, keep, d)) === Number(figure("flow", units, keep, 2))) ?? 2;
  const flow = withUnit("flow", units, keep, decimals);
  if (keeps === 0) return `Not one hose alone keeps ${flow}.`;
  if (keeps >= all)
    return all === 1 ? `The one hose keeps ${flow}.` : `Every open hose keeps ${flow}, also with all ${all} open.`;
  return `Every open hose keeps ${flow} with up to ${keeps} of ${all} open; with ${keeps + 1} one does not.`;
}
