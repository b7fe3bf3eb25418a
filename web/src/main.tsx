import { render } from "preact";
import "@fontsource/b612/latin-400.css";
import "@fontsource/b612/latin-700.css";
import "./style/tokens.css";
import "./style/base.css";
import "./style/frame.css";
import "./style/parts.css";
import "./style/site.css";
import "./style/tank.css";
import "./style/flow.css";
import "./style/incident.css";
import "./style/delivery.css";
import "./style/checks.css";
import "./style/containment.css";
import "./style/ledger.css";
import "./style/ledgerview.css";
import "./style/kit.css";
import "./style/reports.css";
import "./style/lesson.css";
import "./style/lesson_page.css";
import "./style/states.css";
import "./style/drawing.css";
import "./style/narrow.css";
import "./style/print.css";
import { Checks } from "./panels/checks/Checks";
import { Containment } from "./panels/containment/Containment";
import { Flow } from "./panels/flow/Flow";
import { Incident } from "./panels/incident/Incident";
import { Kit } from "./panels/kit/Kit";
import { Ledger } from "./panels/ledger/Ledger";
import { Reports } from "./panels/reports/Reports";
import { later } from "./panels/parts/later";
import { LessonSheet } from "./panels/shell/LessonSheet";
import { Shell } from "./panels/shell/Shell";
import { Site } from "./panels/site/Site";
import { Tank } from "./panels/tank/Tank";
import { listenToKeys } from "./state/keys";
import { followLesson, presents } from "./state/lesson/windows";
import { follow } from "./state/station";

const Presenter = later(async () => (await import("./panels/lesson/Presenter")).Presenter);

if (presents !== null) {
  followLesson(presents);
  render(<Presenter />, document.body);
} else {
  follow();
  listenToKeys();
  render(
    <Shell
      panels={{
        site: Site, tank: Tank, flow: Flow, incident: Incident, containment: Containment, ledger: Ledger, checks: Checks,
        kit: Kit, lesson: LessonSheet, reports: Reports,
      }}
    />,
    document.body,
  );
}
