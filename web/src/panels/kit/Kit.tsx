import { monthWords } from "../../draw/days";
import { count, sentence } from "../../draw/words";
import { freshness, useStanding } from "../../state/ask";
import { sheet, units } from "../../state/look";
import { hasKey } from "../../api/client";
import { editable, narrow, recordsRead, station } from "../../state/station";
import { Warnings } from "../ledger/Month";
import type { RecordsTold } from "../ledger/documents";
import { EmptyArt } from "../parts/EmptyArt";
import { ErrorWords, Note, Refusal } from "../parts/Note";
import { Head } from "../shell/Shell";
import type { CalendarAnswer, CalendarDocument, KitAnswer, KitRow } from "./documents";
import { Downloads } from "./Downloads";
import { DuePanel } from "./DuePanel";
import { KitTable } from "./KitTable";
import { firstRecord, stopsOf } from "./rows";

/** Every part by stop with what falls due, and the due list. */
export function Kit() {
  const now = useStanding<KitAnswer | CalendarAnswer>(() => ({
    after: recordsRead.value,
    wants: [{ study: "kit", units: units.value }, { study: "calendar", units: units.value }],
  }));
  const kit = now.answers?.[0] as KitAnswer | undefined;
  const told = now.answers?.[1] as CalendarAnswer | undefined;
  const rows = kit && "document" in kit ? kit.document.result.rows : [];
  const calendar = told && "document" in told ? told : null;
  const duties = calendar?.document.result.duties ?? [];
  const there = rows.length + duties.length > 0;
  const year = calendar && {
    today: calendar.document.options.on,
    within: calendar.document.options.within_days,
    months: calendar.document.result.months,
  };
  return (
    <>
      <Head title="Kit and calendar" about={about(rows, calendar?.document.result.months ?? [])}>
        {there && <Downloads />}
      </Head>
      <Refusal error={now.error} old={there} class="failed" />
      {!now.answers && now.age === 2 && !now.error && <Waiting />}
      {kit && "error" in kit && <None title="No schedule yet" text={`${sentence(kit.error)} ${sentence(kit.hint)}`} />}
      {kit && "document" in kit && !there && (
        <None
          title="No part is listed yet"
          text="Add tanks, pumps, lines and dispensers on the Site sheet; each part then stands here with its size, the rating it needs, and what falls due on it."
        />
      )}
      {there && (
        <div class={`split aged ${freshness(now)}`} aria-busy={now.age === 2}>
          <section class="kitcol" aria-label="Schedule">
            <KitTable stops={stopsOf(rows, duties)} year={year} />
            {kit && "document" in kit && <Closing cautions={kit.document.cautions} notTold={kit.document.result.not_told} />}
          </section>
          {calendar ? (
            <DuePanel calendar={calendar.document} closed={whyClosed(calendar.records, calendar.document)}>
              {calendar.wrong.length > 0 && (
                <Note tone="bad">
                  The records in {calendar.records?.name} cannot be used yet, so none of them counts here. The Ledger sheet tells what to mend.
                </Note>
              )}
              <Warnings warnings={calendar.document.warnings} />
            </DuePanel>
          ) : (
            told && "error" in told && (
              <aside class="insp due" aria-label="Due list">
                <Note tone="bad" role="status">
                  <ErrorWords {...told} />
                </Note>
              </aside>
            )
          )}
        </div>
      )}
    </>
  );
}

function about(rows: readonly KitRow[], months: readonly string[]): string {
  if (!rows.length) return "Every part by stop, and every test that comes back";
  const from = months[0];
  const to = months.at(-1);
  const kinds = `${count(rows.length, "kind")} of part by stop`;
  return from && to ? `${kinds}; what falls due from ${monthWords(from)} to ${monthWords(to)}` : kinds;
}

/** Why no test can be recorded, and how one could; empty: one can. */
function whyClosed(records: RecordsTold | null, document: CalendarDocument) {
  if (narrow.value) return "Tests are recorded on a wider screen.";
  if (!hasKey) return "To read only. To record tests, open the address that the program printed.";
  if (records?.store && editable.value) return "";
  if (records && !records.store)
    return (
      <>
        The records are CSV files, which are not written here. To record tests, make a store of them with{" "}
        <code>forecourse records import</code>, or enter the day in the site file.
      </>
    );
  if (records) return "To read only.";
  return (
    <>
      No records are given. To record tests here, begin a store beside the site file with a first one, as{" "}
      <code>{firstRecord(station.value?.file ?? "station.toml", document.result.duties)}</code>, or enter the day of a test in the site file.
    </>
  );
}

const Closing = (props: { cautions: readonly string[]; notTold: readonly string[] }) => (
  <div class="txt closing">
    {props.notTold.length > 0 && (
      <details>
        <summary>{count(props.notTold.length, "thing")} that an order needs and the file does not tell</summary>
        <ul>
          {props.notTold.map((one) => (
            <li key={one}>{sentence(one)}</li>
          ))}
        </ul>
      </details>
    )}
    <p>{props.cautions.join(" ")}</p>
  </div>
);

const Waiting = () => (
  <div class="split" aria-busy="true">
    <div class="kitcol pad">
      {[0, 1, 2, 3, 4, 5].map((i) => (
        <div key={i} class="skel" />
      ))}
    </div>
  </div>
);

const None = (props: { title: string; text: string }) => (
  <div class="empty">
    <EmptyArt />
    <h2>{props.title}</h2>
    <p>{props.text}</p>
    <button type="button" class="btn go" onClick={() => (sheet.value = "site")}>
      Go to Site
    </button>
  </div>
);
