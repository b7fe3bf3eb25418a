import type { Field, Part } from "../../src/api/types";
import type { HoseTold, LadderTold, StateTold, SystemTold } from "../../src/panels/flow/told/documents";

export const gpm = 3.785411784e-3 / 60;
export const psi = 6894.757293168361;

export function field(key: string, more: Partial<Field> = {}): Field {
  return {
    path: `line.trunk.${key}`,
    key,
    kind: "length",
    table: null,
    required: false,
    text: null,
    us: null,
    si: null,
    choices: null,
    help: "",
    line: null,
    problem: null,
    ...more,
  };
}

export function part(id: string, more: Partial<Part> = {}): Part {
  return {
    path: `dispenser.D1.hose.${id}`,
    kind: "hose",
    id,
    stop: 9,
    product: "regular",
    of: "dispenser.D1",
    position: null,
    fields: [],
    ...more,
  };
}

export function hose(id: string, flow: number | null, more: Partial<HoseTold> = {}): HoseTold {
  const si = flow === null ? null : flow * gpm;
  return {
    id,
    dispenser: id.split(".")[0] ?? "",
    open: true,
    share: 1,
    flow_m3_per_s: si,
    hose_flow_m3_per_s: si,
    hose_flow_low_m3_per_s: null,
    hose_flow_high_m3_per_s: null,
    limit_m3_per_s: null,
    at_limit: false,
    ratio_met: true,
    rule_cap_m3_per_s: null,
    rule_clause: null,
    above_rule_cap: false,
    below_keep_flow: false,
    budget: [],
    grade_line: [],
    ...more,
  };
}

export function system(hoses: HoseTold[], more: Partial<SystemTold> = {}): SystemTold {
  return {
    id: "regular",
    product: "regular",
    status: "determined",
    reason: null,
    total_flow_m3_per_s: null,
    hoses,
    pumps: [],
    control: null,
    ...more,
  };
}

export const state = (...systems: SystemTold[]): StateTold => ({
  systems,
});

export function ladder(flows: number[], more: Partial<LadderTold> = {}): LadderTold {
  return {
    system: "regular",
    order: "worst",
    keeps: null,
    steps: flows.map((f, i) => ({
      open: i + 1,
      slowest_m3_per_s: f * gpm,
      slowest_hose: "D1.a",
      tied: 1,
      proof: "enumeration",
    })),
    ...more,
  };
}
