import type { ComponentChildren } from "preact";
import { decimalsApart, decimalsOf, figure, shownChange, signed, span, withUnit } from "../../draw/numbers";
import { count } from "../../draw/words";
import { chosenHose, keepFlow } from "../../state/hoses";
import { product, units } from "../../state/look";
import { shownHose, slowestOf } from "./answers";
import { keepIn, systemIn, type Choice } from "./choice";
import { Letter } from "../parts/Letter";
import { Aged, Fig, Place } from "./pieces";
import { budgetOf, takenBy, type Budget } from "./told/budget";
import type { HoseTold, SystemTold } from "./told/documents";

/** The numbers first: the slowest or the chosen hose, and where its pressure goes. */
export function Reading(props: { a: Choice; b: Choice | null }) {
  const [system, other] = [systemIn(props.a), props.b && systemIn(props.b)];
  const hose = shownHose(system, chosenHose.value);
  const second = other ? shownHose(other, chosenHose.value) : null;
  const u = units.value;
  const decimals = readingDecimals([hose, second], keepIn(props.a));
  const told = hose && budgetOf(hose.budget, u);
  const toldB = second && budgetOf(second.budget, u);
  const name = chosenHose.value
    ? `Hose ${chosenHose.value}`
    : `Slowest ${product.value} hose${slowestNames(hose && nameOf(hose, system), second && nameOf(second, other))}`;
  if (!props.a.answers) {
    return (
      <Aged as={props.a.as} class="big">
        <Kpi name={name} big a={<Place />} />
        <Kpi name="Pumps add" a={<Place />} />
        <Kpi name="Lost in the line" a={<Place />} />
      </Aged>
    );
  }
  return (
    <Aged as={props.a.as} class="big">
      <Kpi
        name={name}
        big
        a={<Flow hose={hose} system={system} decimals={decimals} />}
        b={second && <Flow hose={second} system={other} decimals={decimals} />}
      />
      {hose && second && hose.hose_flow_m3_per_s !== null && second.hose_flow_m3_per_s !== null && (
        <Kpi
          name="From A to B"
          a={
            <Fig
              text={signed(
                shownChange("flow", u, hose.hose_flow_m3_per_s, second.hose_flow_m3_per_s, decimals),
                decimals,
              )}
              what="flow"
              units={u}
            />
          }
        />
      )}
      {told && (
        <>
          <Kpi
            name="Pumps add"
            a={<Steps budget={told} steps={told.added} />}
            b={toldB && <Steps budget={toldB} steps={toldB.added} />}
          />
          <Kpi
            name="Lost in the line"
            a={<Steps budget={told} steps={takenBy(told, "line")} />}
            b={toldB && <Steps budget={toldB} steps={takenBy(toldB, "line")} />}
          />
          <Kpi
            name="Lost in dispenser and hose"
            a={<Steps budget={told} steps={takenBy(told, "dispenser")} />}
            b={toldB && <Steps budget={toldB} steps={takenBy(toldB, "dispenser")} />}
          />
          <Kpi
            name="Taken by the lift"
            a={<Steps budget={told} steps={takenBy(told, "lift")} />}
            b={toldB && <Steps budget={toldB} steps={takenBy(toldB, "lift")} />}
          />
        </>
      )}
    </Aged>
  );
}

function slowestNames(a: string | null, b: string | null): string {
  if (a === null) return "";
  return b === null || a === b ? `, ${a}` : `: A ${a}, B ${b}`;
}

function nameOf(hose: HoseTold, system: SystemTold | null): string {
  const flow = hose.hose_flow_m3_per_s ?? NaN;
  const alike = (system?.hoses ?? []).filter((h) => h.open && (h.hose_flow_m3_per_s ?? Infinity) <= flow * (1 + 1e-6));
  return alike.length > 1 ? `${hose.id} and ${alike.length - 1} alike` : hose.id;
}

/** As many as tell a flow apart from the one to keep that it misses. */
function readingDecimals(hoses: readonly (HoseTold | null)[], keep: number | null): number {
  const missed = hoses.flatMap((h) =>
    h?.below_keep_flow && h.hose_flow_m3_per_s !== null ? [h.hose_flow_m3_per_s] : [],
  );
  const apart = keep === null ? [] : missed.map((flow) => decimalsApart("flow", units.value, flow, keep));
  return Math.max(decimalsOf("flow", units.value), ...apart);
}

function Flow(props: { hose: HoseTold | null; system: SystemTold | null; decimals: number }) {
  const u = units.value;
  if (!props.hose)
    return <span class="faint words">{slowestOf(props.system) ? "not on this piping" : "no hose open"}</span>;
  if (!props.hose.open) return <span class="faint words">shut</span>;
  if (props.hose.hose_flow_m3_per_s === null) return <span class="faint words">not determined</span>;
  const [low, high] = [props.hose.hose_flow_low_m3_per_s, props.hose.hose_flow_high_m3_per_s];
  const range = low !== null && high !== null ? span("flow", u, low, high, props.decimals) : "";
  return (
    <>
      <Fig text={figure("flow", u, props.hose.hose_flow_m3_per_s, props.decimals)} what="flow" units={u} />
      {range.includes(" to ") && <span class="range fig">{range}</span>}
      {props.hose.below_keep_flow && <span class="missed">below the {keepFlow.value} to keep</span>}
    </>
  );
}

const Steps = (props: { budget: Budget; steps: number }) => (
  <Fig text={props.budget.text(props.steps)} what="pressure" units={units.value} />
);

function Kpi(props: { name: string; a: ComponentChildren; b?: ComponentChildren; big?: boolean }) {
  return (
    <div class={`kpi${props.big ? "" : " sm"}`}>
      <div class="k">{props.name}</div>
      <div class="v">
        {props.b && <Letter of="A" />}
        {props.a}
      </div>
      {props.b && (
        <div class="v">
          <Letter of="B" />
          {props.b}
        </div>
      )}
    </div>
  );
}

/** "80.7 gpm in total with 8 of 8 hoses open" */
export function totalWords(system: SystemTold | null): string {
  if (!system || system.status !== "determined") return "";
  const open = system.hoses.filter((h) => h.open).length;
  if (!open) return "";
  const all = system.hoses.length;
  const flow = withUnit("flow", units.value, system.total_flow_m3_per_s);
  return `${flow} of ${system.product ?? system.id} in total with ${open} of ${count(all, "hose")} open.`;
}
