import type { Tank } from "../../documents";
import type { DropSide, DropView } from "../view";
import type { SceneLayout } from "./layout";

export interface SceneProps {
  side: DropSide;
  view: DropView;
  /** Of the tank study, for what its levels are. */
  tanks: readonly Tank[];
}

/** What a part of the scene is drawn from. */
export interface Shown extends SceneProps {
  layout: SceneLayout;
  t: number;
}
