import { capital } from "../../../draw/words";
import { narrow } from "../../../state/station";
import { Letter } from "../../parts/Letter";
import { choiceA, choiceB } from "./state";
import { noChoice, type DropView } from "./view";

interface ChoiceProps {
  view: DropView;
  letter: "A" | "B";
  value: string;
  onChoose: (name: string) => void;
}

function Choice({ view, letter, value, onChoose }: ChoiceProps) {
  return (
    <select class="btn" aria-label={`Choice ${letter}`} value={value} onChange={(e) => onChoose(e.currentTarget.value)}>
      {view.document.result.runs.map((r) => (
        <option value={r.name} key={r.name}>
          {capital(r.name)}
        </option>
      ))}
      {letter === "B" && <option value={noChoice}>No second choice</option>}
    </select>
  );
}

/** The choice A: one of the runs. */
export const HeadA = ({ view }: { view: DropView }) => (
  <header>
    <Letter of="A" />
    {narrow.value ? (
      <p>{view.a.words}</p>
    ) : (
      <Choice view={view} letter="A" value={view.a.run.name} onChoose={(name) => (choiceA.value = name)} />
    )}
  </header>
);

/** The choice B: another one, or none. */
export const HeadB = ({ view }: { view: DropView }) => (
  <header>
    <Letter of="B" />
    {narrow.value ? (
      <p>{view.b?.words ?? "No second choice"}</p>
    ) : (
      <Choice view={view} letter="B" value={view.b?.run.name ?? noChoice} onChoose={(name) => (choiceB.value = name)} />
    )}
  </header>
);
