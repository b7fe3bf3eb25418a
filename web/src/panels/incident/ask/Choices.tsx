import { capital } from "../../../draw/words";
import { unquoted } from "../../../state/entry";
import { narrow, station } from "../../../state/station";
import { choiceA, choiceB, twoChoices, type Choice } from "../answer/choice";
import type { IncidentDocument } from "../answer/documents";
import { Entry } from "./Entry";
import { Letter } from "../../parts/Letter";
import { said } from "./Setup";
import { barrierWords, type View } from "../answer/view";

const runKey = "run ";

/** Barriers that are there and could fail to act, each once. */
const canFail = (document: IncidentDocument) => [
  ...new Set(document.result.barriers.filter((b) => b.state !== "not there").map((b) => b.barrier)),
];

interface HeadProps {
  document: IncidentDocument;
  view: View | null;
}

/** The choice A: one of the runs. */
export function HeadA({ document, view }: HeadProps) {
  return (
    <header>
      <Letter of="A" />
      {narrow.value ? (
        <p>{view?.a.words}</p>
      ) : (
        <select
          class="btn"
          aria-label="Choice A"
          value={view?.a.run.name}
          onChange={(e) => (choiceA.value = { is: "run", name: e.currentTarget.value })}
        >
          {document.result.runs.map((r) => (
            <option value={r.name}>{capital(r.name)}</option>
          ))}
        </select>
      )}
    </header>
  );
}

const keyOf = (choice: Choice | null, view: View | null) => {
  if (!twoChoices.value) return "none";
  if (choice && choice.is !== "run") return choice.is;
  return view?.b ? runKey + view.b.run.name : "none";
};

function choose(key: string, document: IncidentDocument) {
  twoChoices.value = key !== "none";
  if (key === "dead") choiceB.value = { is: "dead", barrier: canFail(document)[0] ?? "", time: "" };
  else if (key === "edit") choiceB.value = { is: "edit", path: "", value: "" };
  else if (key !== "none") choiceB.value = { is: "run", name: key.slice(runKey.length) };
}

/** The choice B: a run with a barrier taken away, a barrier that does not act, another value of the station. */
export function HeadB({ document, view, problem }: HeadProps & { problem: string | null }) {
  const b = choiceB.value;
  if (narrow.value) {
    return (
      <header>
        <Letter of="B" />
        <p>{view?.b ? view.b.words : "No second choice"}</p>
      </header>
    );
  }
  return (
    <header>
      <Letter of="B" />
      <select
        class="btn"
        aria-label="Choice B"
        value={keyOf(b, view)}
        onChange={(e) => choose(e.currentTarget.value, document)}
      >
        <optgroup label="As computed">
          {document.result.runs.map((r) => (
            <option value={runKey + r.name}>{capital(r.name)}</option>
          ))}
        </optgroup>
        <optgroup label="Something else">
          {canFail(document).length > 0 && <option value="dead">A barrier that does not act</option>}
          <option value="edit">Another value of the station</option>
          <option value="none">No second choice</option>
        </optgroup>
      </select>
      {b?.is === "dead" && twoChoices.value && <Dead choice={b} document={document} />}
      {b?.is === "edit" && twoChoices.value && <Changed choice={b} />}
      {problem && twoChoices.value && b?.is !== "run" && <p class="wrong">{problem}</p>}
    </header>
  );
}

type DeadChoice = Extract<Choice, { is: "dead" }>;

function Dead({ choice, document }: { choice: DeadChoice; document: IncidentDocument }) {
  return (
    <div class="more">
      <label class="entry">
        <span>Barrier</span>
        <select
          class="btn"
          value={choice.barrier}
          onChange={(e) => (choiceB.value = { ...choice, barrier: e.currentTarget.value })}
        >
          {canFail(document).map((b) => (
            <option value={b}>{barrierWords(b)}</option>
          ))}
        </select>
      </label>
      <Entry
        label="For"
        value={choice.time}
        placeholder="to the end"
        hint="A time, as 2 h or 90 s. Empty: to the end."
        onCommit={(time) => (choiceB.value = { ...choice, time })}
      />
    </div>
  );
}

type EditChoice = Extract<Choice, { is: "edit" }>;

function Changed({ choice }: { choice: EditChoice }) {
  const fields = station.value?.parts.flatMap((p) => p.fields) ?? [];
  const now = fields.find((f) => f.path === choice.path)?.text;
  return (
    <div class="more">
      <Entry
        label="Value"
        value={choice.path}
        placeholder="a path, as dispenser.D1..."
        list={fields.map((f) => f.path)}
        hint="Path of a value in the station's file. It is tried, not saved."
        onCommit={(path) => (choiceB.value = { ...choice, path })}
      />
      <Entry
        label={now ? `Instead of ${said(unquoted(now))}` : "Becomes"}
        value={choice.value}
        placeholder="as 10 s"
        onCommit={(value) => (choiceB.value = { ...choice, value })}
      />
    </div>
  );
}

