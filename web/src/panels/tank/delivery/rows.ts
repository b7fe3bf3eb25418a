/** The table of the two choices at the playhead. Nothing here knows of the page. */
import { clockText } from "../../../draw/clock";
import { amount, amountDecimals, figure, unitOf, valueIn, type Quantity, type UnitSystem } from "../../../draw/numbers";
import { sidesOf } from "../../replay/view";
import type { DeliveryRun } from "./documents";
import { at, restingAt, returnedOf, spaceOf, ventedOf } from "./trace";
import type { DropSide, DropView } from "./view";

export interface Followed {
  /** Of its course in a trace. */
  name: string;
  label: string;
  what: Quantity;
  /** It rests as it is when the run is over. */
  rests: boolean;
}

const of = (label: string, which: string, several: boolean) => (several ? `${label}, ${which}` : label);

/** What the two choices are followed by. */
export function followedOf(run: DeliveryRun): Followed[] {
  const spaces = run.ullages.map(spaceOf);
  const tanks = run.tanks.map((t) => t.tank);
  const several = (list: readonly string[]) => list.length > 1;
  return [
    { name: "vented", label: "Vapor out of the vent", what: "volume", rests: false },
    { name: "returned", label: "Vapor back to the truck", what: "volume", rests: false },
    { name: "rate", label: "Drop rate", what: "flow", rests: false },
    ...spaces.map((s): Followed => {
      return {
        name: `pressure ${s}`,
        label: of("Vapor space", s, several(spaces)),
        what: "vapor pressure",
        rests: false,
      };
    }),
    ...tanks.map((t): Followed => {
      return { name: `full ${t}`, label: several(tanks) ? `${t} full` : "Full", what: "share", rests: true };
    }),
    { name: "left", label: "Left in the truck", what: "volume", rests: true },
  ];
}

export function decimalsFor(one: Followed, units: UnitSystem, si: number): number {
  if (one.name === "left" || one.what === "flow") return 0;
  if (one.what === "volume") return amountDecimals(valueIn("volume", units, si));
  return one.what === "vapor pressure" && units === "si" ? 0 : 1;
}

const valueOf = (one: Followed, side: DropSide, t: number) => (one.rests ? restingAt : at)(side.trace, one.name, t);

/** A value as it is shown, or why there is none, in a word. */
export function shownAt(one: Followed, side: DropSide, t: number, units: UnitSystem): string {
  const si = valueOf(one, side, t);
  if (si !== null) return figure(one.what, units, si, decimalsFor(one, units, si));
  return t > side.trace.end ? "ended" : "not determined";
}

export interface Row {
  name: string;
  label: string;
  shown: string[];
  /** Which of them are words or times, and set small. */
  words: boolean[];
}

const isWord = (text: string) => /^[a-z]/.test(text) || /[a-z]$/.test(text);
const row = (name: string, label: string, shown: string[]): Row => ({ name, label, shown, words: shown.map(isWord) });

const remaining = (side: DropSide, t: number) => (t >= side.trace.end ? "ended" : clockText(side.trace.end - t));

/** The table at a time. */
export function rowsAt(view: DropView, t: number, units: UnitSystem): Row[] {
  const sides = sidesOf(view);
  const followed = followedOf(view.a.run).map((one) =>
    row(
      one.name,
      `${one.label}, ${unitOf(one.what, units)}`,
      sides.map((s) => shownAt(one, s, t, units)),
    ),
  );
  return [
    ...followed,
    row(
      "to finish",
      "Time to finish",
      sides.map((s) => remaining(s, t)),
    ),
  ];
}

/** What stands at the end, whatever the playhead. */
export function finalRows(view: DropView, units: UnitSystem): Row[] {
  const sides = sidesOf(view);
  const volume = (label: string, value: (run: DeliveryRun) => number | null) =>
    row(
      label,
      `${label}, ${unitOf("volume", units)}`,
      sides.map((s) => {
        const si = value(s.run);
        return si === null ? "not determined" : amount(units, si);
      }),
    );
  return [
    row(
      "takes",
      "It takes",
      sides.map((s) => clockText(s.run.time_s)),
    ),
    volume("Out of the vent by the end", ventedOf),
    volume("Back to the truck by the end", returnedOf),
  ];
}
