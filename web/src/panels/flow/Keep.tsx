import { useEffect, useState } from "preact/hooks";
import { keepFlow } from "../../state/hoses";
import { units } from "../../state/look";
import { narrow } from "../../state/station";
import { otherFlow, readKeep } from "./told/entry";

/** The flow that every open hose is to keep; empty: none is asked for. */
export function Keep() {
  const [typed, setTyped] = useState(keepFlow.value);
  const [problem, setProblem] = useState("");
  useEffect(() => {
    setTyped(keepFlow.value);
    setProblem("");
  }, [keepFlow.value]);
  if (narrow.value) return <p class="words">Flow to keep: {keepFlow.value || "none asked for"}.</p>;
  const commit = () => {
    const read = readKeep(typed, units.value);
    if ("problem" in read) {
      setProblem(`${read.problem} Kept ${keepFlow.value || "none"}.`);
      return;
    }
    keepFlow.value = read.text;
    setTyped(read.text);
    setProblem("");
  };
  return (
    <div class="field keep">
      <label for="keep-flow">Flow to keep at every open hose</label>
      <span class={`in${problem ? " bad" : ""}`}>
        <input
          id="keep-flow"
          value={typed}
          placeholder="none"
          autocomplete="off"
          aria-describedby="keep-flow-hint"
          aria-invalid={problem !== ""}
          onInput={(e) => setTyped(e.currentTarget.value)}
          onBlur={commit}
          onKeyDown={(e) => {
            if (e.key === "Enter") commit();
            if (e.key !== "Escape") return;
            setTyped(keepFlow.value);
            setProblem("");
          }}
        />
      </span>
      <span id="keep-flow-hint" class={`hint${problem ? " bad" : ""}`} role={problem ? "alert" : undefined}>
        {problem || otherFlow(keepFlow.value, units.value)}
      </span>
    </div>
  );
}
