import { viewOf } from "../../state/look";
import { Depth } from "./depth/Depth";

/** The tank's side of the course: a view to each question. */
export function Tank() {
  const view = viewOf("tank");
  if (view === "depth") return <Depth />;
  return <Depth />;
}
