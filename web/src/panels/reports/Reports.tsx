import { useEffect, useRef, useState } from "preact/hooks";
import { units } from "../../state/look";
import { narrow } from "../../state/station";
import { ErrorWords, Note } from "../parts/Note";
import { Seg } from "../parts/Seg";
import { Head } from "../shell/Shell";
import { Cells } from "./Cells";
import { usualPaper, wanted } from "./choice";
import type { Paper } from "./documents";
import { Download } from "./Download";
import { HandedOver } from "./HandedOver";
import { Preview, showSection } from "./Preview";
import { Sections } from "./Sections";
import { choices, followReport, kept, old, page, problem, type Problem } from "./state";

const paperWords: Record<Paper, string> = { letter: "Letter", a4: "A4" };

const Trouble = ({ problem: p }: { problem: Problem }) => (
  <Note tone="bad" role="alert">
    <ErrorWords {...p} />
  </Note>
);

function Nothing() {
  return (
    <div class="empty">
      <h2>No section is in the report</h2>
      <p>Tick at least one; the page then stands here as it is printed.</p>
      <button type="button" class="btn go edit" onClick={() => (kept.value = { ...kept.value, out: [] })}>
        Tick all
      </button>
    </div>
  );
}

/** The place of the page while it is made for the first time. */
function Waiting() {
  return (
    <div class="paper waiting" aria-hidden="true">
      <i class="skel" />
      <i class="skel" />
      <i class="skel" />
      <i class="skel" />
    </div>
  );
}

export function Reports() {
  const frame = useRef<HTMLIFrameElement>(null);
  const [notMade, setNotMade] = useState<Problem | null>(null);
  useEffect(followReport, []);
  const all = choices.value;
  const ask = all && wanted(all, kept.value, units.value);
  const paper = kept.value.paper ?? usualPaper(units.value);
  const pdfHint = all && !all.pdf.available ? all.pdf.hint : null;
  return (
    <>
      <Head
        title="Reports"
        about={narrow.value ? "What is in the report" : "Tick the sections, fill in the title cells, print"}
      >
        <Download wanted={ask} choices={all} onProblem={setNotMade} />
      </Head>
      {problem.value && <Trouble problem={problem.value} />}
      {notMade && <Trouble problem={notMade} />}
      <div class="reps">
        <div class="rl" role="group" aria-label="What is in the report" tabIndex={narrow.value ? 0 : undefined}>
          {all ? (
            <>
              <Sections choices={all} onShow={(id) => showSection(frame.current, id)} />
              <Cells cells={all.cells} />
              <HandedOver />
            </>
          ) : (
            !problem.value && <Waiting />
          )}
        </div>
        <div class="rp">
          <div class="pager">
            <b>Preview</b>
            <span class="dim" role="status">
              {all &&
                ask &&
                (old.value
                  ? "being made anew"
                  : `${paperWords[paper]}, white paper, ${units.value === "us" ? "US" : "SI"} units`)}
            </span>
            <span class="sp" />
            {!narrow.value && (
              <Seg
                label="Paper"
                value={paper}
                onChange={(p) => (kept.value = { ...kept.value, paper: p })}
                options={(["letter", "a4"] as const).map((p) => ({ value: p, text: paperWords[p] }))}
              />
            )}
          </div>
          {pdfHint && (
            <Note tone="info" class="edit">
              No PDF can be made here, for the program that sets pages is not installed: {pdfHint}.
            </Note>
          )}
          {all && !ask ? (
            <Nothing />
          ) : page.value ? (
            <Preview html={page.value} old={old.value} frame={frame} />
          ) : (
            !problem.value && <Waiting />
          )}
        </div>
      </div>
    </>
  );
}
