import { useEffect, useState } from "preact/hooks";
import { api } from "../../api/client";
import { save } from "../../api/save";
import { toast } from "../../state/toast";
import { station } from "../../state/station";
import { fileName } from "./choice";
import type { Choices, Wanted } from "./documents";
import { told, type Problem } from "./state";

/** Seconds since it began, while it runs. */
function useSeconds(running: boolean) {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    setSeconds(0);
    if (!running) return;
    const tick = setInterval(() => setSeconds((s) => s + 1), 1000);
    return () => clearInterval(tick);
  }, [running]);
  return seconds;
}

/** Saves the report as a page and as a PDF; the PDF takes seconds and can be stopped. */
export function Download(props: {
  wanted: Wanted | null;
  choices: Choices | null;
  onProblem: (p: Problem | null) => void;
}) {
  const [running, setRunning] = useState<AbortController | null>(null);
  const seconds = useSeconds(running !== null);
  const { wanted } = props;
  const none = wanted === null;
  const pdfHint = props.choices?.pdf.available === false ? (props.choices.pdf.hint ?? "") : "";
  const make = async (format: "html" | "pdf") => {
    if (!wanted) return;
    const stop = new AbortController();
    if (format === "pdf") setRunning(stop);
    props.onProblem(null);
    try {
      const name = fileName(station.value?.file ?? "station", format);
      save(await api.report({ ...wanted, format }, stop.signal), name);
      toast(`Saved ${name}.`);
    } catch (error) {
      if (!stop.signal.aborted) props.onProblem(told(error));
    } finally {
      if (format === "pdf") setRunning(null);
    }
  };
  return (
    <div class="downloads edit">
      {running && (
        <span class="dim" role="status">
          Making the PDF, {seconds} s
        </span>
      )}
      <button type="button" class="btn" disabled={none} onClick={() => void make("html")}>
        Save as HTML
      </button>
      {running ? (
        <button type="button" class="btn" onClick={() => running.abort()}>
          Stop
        </button>
      ) : (
        <button
          type="button"
          class="btn go"
          disabled={none || pdfHint !== ""}
          title={pdfHint ? `The program that sets pages is not installed: ${pdfHint}` : undefined}
          onClick={() => void make("pdf")}
        >
          Make the PDF
        </button>
      )}
    </div>
  );
}
