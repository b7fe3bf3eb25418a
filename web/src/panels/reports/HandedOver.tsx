import { HandoverFiles } from "../parts/HandoverFiles";

const sheets = [
  { name: "sheets.html", text: "Save as HTML", label: "Sheets to fill in, Save as HTML", title: "Commissioning, walk-throughs, return to service, cards: a page to print" },
] as const;

const drawings = [
  { name: "plan", text: "Plan" },
  { name: "section", text: "Section" },
  { name: "tank", text: "Section along a tank" },
  { name: "dispenser", text: "Section at a dispenser" },
].map(({ name, text }) => ({
  text,
  files: [
    { name: `${name}.svg`, text: "SVG", label: `${text}, SVG`, title: "To scale, for paper" },
    { name: `${name}.dxf`, text: "DXF", label: `${text}, DXF`, title: "For programs that draw" },
  ],
}));

/** What is handed over beside the report, as files. */
export const HandedOver = () => (
  <>
    <h2>Sheets and drawings</h2>
    <div class="handed">
      <div class="field">
        <span>Sheets to fill in</span>
        <HandoverFiles files={sheets} />
      </div>
      {drawings.map(({ text, files }) => (
        <div class="field" key={text}>
          <span>{text}</span>
          <HandoverFiles files={files} />
        </div>
      ))}
    </div>
    <p class="hint">The schedule and the calendar are saved on the sheet Kit and calendar.</p>
  </>
);
