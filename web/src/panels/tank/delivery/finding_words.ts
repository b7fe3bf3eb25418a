/** A finding of a delivery in a sentence. Nothing here knows of the page. */
import {
  decimalsApart,
  decimalsOf,
  span,
  withUnit,
  type UnitSystem,
} from "../../../draw/numbers";
import { sentence } from "../../../draw/words";
import type { Group } from "../../checks/findings";
import { quantityOf, withShownUnit } from "../../parts/finding";

function valueWords({ findings }: Group, units: UnitSystem): string {
  const { limit } = findings[0];
  const values = findings.map((f) => f.value).filter((v) => v !== null);
  if (!values.length) return "";
  const what = quantityOf(findings[0]);
  const apart = limit === null ? [] : values.map((v) => decimalsApart(what, units, v, limit));
  const decimals = Math.max(decimalsOf(what, units), ...apart);
  const text = span(what, units, Math.min(...values), Math.max(...values), decimals);
  const value = withShownUnit(text, findings[0], units);
  return limit === null ? ` It is ${value}.` : ` It is ${value}, the limit ${withUnit(what, units, limit, decimals)}.`;
}

/** What is asked, of what, the value against the limit, and what to change. */
export function dropFinding(group: Group, units: UnitSystem): string {
  const first = group.findings[0];
  const of = group.findings.map((f) => f.subject).join(", ");
  const more = [first.reason, first.change].filter((text) => text).map((text) => ` ${sentence(text ?? "")}`);
  const by = first.clause
    ? ` ${first.clause}${first.edition && /^\d/.test(first.edition) ? `, ${first.edition}` : ""}.`
    : "";
  return `${first.requirement}: ${of}.${valueWords(group, units)}${more.join("")}${by}`;
}
