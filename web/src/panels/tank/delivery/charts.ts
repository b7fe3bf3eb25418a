/** What the charts of a delivery draw, and its words. Nothing here knows of the page. */
import { finalOf, leastOf, mostOf } from "../../../draw/curve";
import { figure, withUnit, type UnitSystem } from "../../../draw/numbers";
import type { Drawn, Limit } from "../../replay/Chart";
import { sidesOf } from "../../replay/view";
import { decimalsFor, followedOf, type Followed } from "./rows";
import { spaceOf } from "./trace";
import type { DropView } from "./view";

/** Drop rate, pressures and levels over time. */
export interface DrawnCourse extends Drawn {
  name: string;
  followed: Followed;
}

const full: readonly number[] = [0.9, 0.95];

function limitsOf(view: DropView, name: string, units: UnitSystem): Limit[] {
  if (name.startsWith("full ")) return full.map((at) => ({ at, words: `${figure("share", units, at, 0)}\u00A0%` }));
  if (!name.startsWith("pressure ")) return [];
  const settings = sidesOf(view).flatMap(
    (s) => s.run.ullages.find((u) => `pressure ${spaceOf(u)}` === name)?.vent_opens_at_pa ?? [],
  );
  return [...new Set(settings)].map((at) => ({ at, words: `Vent opens at ${withUnit("vapor pressure", units, at)}` }));
}

const label = (one: Followed) =>
  one.what === "vapor pressure" ? one.label.replace("space", "space pressure") : one.label;

export function drawnOf(view: DropView, units: UnitSystem): DrawnCourse[] {
  return followedOf(view.a.run)
    .filter((one) => ["flow", "vapor pressure", "share"].includes(one.what))
    .flatMap((one) => {
      const courses = sidesOf(view).flatMap(({ letter, trace }) => {
        const course = trace.courses.get(one.name);
        return course ? [{ letter, course }] : [];
      });
      if (!courses.length) return [];
      return [
        {
          name: one.name,
          followed: one,
          label: label(one),
          what: one.what,
          courses,
          limits: limitsOf(view, one.name, units),
        },
      ];
    });
}

/** A chart in words, for those who do not see it. */
export function chartWords(drawn: DrawnCourse, units: UnitSystem): string {
  const said = (si: number | null) => withUnit(drawn.what, units, si, decimalsFor(drawn.followed, units, si ?? 0));
  const each = drawn.courses.map(
    ({ letter, course }) =>
      `${letter} runs from ${said(leastOf(course))} to ${said(mostOf(course))} and ends at ${said(finalOf(course))}`,
  );
  return `${drawn.label} over time: ${each.join("; ")}.`;
}
