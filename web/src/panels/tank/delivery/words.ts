/** What is said of a delivery beside its courses. Nothing here knows of the page. */
import { clockText } from "../../../draw/clock";
import {
  amount,
  apportion,
  digits,
  figure,
  span,
  unitOf,
  valueIn,
  withUnit,
  type UnitSystem,
} from "../../../draw/numbers";
import { capital, sentence } from "../../../draw/words";
import type { DeliveryDocument, DeliveryRun, Drop, FilledTank, Move, Ullage } from "./documents";

const volume = (units: UnitSystem, si: number) => `${amount(units, si)}\u00A0${unitOf("volume", units)}`;
/** What stays in a hose after it has drained is no amount. */
const crumb = 1e-5;

/** "3 000 gal regular into T1, 2 500 gal premium into T3" */
export const broughtWords = (run: DeliveryRun, units: UnitSystem) =>
  run.drops.map((d) => `${withUnit("volume", units, d.brought_m3, 0)} ${d.product} into ${d.tank}`).join(", ");

function spilled(drop: Drop, tank: FilledTank, units: UnitSystem): string {
  if (!tank.has_spill_container) return "No spill container is listed: taken off full, it spills it all on the ground.";
  if (tank.spill_container_m3 === null) return "What the spill container holds is not entered.";
  const held = volume(units, tank.spill_container_m3);
  const over = drop.left_in_hose_m3 - tank.spill_container_m3;
  const end = over > 0 ? `${volume(units, over)} run over.` : "nothing runs over.";
  return `Taken off full, it spills into the spill container, which holds ${held}: ${end}`;
}

/** What stays in the hose of each drop, and where it can go. */
export function hoseWords(run: DeliveryRun, units: UnitSystem): string[] {
  return run.drops.map((drop) => {
    const tank = run.tanks.find((t) => t.tank === drop.tank);
    const holds = volume(units, drop.hose_holds_m3);
    if (drop.end === "not begun") return `${capital(drop.compartment)}: the drop is not begun.`;
    if (drop.left_in_hose_m3 < crumb)
      return `${capital(drop.compartment)}: the hose, which holds ${holds}, drains into ${drop.tank}.`;
    const stays = `${capital(drop.compartment)}: ${volume(units, drop.left_in_hose_m3)} of ${holds} stay in the hose.`;
    if (!tank) return stays;
    const room =
      drop.left_in_hose_m3 <= tank.room_to_95_percent_after_m3
        ? `${drop.tank} has room for it below 95\u00A0%, ${volume(units, tank.room_to_95_percent_after_m3)}, where the ` +
          `valve lets it in.`
        : `${drop.tank} has no room for it below 95\u00A0%.`;
    return `${stays} ${room} ${spilled(drop, tank, units)}`;
  });
}

/** How a run ends, in a sentence. */
export function endWords(run: DeliveryRun): string {
  const time = clockText(run.time_s);
  if (run.problem) return sentence(run.problem);
  if (run.stalled) return `The drop stalls after ${time}.`;
  if (run.all_dropped) return `All is in the tanks after ${time}.`;
  const open = run.drops.filter((d) => d.end !== "emptied").map((d) => `${d.compartment} ${d.end}`);
  return `It ends after ${time}: ${open.join("; ")}.`;
}

/** From the alarm until the driver is too late. */
export const alarmWords = (run: DeliveryRun): string[] =>
  run.tanks.flatMap((t) =>
    t.alarm_to_shutoff_s === null
      ? []
      : [`${t.tank}: ${clockText(t.alarm_to_shutoff_s)} from the alarm until it holds 95\u00A0% or its valve is shut.`],
  );

/** Of vapor whose pressure is not determined: that it is so, and why. */
export const undeterminedWords = (ullage: Ullage): string | null =>
  ullage.problem === null
    ? null
    : `The pressure above ${ullage.tanks.join(", ")} is not determined: ${ullage.problem}. The drop is computed as if its ` +
      `vapor space were open to the air.`;

/** Over what is uncertain; null: nothing is. */
export function rangeWords({ result }: DeliveryDocument, units: UnitSystem): string | null {
  const { time_range_s: range, highest_ullage_pressure_range_gauge_pa: pressure } = result;
  if (!range || !pressure) return null;
  const [low, high] = [clockText(range.low), clockText(range.high)];
  const reach = `${span("vapor pressure", units, pressure.low, pressure.high)}\u00A0${unitOf("vapor pressure", units)}`;
  const takes = low === high ? low : `${low} to ${high}`;
  return `Over the uncertain values, one at a time, it takes ${takes} and the vapor space reaches ${reach}.`;
}

interface ShownMove {
  from: string;
  to: string;
  amount: string;
}

/** The book of a run as shown: the lines into the tanks add up to what is dropped. */
export interface ShownBook {
  liquid: ShownMove[];
  dropped: string;
  vapor: ShownMove[];
  /** Shares that are not explained, liquid and vapor. */
  balance: [string, string];
}

const share = (units: UnitSystem, si: number) => `${figure("share", units, Math.abs(si), 3)}\u00A0%`;

export function bookOf(run: DeliveryRun, units: UnitSystem): ShownBook {
  const decimals = 1;
  const steps = (si: number) => valueIn("volume", units, si) * 10 ** decimals;
  const shown = (whole: number) => digits(whole / 10 ** decimals, decimals);
  const line = (move: Move, whole: number): ShownMove => ({ from: move.from, to: move.to, amount: shown(whole) });
  const liquid = run.ledger.filter((m) => m.of === "liquid" && m.to.startsWith("tank "));
  const dropped = Math.round(steps(run.dropped_m3));
  const whole = apportion(
    liquid.map((m) => steps(m.amount_m3)),
    dropped,
  );
  return {
    liquid: liquid.map((m, i) => line(m, whole[i] ?? 0)),
    dropped: shown(dropped),
    vapor: run.ledger.filter((m) => m.of === "vapor").map((m) => line(m, Math.round(steps(m.amount_m3)))),
    balance: [share(units, run.liquid_balance), share(units, run.vapor_balance)],
  };
}
