import { effect, signal } from "@preact/signals";
import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import { useStanding } from "../../state/ask";
import { chosenHose, hoses, openWanted } from "../../state/hoses";
import { product, units } from "../../state/look";
import { editable, narrow } from "../../state/station";
import { Seg } from "../parts/Seg";
import { Head, UndoButtons } from "../shell/Shell";
import { adding, copying } from "./adding";
import { AddMenu, AddPart } from "./AddPart";
import { CopyPart } from "./CopyPart";
import { Course } from "./Course";
import { FileDialog, FileMenu } from "./file/FileMenu";
import { PlanSheet } from "./plan/PlanSheet";
import { Properties } from "./Properties";
import { TextView } from "./file/TextView";

/** The chosen hose, where it gives the chosen product. */
const hoseWanted = () => {
  const hose = hoses.value.find((h) => h.id === chosenHose.value);
  return hose && hose.product === product.value ? { hose: hose.id } : {};
};

type Seen = "both" | "section" | "plan";
/** Which of the two drawings is in sight; kept in this browser. */
const seen = signal<Seen>((localStorage.getItem("drawings") as Seen | null) ?? "both");
effect(() => localStorage.setItem("drawings", seen.value));

function SeenChoice() {
  return (
    <Seg
      label="Drawings"
      class="hide-s"
      value={seen.value}
      onChange={(which) => (seen.value = which)}
      options={[
        { value: "both", text: "Both" },
        { value: "section", text: "Section" },
        { value: "plan", text: "Plan" },
      ]}
    />
  );
}

export function Site() {
  const section = useStanding<DrawingAnswer | ErrorAnswer>(() => ({
    wants: [
      { drawing: "section", product: product.value, open: openWanted.value, units: units.value, ...hoseWanted() },
    ],
  }));
  const answer = section.answers?.[0];
  const svg = answer && "svg" in answer ? answer.svg : "";
  const about = `Section along the course${product.value ? ` of ${product.value}` : ""}, and the plan it comes from`;
  return (
    <>
      <Head title="Site" about={about}>
        <SeenChoice />
        <FileMenu />
        <UndoButtons />
        {editable.value && <AddMenu />}
      </Head>
      <div class="site">
        <div class="views" role="region" aria-label="Section and plan" tabIndex={0}>
          {(seen.value !== "plan" || narrow.value) && <Course now={section} />}
          {seen.value !== "section" && <PlanSheet />}
        </div>
        {copying.value ? <CopyPart /> : adding.value ? <AddPart /> : <Properties svg={svg} />}
      </div>
      <FileDialog />
      <TextView />
    </>
  );
}
