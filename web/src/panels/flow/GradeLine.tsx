import type { ErrorAnswer } from "../../api/types";
import { figure, unitOf, withUnit } from "../../draw/numbers";
import { chosenHose, openHoses } from "../../state/hoses";
import { units } from "../../state/look";
import { Drawing } from "../parts/Drawing";
import { shownHose } from "./answers";
import { drawn, systemIn, type Choice } from "./choice";
import { Scroll } from "../parts/Scroll";
import { Letter } from "../parts/Letter";
import { Aged, Behind, NoAnswer, Remarks } from "./pieces";
import { errorOf, type HoseTold } from "./told/documents";

/** The grade line to the hose as the engine draws it, and its numbers. */
export function GradeLine(props: { choice: Choice }) {
  const { choice } = props;
  const u = units.value;
  const answer = drawn(choice, 1);
  const hose = shownHose(systemIn(choice), chosenHose.value);
  const error = errorOf(answer);
  const points = hose?.grade_line ?? [];
  return (
    <section class="chartbox">
      <h2>
        {choice.of && <Letter of={choice.of} />} Grade line{hose ? ` to ${hose.id}` : ""}
      </h2>
      <Remarks answer={answer} />
      <Aged as={choice.as}>
        {error ? (
          <NoAnswer answer={withoutCourse(hose) ?? error} />
        ) : (
          <Scroll label="Drawing" class="plate">
            <Drawing answer={answer} label={gradeWords(hose)} />
          </Scroll>
        )}
        {points.length > 0 && (
          <Behind title="Numbers of the grade line">
            <table class="tbl">
              <thead>
                <tr>
                  <th scope="col">Place</th>
                  <th scope="col">Along the course, {unitOf("length", u)}</th>
                  <th scope="col">Pipe, {unitOf("length", u)}</th>
                  <th scope="col">Grade line, {unitOf("length", u)}</th>
                  <th scope="col">Pressure, {unitOf("pressure", u)} gauge</th>
                </tr>
              </thead>
              <tbody>
                {points.map((p, i) => (
                  <tr key={i}>
                    <th scope="row">{p.part ? `${p.place}, ${p.part}` : p.place}</th>
                    <td>{figure("length", u, p.distance_m)}</td>
                    <td>{figure("length", u, p.elevation_m)}</td>
                    <td>{figure("length", u, p.grade_m)}</td>
                    <td>{figure("pressure", u, p.pressure_gauge_pa)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Behind>
        )}
      </Aged>
    </section>
  );
}

/** Why there is no course where no hose is open, or a shut one was chosen. */
function withoutCourse(hose: HoseTold | null): ErrorAnswer | null {
  if (hose && !hose.open) return { error: `${hose.id} is shut`, hint: "Open it, or choose another hose." };
  if (openHoses.value.length) return null;
  return { error: "No hose is open, so there is no course to show", hint: "Open one in the table." };
}

function gradeWords(hose: HoseTold | null): string {
  if (!hose) return "Grade line";
  const known = hose.grade_line.filter((p) => p.pressure_gauge_pa !== null);
  const told = known.map((p) => `${p.part ?? p.place} ${withUnit("pressure", units.value, p.pressure_gauge_pa)}`);
  return `Grade line to ${hose.id}. Gauge pressure along the course: ${told.join(", ")}.`;
}
