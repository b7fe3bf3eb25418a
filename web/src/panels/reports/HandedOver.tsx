import { HandoverFiles } from "../parts/HandoverFiles";

const sheets = [
  { name: "sheets.html", text: "Sheets to fill in", title: "Commissioning, walk-throughs, return to service, cards: a page to print" },
] as const;

const drawings = [
  { name: "plan", text: "Plan" },
  { name: "section", text: "Section" },
  { name: "tank", text: "Section along a tank" },
  { name: "dispenser", text: "Section at a dispenser" },
].flatMap(({ name, text }) => [
  { name: `${name}.svg`, text: `${text}, SVG`, title: "To scale, for paper" },
  { name: `${name}.dxf`, text: `${text}, DXF`, title: "For programs that draw" },
]);

/** What is handed over beside the report, as files. */
export const HandedOver = () => (
  <>
    <h2>Sheets and drawings</h2>
    <div class="handed">
      <HandoverFiles files={sheets} />
      <HandoverFiles files={drawings} />
    </div>
    <p class="hint">The schedule and the calendar are saved on the sheet Kit and calendar.</p>
  </>
);
