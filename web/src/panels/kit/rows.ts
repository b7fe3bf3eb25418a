/** What the sheet shows of schedule and calendar: duties beside the parts that they are of, and their words. Nothing here
 * knows of the page. */
import { dateOf, daysBetween, daysIn, dayWords } from "../../draw/days";
import { digits, figure, unitOf, valueIn, type UnitSystem } from "../../draw/numbers";
import { capital, count, sentence } from "../../draw/words";
import { dutyStates, type Duty, type DutyState, type KitRow, type Proof } from "./documents";

/** Equal parts at one stop with all that comes back for them; without parts, one thing that comes back for the station. */
export interface Row {
  key: string;
  parts: KitRow | null;
  duties: Duty[];
}

/** Rows of a stop of the course; 12: of the whole station. */
export interface StopRows {
  number: number;
  name: string;
  rows: Row[];
}

const wholeStation = { number: 12, name: "whole station" };

/** A part of a duty's own place that its test is of. */
const testedPart: Readonly<Record<string, string>> = { sensor: "sump-sensor" };

/** The row that a duty belongs to: that of the part at its place, else of the nearest part around it. */
function rowOf(duty: Duty, rows: readonly KitRow[]): KitRow | null {
  const { path, proof } = duty;
  if (!path) return null;
  const kind = testedPart[proof?.kind ?? ""];
  const within = rows.find((row) => row.kind === kind && row.parts.some((part) => part.startsWith(`${path}.`)));
  if (within) return within;
  let best: { row: KitRow; length: number } | null = null;
  for (const row of rows) {
    for (const part of row.parts) {
      const around = path === part || path.startsWith(`${part}.`);
      if (around && part.length > (best?.length ?? -1)) best = { row, length: part.length };
    }
  }
  return best?.row ?? null;
}

/** What is due first of a state stands first; the state that asks for most before the others. */
const byUrgency = (a: Duty, b: Duty) =>
  dutyStates.indexOf(a.state) - dutyStates.indexOf(b.state) || (a.days_left ?? 0) - (b.days_left ?? 0);

/** All parts and all duties, each once, in the order of the course. */
export function stopsOf(rows: readonly KitRow[], duties: readonly Duty[]): StopRows[] {
  const placed = rows.map((parts): Row => ({ key: parts.parts[0] ?? parts.what, parts, duties: [] }));
  const ofStation: Row[] = [];
  for (const duty of [...duties].sort(byUrgency)) {
    const row = placed.find((one) => one.parts === rowOf(duty, rows));
    const alike = ofStation.find((one) => one.duties.some((d) => d.set === duty.set && d.rule === duty.rule));
    if (row) row.duties.push(duty);
    else if (alike) alike.duties.push(duty);
    else ofStation.push({ key: duty.id, parts: null, duties: [duty] });
  }
  const stops: StopRows[] = [];
  const stopOf = ({ number, name }: { number: number; name: string }) => {
    const there = stops.find((s) => s.number === number);
    if (there) return there;
    stops.push({ number, name, rows: [] });
    return stops.at(-1) as StopRows;
  };
  for (const row of placed) stopOf(row.parts?.stop ?? wholeStation).rows.push(row);
  if (ofStation.length) stopOf(wholeStation).rows.push(...ofStation);
  return stops.sort((a, b) => a.number - b.number);
}

/** Duties of one rule that share state and day: one sentence. */
export function grouped(duties: readonly Duty[]): [Duty, ...Duty[]][] {
  const keyOf = (d: Duty) => [d.set, d.rule, d.what, d.state, d.due, d.last_done, d.reason].join("|");
  const groups = new Map<string, [Duty, ...Duty[]]>();
  for (const duty of [...duties].sort(byUrgency)) {
    const same = groups.get(keyOf(duty));
    if (same) same.push(duty);
    else groups.set(keyOf(duty), [duty]);
  }
  return [...groups.values()];
}

export const stateWords: Record<DutyState, string> = {
  failed: "Failed",
  overdue: "Overdue",
  "due soon": "In 90 days",
  later: "Later",
  "no record": "No record",
  "not determined": "May apply",
};
/** The words of a state where other than 90 days are looked ahead. */
export const markWords = (state: DutyState, within: number) =>
  state === "due soon" ? `In ${within} days` : stateWords[state];

/** What a row has next: the state of the duty that asks for most, its day, and what else there is. */
export interface Next {
  state: DutyState | null;
  words: string;
  more: string;
}
export function nextOf(duties: readonly Duty[]): Next {
  const [first, ...rest] = [...duties].sort(byUrgency);
  if (!first) return { state: null, words: "no test asked", more: "" };
  const known = first.state === "overdue" || first.state === "due soon" || first.state === "later";
  const words = first.failed ? dayWords(first.failed) : known && first.due ? dayWords(first.due) : "not determined";
  const others = rest.filter((d) => d.state !== first.state);
  const counts = dutyStates
    .map((state) => [state, others.filter((d) => d.state === state).length] as const)
    .filter(([, n]) => n > 0)
    .map(([state, n]) => `${n} ${state === "not determined" ? "may apply" : state}`);
  return { state: first.state, words, more: counts.join(", ") };
}

/** A mark in the twelve months, at a share of their width. */
export interface Mark {
  at: number;
  day: string;
  state: DutyState;
}

/** Where a day lies in the months, from 0 to 1 and beyond. */
export function shareOf(day: string, months: readonly string[]): number {
  const at = months.indexOf(day.slice(0, 7));
  const first = months[0];
  if (at < 0) return first !== undefined && day < first ? 0 : 1;
  return (at + (dateOf(day) - 1) / daysIn(day.slice(0, 7))) / Math.max(months.length, 1);
}

/** When a day falls due as seen from another. */
const stateOn = (day: string, today: string, within: number): DutyState => {
  const left = daysBetween(today, day);
  return left < 0 ? "overdue" : left <= within ? "due soon" : "later";
};

function marksOfOne(duty: Duty, today: string, within: number, months: readonly string[]): Mark[] {
  const markAt = (day: string, state: DutyState): Mark => ({ at: shareOf(day, months), day, state });
  // Of what was never done no day is known; of what may not apply the next one says enough.
  if (duty.state === "no record" || (duty.state === "not determined" && !duty.due)) return [markAt(today, duty.state)];
  if (duty.failed) return [markAt(duty.failed, "failed")];
  const days = duty.strip.flatMap((month) => month.days);
  if (duty.state === "overdue" && duty.due) {
    return [markAt(duty.due, "overdue"), ...days.slice(1).map((day) => markAt(day, stateOn(day, today, within)))];
  }
  if (duty.state === "not determined") return duty.due ? [markAt(duty.due, duty.state)] : [];
  return days.map((day) => markAt(day, stateOn(day, today, within)));
}

/** The marks of all duties of a row; of one day the state that asks for most. */
export function marksOf(duties: readonly Duty[], today: string, within: number, months: readonly string[]): Mark[] {
  const byDay = new Map<string, Mark>();
  for (const mark of duties.flatMap((duty) => marksOfOne(duty, today, within, months))) {
    const there = byDay.get(mark.day);
    if (!there || dutyStates.indexOf(mark.state) < dutyStates.indexOf(there.state)) byDay.set(mark.day, mark);
  }
  return [...byDay.values()].sort((a, b) => a.at - b.at);
}

/** What stands in the strip in words where its marks do not say it: no record, or the year of a day beyond it. */
export function stripWords(duties: readonly Duty[], marks: readonly Mark[]): string {
  if (duties.length === 0) return "";
  const known = duties.filter((d) => d.state !== "no record" && (d.state !== "not determined" || d.due));
  if (known.length === 0) return duties.some((d) => d.state === "no record") ? "no record" : "may apply";
  if (marks.length) return "";
  const days = duties.map((d) => d.due).filter((d) => d !== null);
  return days.sort()[0]?.slice(0, 4) ?? "";
}

/** The strip for those who do not see it. */
export function stripSummary(marks: readonly Mark[], within: number): string {
  const dated = marks.filter((m) => m.state !== "no record");
  if (dated.length === 0) return marks.length ? "No record." : "Nothing in these twelve months.";
  const told = dated.slice(0, 3).map((m) => `${dayWords(m.day)}, ${markWords(m.state, within).toLowerCase()}`);
  const more = dated.length - told.length;
  return `${told.join("; ")}${more > 0 ? ` and ${count(more, "more day")}` : ""}.`;
}

/** "Was due 9 Nov 2026, 21 days ago." */
export function dueSentence(duty: Duty): string {
  const left = duty.days_left;
  if (duty.failed) return `Its last test failed on ${dayWords(duty.failed)}.`;
  if (duty.state === "not determined" && duty.reason) return sentence(capital(duty.reason));
  if (duty.due === null || left === null)
    return duty.last_done ? sentence(duty.reason ?? "") : "No record of the last one, so nothing can be said.";
  const day = dayWords(duty.due);
  if (left < 0) return `Was due ${day}, ${count(-left, "day")} ago.`;
  return left === 0 ? "Due today." : `Due ${day}, in ${count(left, "day")}.`;
}

/** "Last done 5 Nov 2026, by the site file." */
export const doneSentence = (duty: Duty) =>
  duty.last_done === null ? "" : `Last done ${dayWords(duty.last_done)}, by the ${duty.done_by ?? "site file"}.`;

/** "T1, T2 and 3 more"; nothing for the station. */
export function subjectsOf(duties: readonly Duty[], most = 4): string {
  const names = duties.map((d) => d.subject).filter((name) => name !== "station");
  if (names.length <= most + 1) return names.join(", ");
  return `${names.slice(0, most).join(", ")} and ${names.length - most} more`;
}

/** "40 CFR 280.40(a)(3), text seen" */
export function clauseWords({ clause, clause_verified: verified }: { clause: string | null; clause_verified: boolean }): string {
  if (!clause) return "Your own wish, no rule";
  return `${clause}, ${verified ? "text seen" : "text to be verified"}`;
}

/** "1 failed, 2 overdue, 5 in 90 days" */
export function headline(duties: readonly Duty[], within: number): string {
  const of = (state: DutyState) => duties.filter((d) => d.state === state).length;
  const failed = of("failed") > 0 ? `${of("failed")} failed, ` : "";
  return `${failed}${of("overdue") || (failed ? "none" : "None")} overdue, ${of("due soon")} in ${within} days`;
}

const sheetNames: Readonly<Record<string, string>> = {
  commissioning: "commissioning",
  "thirty-day": "30-day inspection",
  annual: "annual inspection",
  "return-to-service": "return to service",
  "delivery-card": "delivery card",
  "emergency-card": "emergency card",
};
export const sheetWords = (sheet: string | null) => (sheet ? `Sheet: ${sheetNames[sheet] ?? sheet}.` : "");

/** The first of the sizes, each by itself, and how many more there are. */
export function sizesOf(row: KitRow, most = 3): string[] {
  const shown = row.sizes.map((s) => s.shown);
  return shown.length <= most + 1 ? shown : [...shown.slice(0, most), `${shown.length - most} more`];
}

/** "10", "211 ft", "at least 211 ft" where a run is without a length, "some" */
export function countWords(row: KitRow, units: UnitSystem): string {
  if (row.unit === "each") return row.count === null ? "some" : String(row.count);
  if (row.length_m === null) return "not entered";
  const least = row.runs_without_length > 0 ? "at least " : "";
  return `${least}${digits(valueIn("length", units, row.length_m), units === "us" ? 0 : 1)}\u00A0${unitOf("length", units)}`;
}
/** "in 5 runs", of pipe */
export const runsWords = (row: KitRow) => (row.unit === "length" && row.count !== null ? `in ${count(row.count, "run")}` : "");

/** "27.6 psi"; what to enter stands in the row's own words. */
export const neededWords = (row: KitRow) => row.needed.shown ?? "";

/** "UL 842"; as entered, else by what the part does. */
export const listedWords = (row: KitRow) =>
  row.listed_to.length ? row.listed_to.join(", ") : row.standards.map((s) => s.standard).join(", ") || "–";

/** All that is known of a row's parts beside its cells, in sentences. */
export function detailsOf(row: KitRow, units: UnitSystem): string[] {
  const out = [sentence(row.function)];
  if (row.sizes.length) out.push(`Size as entered: ${row.sizes.map((s) => s.shown).join(", ")}.`);
  const { needed, compatibility: fit } = row;
  if (needed.basis) out.push(`Rating needed: ${needed.shown ?? "not determined"}, ${needed.basis}.`);
  if (needed.missing) out.push(sentence(needed.missing));
  if (row.rating_pressure_gauge_pa !== null) {
    const rating = `${figure("pressure", units, row.rating_pressure_gauge_pa)}\u00A0${unitOf("pressure", units)}`;
    out.push(`Rated ${rating} as entered${row.rating_below_need ? ", which is less than it needs" : ""}.`);
  }
  if (row.listed_to.length) out.push(`Listed to ${row.listed_to.join(", ")} as entered.`);
  for (const s of row.standards) out.push(`To be listed to ${s.standard}, ${s.seen}${s.edition ? ` (${s.edition})` : ""}.`);
  if (fit.product_kinds.length) {
    const how = fit.missing ? `${fit.fit}; ${fit.missing}` : fit.fit;
    out.push(`Compatibility with ${fit.product_kinds.join(", ")}: ${how}.`);
  }
  if (row.not_ordered_because) out.push(`Not ordered for itself: ${row.not_ordered_because}.`);
  return out;
}

/** How ratings were come by, each once: what presses on the part, and the basis. */
export function basesOf(rows: readonly KitRow[]): string[] {
  const told = rows
    .filter((row) => row.needed.basis)
    .map((row) => `${row.needed.bears === "vapor" ? "of vapor" : "of fuel"}: ${row.needed.basis}`);
  return [...new Set(told)].sort();
}

/** What is typed of a test. */
export interface Typed {
  day: string;
  passed: boolean;
  by: string;
}

/** The rows of the records that a test makes, one for each part. */
export function recordRows(duties: readonly Duty[], typed: Typed): { kind: Proof["records"]; rows: Record<string, string>[] } | null {
  const records = duties[0]?.proof?.records;
  if (!records) return null;
  const outcome = records === "tests" ? "passed" : "in_order";
  const rows = duties.flatMap(({ proof }) =>
    proof?.records === records
      ? [
          {
            day: typed.day,
            kind: proof.kind,
            ...(proof.part ? { part: proof.part } : {}),
            [outcome]: typed.passed ? "yes" : "no",
            ...(typed.by ? { by: typed.by } : {}),
          },
        ]
      : [],
  );
  return rows.length === duties.length ? { kind: records, rows } : null;
}

/** As a shell reads it as one word. */
const oneWord = (text: string) => (/^[\w.:/@%+-]+$/.test(text) ? text : `"${text.replace(/["\\$`]/g, "\\$&")}"`);

/** The command that begins a store beside a site file with a test of it: what was found, and when, is left to fill in. */
export function firstRecord(file: string, duties: readonly Duty[]): string {
  const store = file.replace(/toml$/, "db");
  const row = duties.map((duty) => recordRows([duty], { day: "", passed: true, by: "" })).find((made) => made?.kind === "tests")?.rows[0];
  const values = Object.entries(row ? { ...row, day: "YYYY-MM-DD", passed: "yes-or-no" } : {}).map(([column, value]) => `${column}=${oneWord(value)}`);
  return ["forecourse records add", oneWord(store), "tests", ...values].join(" ");
}
