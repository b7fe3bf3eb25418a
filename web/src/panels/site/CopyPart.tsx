import { useEffect } from "preact/hooks";
import { freshId } from "../../state/entry-blocks";
import type { TableKey } from "../../api/types";
import { station } from "../../state/station";
import { copying, copyWithLines, feedsOf, nextPlace, textAt, type Feed } from "./adding";
import { focusProperties } from "./AddPart";
import { TableForm } from "./entry/TableForm";

const key = (name: string, kind: string, help: string, more: Partial<TableKey> = {}): TableKey => ({
  key: name, kind, table: null, required: false, choices: null, help, ...more,
});

/** What stands in front of a feed's values: "regular" of "regular.from". */
const named = (feed: Feed) => (feed.inlet.product ?? feed.inlet.id).replaceAll(".", " ");

/** A dispenser's copy with hoses and inlets, and the lines that are to feed it; stands in place of the properties. */
export function CopyPart() {
  useEffect(() => focusProperties, []);
  const part = copying.value;
  const s = station.value;
  if (!part || !s) return null;
  const feeds = feedsOf(part);
  const taken = s.parts.map((p) => p.id);
  const start: Record<string, string> = { id: freshId(taken, part.id), position: nextPlace(part, s.parts) ?? "" };
  for (const feed of feeds) {
    const branch = s.parts.find((p) => p.kind === "branch" && p.id === feed.from);
    const measured = part.position !== null && (branch === undefined || branch.position !== null);
    start[`${named(feed)}.from`] = branch ? feed.from : feed.inlet.id;
    start[`${named(feed)}.length`] = measured ? "" : textAt(feed.line, "length");
  }
  const places = s.parts.filter((p) => ["pump", "branch", "inlet"].includes(p.kind));
  const sameProduct = (feed: Feed) =>
    places.filter((p) => !p.product || p.product === feed.inlet.product).map((p) => p.id);
  const keys = [
    key("id", "id", "Name of the copy.", { required: true }),
    ...(part.position ? [key("position", "position", "Where it stands.")] : []),
    ...feeds.flatMap((feed) => [
      key(
        `${named(feed)}.from`,
        "reference",
        `Where the line to its ${named(feed)} comes from. Like ${feed.line.id} in all else.`,
        { choices: [...new Set(sameProduct(feed))] },
      ),
      key(`${named(feed)}.length`, "length", "Left empty, it is taken from the positions of its two ends."),
    ]),
  ];
  return (
    <aside class="insp" aria-label={`Copy of ${part.id}`}>
      <div class="top one">
        <div>
          <p class="over">With its inlets and hoses</p>
          <h2>Copy of {part.id}</h2>
        </div>
      </div>
      <TableForm
        key={part.path}
        id="copy"
        keys={keys}
        start={start}
        verb={`Duplicate ${part.id}`}
        about={
          `Each inlet gets a line like that of ${part.id}. ` +
          "Where no place is stated that it comes from, none is added."
        }
        focus="position"
        onCancel={() => (copying.value = null)}
        onSubmit={(values) => {
          const typed = (name: string) => values.find((v) => v.key === name)?.typed.trim() ?? "";
          return copyWithLines(part, {
            id: typed("id"),
            place: typed("position"),
            feeds: feeds.map((feed) => ({
              feed, from: typed(`${named(feed)}.from`), length: typed(`${named(feed)}.length`),
            })),
          });
        }}
      />
    </aside>
  );
}
