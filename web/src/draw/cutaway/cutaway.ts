/** The cutaways of the lesson by their pages. */
import { framed } from "./ink";
import type { Picture, Values } from "./picture";
import { drop, fill, overfillValve } from "./tanker";
import { breakaway, curbHose, swivel, whipHose } from "./hose";
import { filter, meter, price } from "./meter";
import { nozzle, vehicle } from "./nozzle";
import { leakDetector, pump } from "./pump";
import { emergencyStop, interlocks } from "./stops";
import { sump, tankSump } from "./sumps";
import { doubleWall, line } from "./line";
import { tankBreathing, tankWalls, tankWater } from "./tank";
import { vaporReturn, vent } from "./vapor";
import { shearAnchor, shearCrack, shearGroove, shearLink, shearPoppets } from "./shear";

export const pictures = {
  drop,
  fill,
  "overfill-valve": overfillValve,
  "tank-walls": tankWalls,
  "tank-water": tankWater,
  "tank-breathing": tankBreathing,
  pump,
  "tank-sump": tankSump,
  "leak-detector": leakDetector,
  "double-wall": doubleWall,
  line,
  sump,
  "shear-groove": shearGroove,
  "shear-anchor": shearAnchor,
  "shear-poppets": shearPoppets,
  "shear-crack": shearCrack,
  "shear-link": shearLink,
  filter,
  meter,
  price,
  "whip-hose": whipHose,
  breakaway,
  "curb-hose": curbHose,
  swivel,
  nozzle,
  vehicle,
  "vapor-return": vaporReturn,
  vent,
  "emergency-stop": emergencyStop,
  interlocks,
} satisfies Record<string, Picture>;

export type PageId = keyof typeof pictures;

export interface Motion {
  /** How far the dashes of a flow have gone, in units of the drawing; equal: they stand. */
  dash?: number;
  /** Begins every id of the drawing, so that two of one page can stand side by side. */
  id?: string;
}

/** Whether a page has a picture. */
export const hasCutaway = (page: string): page is PageId => page in pictures;

/** The picture of a page in a state, as text of SVG. */
export function cutaway(page: PageId, values: Values, { dash = 0, id = page }: Motion = {}): string {
  const of = pictures[page];
  return framed(of.draw(values, dash), of.words(values), `cut-${id}`);
}

/** The state of a picture in words. */
export const cutawayWords = (page: PageId, values: Values): string => pictures[page].words(values);

/** What a picture names: the state of a part, or what is wrong (without a state). */
export interface Named {
  name: string;
  state: string;
}

/** What the text of a picture names that has a state, after what is wrong; for where its own words would be too small. */
export function namedIn(picture: string): Named[] {
  const wrong = [...picture.matchAll(/class="bad">([^<]*)</g)].map(([, name = ""]) => ({ name, state: "" }));
  const parts = [...picture.matchAll(/class="name">([^<]*)<\/text>((?:<text[^>]*class="state">[^<]*<\/text>)+)/g)];
  return [
    ...wrong,
    ...parts.map(([, name = "", lines = ""]) => ({ name, state: [...lines.matchAll(/>([^<]+)</g)].map((l) => l[1]).join(" ") })),
  ];
}
