import { apportion, decimalsOf, digits, signed, valueIn, type UnitSystem } from "../../../draw/numbers";
import type { BudgetPart } from "./documents";

export type Where = "pump" | "line" | "dispenser" | "lift";
/** A row of the pressure budget in whole steps of the last shown decimal, so that what is shown adds up as shown. */
interface BudgetRow {
  part: string;
  owner: string;
  flow: number | null;
  velocity: number | null;
  /** What the part adds; negative: takes. */
  change: number;
  left: number;
  where: Where;
  stop: number;
}
export interface Budget {
  rows: BudgetRow[];
  /** Added by the pumps. */
  added: number;
  text: (steps: number) => string;
  signedText: (steps: number) => string;
}

const stops: Record<string, number> = {
  pump: 4,
  "check valve": 4,
  "leak detector": 4,
  leg: 5,
  line: 5,
  branch: 5,
  connection: 6,
  riser: 6,
  "shear valve": 7,
  filter: 8,
  meter: 8,
  "control valve": 8,
  "blend valve": 8,
  "dispenser and hose": 9,
  "whip hose": 9,
  breakaway: 9,
  "curb hose": 9,
  swivel: 9,
  nozzle: 10,
  lift: 10,
};

/** Before the connection of the dispenser it is the line's. */
function whereOf(part: string, passed: boolean): Where {
  if (part === "pump") return "pump";
  if (part === "lift") return "lift";
  return passed ? "dispenser" : "line";
}

function merged(rows: readonly BudgetPart[]): BudgetPart[] {
  const out: BudgetPart[] = [];
  for (const row of rows) {
    const last = out.at(-1);
    if (last && last.part === row.part && last.owner === row.owner) {
      last.pressure_loss_pa = (last.pressure_loss_pa ?? NaN) + (row.pressure_loss_pa ?? NaN);
    } else {
      out.push({ ...row });
    }
  }
  return out;
}

/** What the pumps add is rounded to the nearest step; the other rows so that together they take exactly that. Null where
 * a loss is not known. */
export function budgetOf(told: readonly BudgetPart[], units: UnitSystem): Budget | null {
  const rows = merged(told);
  const decimals = decimalsOf("pressure", units);
  const steps = rows.map((r) => valueIn("pressure", units, r.pressure_loss_pa ?? NaN) * 10 ** decimals);
  if (!rows.length || steps.some((s) => !Number.isFinite(s))) return null;
  const added = steps.filter((s) => s < 0).reduce((sum, s) => sum + Math.round(-s), 0);
  const taken = apportion(
    steps.filter((s) => s >= 0),
    added,
  );
  let left = 0;
  let passed = false;
  const out = rows.map((row, i): BudgetRow => {
    const own = steps[i] ?? 0;
    const change = own < 0 ? Math.round(-own) : -(taken.shift() ?? 0);
    left += change;
    passed ||= (stops[row.part] ?? 6) > 5 && row.part !== "lift";
    return {
      part: row.part,
      owner: row.owner,
      flow: row.flow_m3_per_s,
      velocity: row.velocity_m_per_s,
      change,
      left,
      where: whereOf(row.part, passed),
      stop: stops[row.part] ?? 5,
    };
  });
  const value = (s: number) => s / 10 ** decimals;
  return {
    rows: out,
    added,
    text: (s) => digits(value(s), decimals),
    signedText: (s) => signed(value(s), decimals),
  };
}

/** What a stretch of the course takes, in steps. */
export const takenBy = (budget: Budget, where: Where) =>
  budget.rows.filter((r) => r.where === where).reduce((sum, r) => sum - r.change, 0);
