import { useEffect, useRef, useState } from "preact/hooks";
import { Seg } from "../parts/Seg";
import type { Duty } from "./documents";
import { recordTest } from "./entering";
import { subjectsOf } from "./rows";
import { lastBy } from "./state";

type Outcome = "passed" | "failed";

/** Asks for day, outcome and tester of a test, and stores it. */
export function RecordTest(props: { duties: readonly [Duty, ...Duty[]]; today: string; onEnd: (stored: boolean) => void }) {
  const { duties, today } = props;
  const [of, setOf] = useState("");
  const [day, setDay] = useState(today);
  const [outcome, setOutcome] = useState<Outcome>("passed");
  const [by, setBy] = useState(lastBy.value);
  const [problem, setProblem] = useState("");
  const [busy, setBusy] = useState(false);
  const box = useRef<HTMLFormElement>(null);
  useEffect(() => box.current?.querySelector<HTMLElement>("select, input")?.focus(), []);
  const looked = duties[0].proof?.records === "inspections";
  const store = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    const chosen = of ? duties.filter((d) => d.id === of) : duties;
    lastBy.value = by.trim();
    const why = await recordTest(chosen, { day, passed: outcome === "passed", by: by.trim() });
    setBusy(false);
    if (why === null) props.onEnd(true);
    else setProblem(why);
  };
  const words: Record<Outcome, string> = looked ? { passed: "In order", failed: "Not in order" } : { passed: "Passed", failed: "Failed" };
  return (
    <form
      ref={box}
      class="record edit"
      aria-label={`Record: ${duties[0].what}`}
      aria-busy={busy}
      onSubmit={(e) => void store(e)}
      onKeyDown={(e) => {
        if (e.key === "Escape") props.onEnd(false);
      }}
    >
      {duties.length > 1 && (
        <label>
          <span>Part</span>
          <select class="btn" value={of} onChange={(e) => setOf(e.currentTarget.value)}>
            <option value="">All {duties.length}</option>
            {duties.map((d) => (
              <option key={d.id} value={d.id}>
                {d.subject}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        <span>Day</span>
        <span class="in">
          <input type="date" value={day} max={today} required onInput={(e) => setDay(e.currentTarget.value)} />
        </span>
      </label>
      <div class="outcome">
        <span>Result</span>
        <Seg
          label="Result"
          value={outcome}
          onChange={setOutcome}
          options={(["passed", "failed"] as const).map((value) => ({ value, text: words[value] }))}
        />
      </div>
      <label>
        <span>By</span>
        <span class="in">
          <input value={by} placeholder="who tested" autocomplete="off" spellcheck={false} onInput={(e) => setBy(e.currentTarget.value)} />
        </span>
      </label>
      {problem && (
        <p class="problem" role="alert">
          {problem} Nothing was stored.
        </p>
      )}
      <div class="do">
        <button type="submit" class="btn go" disabled={busy} aria-label={`Store it: ${subjectsOf(duties) || "whole station"}`}>
          Store it
        </button>
        <button type="button" class="btn" onClick={() => props.onEnd(false)}>
          Cancel
        </button>
      </div>
    </form>
  );
}
