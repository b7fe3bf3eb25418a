import { useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer, Want } from "../../../api/types";
import { figure, unitOf } from "../../../draw/numbers";
import { count, sentence } from "../../../draw/words";
import { useStanding } from "../../../state/ask";
import { units } from "../../../state/look";
import { narrow, recordsRead } from "../../../state/station";
import { Ask } from "../../containment/Ask";
import { Drawing } from "../../parts/Drawing";
import { EmptyArt } from "../../parts/EmptyArt";
import { Note, Refusal } from "../../parts/Note";
import { useWidth } from "../../replay/width";
import { Head } from "../../shell/Shell";
import { asCalledHere } from "../../tank/answer";
import { Requirements } from "../../tank/Requirements";
import { roomOf } from "../../tank/state";
import { Refused, Warnings } from "../Month";
import type { Meter, MeterAnswer, MeterDocument, MetersTold } from "./documents";
import { money, percent } from "./rows";
import { asked, chosenMeter } from "./state";
import { Book, Limits, MeterList, Provings } from "./Tables";

/** Several are parted by semicolons. */
const several = (text: string) => text.split(/\s*;\s*/).filter((t) => t !== "");

function entered(): Record<string, string | string[]> {
  const { prices, yearly, limits, expansion } = asked;
  return {
    ...(prices.value ? { prices: several(prices.value) } : {}),
    ...(yearly.value ? { yearly: several(yearly.value) } : {}),
    ...(limits.value ? { limits: several(limits.value) } : {}),
    ...(expansion.value ? { expansion: expansion.value } : {}),
  };
}

/** Whether each meter tells what it gives, who loses by it, and what the meters explain of the ledger. */
export function Meters() {
  const now = useStanding<MeterAnswer>(() => ({
    after: recordsRead.value,
    wants: [{ study: "meter", units: units.value, ...entered() }],
  }));
  const last = useRef<MetersTold | null>(null);
  const answer = now.answers?.[0];
  if (answer && "document" in answer) last.current = answer;
  const wrong = answer && "error" in answer ? answer : null;
  const ofRecords = wrong && "records" in wrong ? wrong : null;
  const told = ofRecords ? null : last.current;
  const result = told?.document.result;
  return (
    <>
      <Head title="Ledger" about={result ? `${count(result.meters.length, "meter")} proved, ${result.unproved.length} not` : "Meters against a test measure"} />
      <p class="caution">
        <b>A meter is approved and sealed by whom the local authority names.</b> A meter that explains a shortage does not
        cancel a duty to report it.
      </p>
      <Refusal error={now.error} old={told !== null} />
      {wrong && !ofRecords && (
        <Note tone="bad" role="alert">
          {asCalledHere(`${sentence(wrong.error)} ${sentence(wrong.hint)}`.trim())} {told && "What you see is from before."}
        </Note>
      )}
      {ofRecords && <Refused refused={ofRecords} />}
      {!told && !wrong && !now.error && <div class="skel-box" aria-hidden="true" />}
      {told && <Known document={told.document} old={now.age === 2} />}
    </>
  );
}

function Known({ document, old }: { document: MeterDocument; old: boolean }) {
  const [box, width] = useWidth<HTMLDivElement>();
  const { meters, books, limits } = document.result;
  const meter = meters.find((m) => m.hose === chosenMeter.value) ?? meters[0];
  const room = roomOf(width - 32);
  const want: Want = { drawing: "meter-errors", prefix: "meter-errors", width: room, units: units.value, ...entered() };
  const drawn = useStanding<DrawingAnswer | ErrorAnswer>(
    () => (width > 0 && meter ? { after: recordsRead.value, wants: [want] } : null),
    `${width > 0} ${room} ${meter ? "some" : "none"}`,
  );
  return (
    <div class="split ledgerview">
      <div class={`col${old ? " old" : ""}`} ref={box}>
        {!meter && (
          <div class="empty">
            <EmptyArt />
            <h2>No draw of a meter is on record</h2>
            <p>
              With the draws of a proving in <b>provings.csv</b> this view tells the error of each meter, who loses by it, and
              what the meters explain of the ledger.
            </p>
          </div>
        )}
        {meter && (
          <>
            <section class="part" aria-label="Errors">
              <h2>
                Error of each meter, last proving <span class="dim n">rings are draws, the disc their mean; positive tells more than it gives</span>
              </h2>
              <Drawing answer={drawn.answers?.[0]} age={drawn.age} label="Error of each meter with its draws, and the limits" />
              <MeterList meters={meters} findings={document.findings} limits={limits} chosen={meter.hose} />
            </section>
            <section class="part bt" aria-label={`Meter of ${meter.hose}`}>
              <h2>
                Meter of {meter.hose} <span class="dim n">{meter.product}</span>
              </h2>
              {meter.answer.map((words) => (
                <p class="txt" key={words}>
                  {asCalledHere(words)}
                </p>
              ))}
              <Limits meter={meter} limits={limits} findings={document.findings} />
              <Provings meter={meter} />
            </section>
          </>
        )}
        {books.map((book) => (
          <Book book={book} key={book.book} />
        ))}
        <Requirements findings={document.findings.filter((f) => !meter || f.subject === meter.hose)} />
        <p class="txt cautions">{document.cautions.join(" ")}</p>
        <Warnings warnings={document.warnings} />
      </div>
      <Panel meter={meter} unproved={document.result.unproved} />
    </div>
  );
}

const asks = [
  { of: asked.prices, label: "Price", placeholder: "not given" },
  { of: asked.yearly, label: "Sold in a year", placeholder: "by the records" },
  { of: asked.limits, label: "A limit of your own", placeholder: "none" },
  { of: asked.expansion, label: "Expansion of the measure", placeholder: "as recorded" },
] as const;

function Reads({ meter }: { meter: Meter }) {
  const system = units.value;
  const { year } = meter;
  const volume = (si: number | null) =>
    si === null ? "not determined" : `${figure("volume", system, si, 0)}\u00A0${unitOf("volume", system)}`;
  return (
    <dl class="reads">
      <dt>Error</dt>
      <dd>
        <b>{meter.error === null ? "not determined" : `${percent(meter.error)}\u00A0%`}</b>
      </dd>
      <dt>Standard error</dt>
      <dd>{meter.standard_error === null ? "not determined" : `${percent(meter.standard_error)}\u00A0%`}</dd>
      <dt>Sells in a year</dt>
      <dd>{volume(year.sold_m3)}</dd>
      <dt>Told above given in a year</dt>
      <dd>{volume(year.error_m3)}</dd>
      <dt>In money</dt>
      <dd>{money(year) ?? "no price"}</dd>
    </dl>
  );
}

function Panel({ meter, unproved }: { meter: Meter | undefined; unproved: readonly string[] }) {
  const volume = unitOf("volume", units.value);
  const shown = asks.filter(({ of }) => !narrow.value || of.value !== "");
  return (
    <aside class="insp" aria-label="Meters">
      <div class="top one">
        <div>
          <p class="over">Stop 8 of 11</p>
          <h2>{meter ? `Meter of ${meter.hose}` : "Meters"}</h2>
        </div>
      </div>
      {meter && <Reads meter={meter} />}
      {shown.length > 0 && (
        <section aria-label="Asked with">
          <h3 class="grp">Asked with</h3>
          {shown.map(({ of, label, placeholder }) => (
            <Ask key={label} label={label} value={of.value} placeholder={placeholder} onCommit={(t) => (of.value = t.trim())} />
          ))}
          <p class="txt edit">
            One for all, or by name, parted by semicolons: regular=3.20 USD per {volume}; diesel=3.60 USD per {volume}. A limit is
            written county=0.4 %, or county=7 in3 per 5 gal.
          </p>
        </section>
      )}
      {unproved.length > 0 && (
        <>
          <h3 class="grp">Not proved</h3>
          <p class="txt">{unproved.join(", ")}</p>
        </>
      )}
    </aside>
  );
}
