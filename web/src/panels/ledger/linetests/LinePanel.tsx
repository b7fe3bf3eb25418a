import { amount, unitOf, withUnit } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { narrow, station } from "../../../state/station";
import { Ask } from "../../containment/Ask";
import { lineTestParts } from "../../tank/values/shown";
import { ViewValues } from "../../tank/values/ViewValues";
import { askGroups, heldFor, hoursOrMinutes, keptAs, rateWords, type AskKey } from "./asks";
import type { KnownLine, TestedLine } from "./documents";
import { ask, typed } from "./state";

/** A value that could not be read; what is shown is from before. */
export interface Wrong {
  key: AskKey;
  words: string;
}

/** Where nothing can be entered, only what was asked for. */
const shownGroups = () =>
  narrow.value
    ? askGroups.map((g) => ({ ...g, asks: g.asks.filter(({ key }) => typed.value[key]) })).filter((g) => g.asks.length)
    : askGroups;

/** The figures of the line, the values they rest on, and what is asked. */
export function LinePanel({ line, wrong }: { line: TestedLine; wrong: Wrong | null }) {
  const known = line.problem === null ? line : null;
  return (
    <aside class="insp" aria-label={`Line of ${line.system}`}>
      <div class="top one">
        <div>
          <p class="over">Stop 5 of 11</p>
          <h2>Line of {line.system}</h2>
        </div>
      </div>
      {known && <Reads line={known} />}
      <ViewValues of={lineTestParts(station.value?.parts ?? [], line.product, known?.lines ?? [])} open={false} />
      {shownGroups().map((group) => (
        <section key={group.name} aria-label={group.name}>
          <h3 class="grp">{group.name}</h3>
          {group.asks.map(({ key, label, unit }) => (
            <Ask
              key={key}
              label={label}
              value={typed.value[key] ?? ""}
              placeholder={heldFor(key, known, units.value)}
              problem={wrong?.key === key ? wrong.words : null}
              onCommit={(text) => ask(key, keptAs(key, text, unit[units.value]))}
            />
          ))}
        </section>
      ))}
    </aside>
  );
}

function Reads({ line }: { line: KnownLine }) {
  const system = units.value;
  const thermal = line.thermal.problem === null ? line.thermal : null;
  const pressure = (si: number | null) => (si === null ? "not determined" : withUnit("pressure", system, si));
  return (
    <dl class="reads">
      <dt>Wait before the test</dt>
      <dd>
        <b>{thermal?.wait_s == null ? "not determined" : thermal.wait_s === 0 ? "none" : hoursOrMinutes(thermal.wait_s)}</b>
      </dd>
      {thermal && (
        <>
          <dt>until it looks like no more than</dt>
          <dd>{rateWords(system, thermal.limit_m3_per_s)}</dd>
        </>
      )}
      <dt>Looks like at first</dt>
      <dd>
        {thermal && thermal.at_start_m3_per_s === null
          ? "no bound"
          : rateWords(system, thermal?.at_start_m3_per_s ?? null)}
      </dd>
      <dt>Shut, by a degree</dt>
      <dd>
        {line.pressure_test.per_degree_pa_per_k === null
          ? "not determined"
          : withUnit("per degree", system, line.pressure_test.per_degree_pa_per_k)}
      </dd>
      <dt>Held after the pump stops</dt>
      <dd>{pressure(line.held_pressure_gauge_pa)}</dd>
      <dt>Volume to the dispensers</dt>
      <dd>
        {amount(system, line.volume_m3)}&nbsp;{unitOf("volume", system)}
      </dd>
      {line.pressure_test.drop_pa !== null && (
        <>
          <dt>Drop in the test</dt>
          <dd>{pressure(line.pressure_test.drop_pa)}</dd>
          <dt>by temperature alone</dt>
          <dd>{pressure(line.pressure_test.tight_drop_pa)}</dd>
          <dt>by the leak alone</dt>
          <dd>{pressure(line.pressure_test.leak_drop_pa)}</dd>
        </>
      )}
    </dl>
  );
}
