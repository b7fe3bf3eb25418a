import { flowing, slab } from "./pieces";
import { between, on, percent, picture, shutWord, some, told, type Has } from "./picture";
import { box, disc, enlarged, label, note, shape, svg } from "./ink";
import {
  armPlace,
  groove,
  leanPlace,
  lowerPoppetAt,
  middle,
  shearValve,
  topPlace,
  upperPoppetAt,
  type ShearState,
} from "./shear_valve";

const whole: ShearState = {
  hit: 0,
  broken: 0,
  lower: 0,
  upper: 0,
  flow: 0,
  escape: 0,
  tripped: 0,
  parted: 0,
  anchored: 1,
};
const struck = { hit: 0, broken: 0, lower: 0, upper: 0, flow: 0, escape: 0 };

const [left, right] = [138, 502];
/** The island with its opening, and the walls of the sump below. */
const island =
  slab(0, groove, left, 44) +
  slab(right, groove, 640 - right, 44) +
  shape("ground", svg`M0 ${groove}H${left}M${right} ${groove}H640`) +
  shape("thick", svg`M${left} 244V420M${right} 244V420`);

/** The bar from wall to wall, with the bracket that holds the lower body; loose: its bolts are out. */
const stabilizer = (anchored: number) =>
  shape("plain", box(left, 288, right - left, 15)) +
  (on(anchored)
    ? [228, 412].map((x) => shape("plain", box(x - 12, 280, 24, 31)) + shape("pin", disc(x, 295.5, 4.5))).join("")
    : "");

const armWord = (tripped: number) => (tripped > 0.05 ? "has turned" : "held");
const poppetWords = (v: { lower: number; upper: number }, has: Has<"lower" | "upper">) =>
  has("lower", "upper") && `lower poppet ${shutWord(v.lower)}, upper poppet ${shutWord(v.upper)}`;
const escapeWords = (escape: number) => some(escape) && `fuel escapes, ${percent(escape)} of the greatest`;
const topWords = (v: { hit: number; broken: number }, has: Has<"hit" | "broken">) =>
  has("hit", "broken") &&
  (on(v.broken)
    ? "broken at the groove, the top is carried away"
    : some(v.hit)
      ? "struck, the groove still holds"
      : "the valve is whole");

const escapeNote = (escape: number, x = 130, y = 30) =>
  some(escape) ? note("fuel escapes", x, y, "start", "bad") : "";

export const shearGroove = picture(
  struck,
  (v, has) =>
    told(
      topWords(v, has),
      poppetWords(v, has),
      has("flow") && some(v.flow) && "fuel flows",
      has("escape") && escapeWords(v.escape),
    ),
  (v, dash, has) =>
    island +
    stabilizer(1) +
    shearValve({ ...whole, ...v, tripped: v.broken }, dash) +
    shape("mark-line", svg`M${left} ${groove}H282M${on(v.broken) ? 410 : 358} ${groove}H${right}`) +
    label("groove", 12, 150, [290, groove], has("broken") && (on(v.broken) ? "broken" : "whole")) +
    label(
      "top",
      12,
      60,
      topPlace(v, [258, 126]),
      has("hit", "broken") && (some(v.hit) ? (on(v.broken) ? "carried away" : "struck") : "stands"),
    ) +
    label("lower poppet", 12, 356, [286, lowerPoppetAt(v.lower) + 14], has("lower") && shutWord(v.lower)) +
    label("stabilizer bar", 628, 346, [470, 296], "", "right") +
    note("island", 70, 228) +
    note("sump", 570, 290) +
    (on(v.broken) ? escapeNote(v.escape) : ""),
);

export const shearAnchor = picture(
  { ...struck, anchored: 1 },
  (v, has) =>
    told(
      has("anchored") && (on(v.anchored) ? "anchored to the stabilizer bar" : "not anchored"),
      has("anchored", "hit") &&
        (on(v.anchored) || !some(v.hit)
          ? topWords(v, has)
          : "the whole valve goes with the blow, the riser tears below it"),
      poppetWords(v, has),
      has("flow") && some(v.flow) && "fuel flows",
      has("escape") && escapeWords(v.escape),
    ),
  (v, dash, has) => {
    const loose = !on(v.anchored) && some(v.hit);
    return (
      island +
      stabilizer(v.anchored) +
      shearValve({ ...whole, ...v, tripped: v.broken }, dash) +
      label(
        "groove",
        12,
        150,
        loose ? leanPlace(v.hit, [290, groove]) : [290, groove],
        has("broken") && (on(v.broken) ? "broken" : "whole"),
      ) +
      label(
        "stabilizer bar",
        628,
        346,
        [470, 296],
        has("anchored") && (on(v.anchored) ? "holds the body" : "holds nothing"),
        "right",
      ) +
      label("riser", 12, 384, [294, 396], has("anchored", "hit") && (loose ? "torn" : "whole")) +
      label(
        "upper poppet",
        12,
        60,
        loose ? leanPlace(v.hit, [284, upperPoppetAt(v.upper) - 14]) : topPlace(v, [284, upperPoppetAt(v.upper) - 14]),
        has("upper") && shutWord(v.upper),
      ) +
      label(
        "lower poppet",
        12,
        314,
        loose ? leanPlace(v.hit, [284, lowerPoppetAt(v.lower) + 14]) : [284, lowerPoppetAt(v.lower) + 14],
        has("lower") && shutWord(v.lower),
      ) +
      (some(v.flow) && loose
        ? flowing(v.flow, dash, [
            [310, 418],
            [310, 398],
          ])
        : "") +
      (loose || on(v.broken) ? escapeNote(v.escape, loose ? 12 : 130, loose ? 274 : 30) : "")
    );
  },
);

export const shearPoppets = picture(
  struck,
  (v, has) =>
    told(
      topWords(v, has),
      poppetWords(v, has),
      has("flow") && some(v.flow) && "fuel flows",
      has("escape") && escapeWords(v.escape),
    ),
  (v, dash, has) => {
    const tripped = Math.max(v.broken, v.lower);
    return (
      shape("center", svg`M${middle} 20V414`) +
      shearValve({ ...whole, ...v, tripped: v.broken }, dash) +
      label(
        "upper poppet",
        12,
        60,
        topPlace(v, [284, upperPoppetAt(v.upper) - 14]),
        has("upper") && shutWord(v.upper),
      ) +
      label("groove", 12, 160, [290, groove], has("broken") && (on(v.broken) ? "broken" : "whole")) +
      label("lower poppet", 12, 296, [284, lowerPoppetAt(v.lower) + 14], has("lower") && shutWord(v.lower)) +
      label("spring", 12, 378, [308, 312]) +
      label("trip arm", 628, 290, armPlace(tripped), has("lower") && armWord(tripped), "right") +
      label("seat", 12, 236, [272, 238]) +
      (on(v.broken) ? escapeNote(v.escape) : "")
    );
  },
);

export const shearCrack = picture(
  { crack: 0, tripped: 0, lower: 0, escape: 0 },
  (v, has) =>
    told(
      has("crack") && (some(v.crack) ? `cracked at the groove, what seeps gathers around it` : "no crack"),
      has("tripped") && (on(v.tripped) ? "the crack trip has let the arm go" : "the trip arm is held"),
      has("lower") && `lower poppet ${shutWord(v.lower)}`,
      has("escape") && escapeWords(v.escape),
    ),
  (v, dash, has) => {
    const { drawing, place } = enlarged(1.5, [334, 214], [320, 210]);
    const tripped = Math.max(v.tripped, v.lower);
    return (
      drawing(
        shearValve({ ...whole, ...v, flow: 0, escape: 0, chamber: v.crack }, dash) +
          (some(v.crack) ? shape("crack", svg`M292 196l5 4l-4 3l8 4M348 196l-5 4l4 3l-8 4`) : ""),
      ) +
      flowing(v.escape, dash, [place([262, 206]), [190, 222], [172, 262]], "escape") +
      label("crack", 12, 120, place([295, 200]), has("crack") && (some(v.crack) ? "seeps" : "none")) +
      label(
        "chamber",
        12,
        190,
        place([270, 206]),
        has("crack") && (some(v.crack) ? `${percent(v.crack)} full` : "empty"),
      ) +
      label("lower poppet", 12, 360, place([284, lowerPoppetAt(v.lower) + 14]), has("lower") && shutWord(v.lower)) +
      label(
        "link",
        628,
        80,
        place([372, on(tripped) ? 160 : 169]),
        has("tripped", "lower") && (on(tripped) ? "lifted off" : "hooked"),
        "right",
      ) +
      label(
        "trip pin",
        628,
        180,
        place([388, 207 - 12 * tripped]),
        has("tripped", "lower") && (on(tripped) ? "out" : "in"),
        "right",
      ) +
      label("trip arm", 628, 300, place(armPlace(tripped)), has("lower") && armWord(tripped), "right") +
      (some(v.escape) ? note("fuel escapes", 12, 286, "start", "bad") : "")
    );
  },
);

function flame(x: number, tall: number, wide: number): string {
  const [foot, top] = [412, 412 - tall];
  const [low, high] = [foot - 0.4 * tall, foot - 0.5 * tall];
  const left = svg`M${x - wide} ${foot}C${x - 1.5 * wide} ${low} ${x - 0.2 * wide} ${high} ${x} ${top}`;
  const back = svg`C${x + 0.4 * wide} ${foot - 0.6 * tall} ${x + 1.5 * wide} ${low} ${x + wide} ${foot}Z`;
  return shape("flame", left + back);
}
const flames = (heat: number) =>
  some(heat)
    ? [
        [208, 0.7, 18],
        [240, 1, 20],
        [412, 1, 22],
        [446, 0.75, 18],
      ]
        .map(([x, tall, wide]) => flame(x!, tall! * between(50, 190, heat), wide!))
        .join("")
    : "";

export const shearLink = picture(
  { heat: 0, parted: 0, lower: 0, flow: 0, escape: 0 },
  (v, has) =>
    told(
      has("heat") && (some(v.heat) ? `fire in the sump, the link at ${percent(v.heat)} of its rating` : "no fire"),
      has("parted") && (on(v.parted) ? "the link has parted and the arm has turned" : "the link holds the trip arm"),
      has("lower") && `lower poppet ${shutWord(v.lower)}`,
      has("flow") && some(v.flow) && "fuel flows",
      has("escape") && escapeWords(v.escape),
    ),
  (v, dash, has) => {
    const tripped = Math.max(v.parted, v.lower);
    return (
      shearValve({ ...whole, ...v, escape: 0, tripped }, dash) +
      flames(v.heat) +
      thermometer(has("heat") ? v.heat : null) +
      flowing(
        v.escape,
        dash,
        [
          [252, 330],
          [216, 352],
          [204, 396],
        ],
        "escape",
      ) +
      label(
        "fusible link",
        628,
        120,
        on(v.parted) ? [360, 182] : [383, 171],
        has("parted") && (on(v.parted) ? "parted" : "whole"),
        "right",
      ) +
      label("trip arm", 628, 290, armPlace(tripped), has("lower") && armWord(tripped), "right") +
      label("lower poppet", 12, 250, [284, lowerPoppetAt(v.lower) + 14], has("lower") && shutWord(v.lower)) +
      (some(v.escape) ? note("fuel escapes", 12, 340, "start", "bad") : "")
    );
  },
);

/** Heat of the link, as a share of its rating. */
function thermometer(heat: number | null): string {
  const tall = 110 * (heat ?? 0);
  return (
    note("heat of the link", 12, 40, "start") +
    shape("line", box(26, 54, 16, 114)) +
    shape("heat-fill", box(28, 166 - tall, 12, tall)) +
    shape("mark-line", svg`M18 56h36`) +
    note("rating", 60, 62, "start") +
    (heat === null ? "" : note(percent(heat), 60, 166, "start", "state"))
  );
}
