import { viewOf } from "../../state/look";
import { Delivery } from "./delivery/Delivery";
import { Depth } from "./depth/Depth";
import { Flotation } from "./flotation/Flotation";
import { Vapor } from "./vapor/Vapor";

/** The tank's side of the course: a view to each question. */
export function Tank() {
  const view = viewOf("tank");
  if (view === "flotation") return <Flotation />;
  if (view === "vapor") return <Vapor />;
  if (view === "delivery") return <Delivery />;
  return <Depth />;
}
