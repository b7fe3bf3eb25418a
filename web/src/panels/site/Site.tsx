import type { DrawingAnswer, ErrorAnswer } from "../../api/types";
import { useStanding } from "../../state/ask";
import { chosenHose, hoses, openWanted } from "../../state/hoses";
import { product, units } from "../../state/look";
import { editable } from "../../state/station";
import { Head, UndoButtons } from "../shell/Shell";
import { adding } from "./adding";
import { AddMenu, AddPart } from "./AddPart";
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
        <FileMenu />
        <UndoButtons />
        {editable.value && <AddMenu />}
      </Head>
      <div class="site">
        <div class="views" role="region" aria-label="Section and plan" tabIndex={0}>
          <Course now={section} />
          <PlanSheet />
        </div>
        {adding.value ? <AddPart /> : <Properties svg={svg} />}
      </div>
      <FileDialog />
      <TextView />
    </>
  );
}
