import { useEffect, useRef } from "preact/hooks";
import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import { capital, sentence } from "../../draw/words";
import type { Standing } from "../../state/ask";
import { kindName, missingForCourse } from "../../state/entry-kinds";
import { product, select, selection } from "../../state/look";
import { editable, narrow, station } from "../../state/station";
import { Drawing } from "../parts/Drawing";
import { Scroll } from "../parts/Scroll";
import { StatusShape } from "../parts/status";
import { addedBy, addWords, startAdding } from "./adding";
import { cellsOf } from "./course-cells";

/** The section along the course with its profile band; on a narrow screen the band is a list. */
export function Course(props: { now: Standing<DrawingAnswer | ErrorAnswer> }) {
  const answer = props.now.answers?.[0];
  const box = useRef<HTMLDivElement>(null);
  const svg = answer && "svg" in answer ? answer.svg : "";
  useEffect(() => {
    if (narrow.value && box.current) cutBand(box.current);
  }, [svg, narrow.value]);
  const of = `${station.value?.file} ${product.value}`;
  if (answer && "svg" in answer && props.now.age === 0) last = { of, answer };
  const failed = answer && "error" in answer ? answer : null;
  if (failed && last?.of !== of) return <NoCourse answer={failed} />;
  return (
    <>
      {failed && <Before />}
      <Scroll class="secwrap" label="Section along the course" follow={`.cell[data-stop="${selection.value.stop}"]`}>
        <div ref={box} class={failed ? "was" : ""}>
          <Drawing
            answer={failed ? last?.answer : answer}
            age={failed ? 0 : props.now.age}
            label="Section along the course"
            wide
          />
        </div>
      </Scroll>
      {answer && "svg" in answer && answer.remarks.length > 0 && <p class="remarks">{answer.remarks.join(" ")}</p>}
      {svg && narrow.value && <CourseList svg={svg} />}
    </>
  );
}

/** The last section that could be drawn, and of which file and product it is. */
let last: { of: string; answer: DrawingAnswer } | null = null;

/** That the section is an old one; what is wrong stands at the head of the sheet. */
const Before = () => (
  <p class="before" role="status">
    <StatusShape state="not determined" />
    <span>
      <b>As it was before.</b> The numbers in it are old until what stands above is mended.
    </span>
  </p>
);

function AddButton(props: { toAdd: { header: string; start: Record<string, string> } }) {
  const { header, start } = props.toAdd;
  return (
    <button type="button" class="btn go" onClick={() => startAdding(header, null, start)}>
      {addWords(header, start)}
    </button>
  );
}

/** Takes the band off the foot of a drawing: it is told as a list there. */
function cutBand(box: Element) {
  const svg = box.querySelector("svg");
  const tops = [...box.querySelectorAll<SVGGraphicsElement>(".cell[data-stop]")].map((g) => g.getBBox().y);
  const view = svg?.viewBox.baseVal;
  if (!svg || !view || !tops.length) return;
  const height = Math.min(...tops) - 4;
  svg.setAttribute("viewBox", `${view.x} ${view.y} ${view.width} ${height}`);
  svg.removeAttribute("height");
}

function CourseList(props: { svg: string }) {
  return (
    <div class="list-only courselist" role="group" aria-label="The course, stop by stop">
      {cellsOf(props.svg).map((c) => (
        <button
          type="button"
          key={c.stop}
          aria-pressed={selection.value.stop === c.stop}
          onClick={() => select(c.stop, c.part)}
        >
          <i>{c.stop}</i>
          <span>
            {c.name}
            <small>{c.note}</small>
          </span>
          <span class="v">
            {c.value}
            <span class="u">{c.unit}</span>
          </span>
        </button>
      ))}
    </div>
  );
}

/** What is missing, the one thing to do, and what will appear. */
function NoCourse(props: { answer: ErrorAnswer }) {
  const s = station.value;
  if (!s) return null;
  const steps = missingForCourse(s);
  const next = steps.find((one) => !one.done);
  if (!next) {
    const toAdd = addedBy(props.answer.hint);
    return (
      <div class="drawing-none">
        <h2>No section yet</h2>
        <p>
          {sentence(props.answer.error)} {!toAdd && sentence(props.answer.hint)}
        </p>
        <p>When it is mended, the section along the course appears here, with the pressure at each stop.</p>
        {toAdd && editable.value && <AddButton toAdd={toAdd} />}
      </div>
    );
  }
  return (
    <div class="begin">
      <h2>{steps.some((one) => one.done) ? "No section yet" : "An empty station"}</h2>
      <p>
        A course needs seven things. When they are there, the section appears here, with the pressure at each stop.
      </p>
      <ol>
        {steps.map((one) => (
          <li key={one.header} class={one === next ? "next" : ""}>
            <StatusShape state={one.done ? "meets" : "not determined"} />
            <span>
              {capital(kindName(one.header))}
              <span class="vh">{one.done ? ": there" : ": missing"}</span>
            </span>
          </li>
        ))}
      </ol>
      {editable.value && (
        <button type="button" class="btn go" onClick={() => startAdding(next.header)}>
          {addWords(next.header, {})}
        </button>
      )}
    </div>
  );
}
