/** Which values of the site file a view of the tank depends on. Nothing here knows of the page. */
import type { Field, Part } from "../../../api/types";
import { unquoted } from "../../../state/entry";

/** A part with those of its keys that the view uses; each with all that stands under it. */
export interface ShownPart {
  part: Part;
  keys: readonly string[];
}

/** Names, and what only a pressure wave asks of a pipe. */
const notAsked = new Set(["id", "wall", "modulus", "wave_speed", "rating", "stiffness", "strength"]);

/** Of the fields of a part those that a view uses, in the order of its keys; what only a wave asks, where it is named. */
export function fieldsOf(fields: readonly Field[], keys: readonly string[]): Field[] {
  const of = (key: string) => fields.filter((f) => f.key === key || f.key.startsWith(`${key}.`));
  return [...new Set(keys.flatMap(of))].filter((f) => keys.includes(f.key) || !notAsked.has(f.key.split(".").at(-1) ?? ""));
}

const textOf = (part: Part, key: string) => unquoted(part.fields.find((f) => f.key === key)?.text ?? "");
const tankOf = (parts: readonly Part[], id: string) => parts.find((p) => p.kind === "tank" && p.id === id);

/** Those of a kind that belong to a part, directly or to what belongs to it. */
const within = (parts: readonly Part[], owner: Part, kind: string) =>
  parts.filter((p) => p.kind === kind && p.path.startsWith(`${owner.path}.`));

const each = (parts: readonly Part[], keys: readonly string[]): ShownPart[] => parts.map((part) => ({ part, keys }));

const valve = ["restricts_at", "closes_at", "restricted", "closed", "loss"];

/** Shape, reading, places and devices of a tank, and the pumps that draw from it. `id` may be that of a compartment. */
export function depthParts(parts: readonly Part[], tankId: string, id: string): ShownPart[] {
  const tank = tankOf(parts, tankId);
  if (!tank) return [];
  const compartment = within(parts, tank, "compartment").filter((p) => p.id === id);
  return [
    ...each(compartment, ["product", "from", "length", "reading"]),
    ...each(
      [tank],
      [
        "reading", "shape", "bottom_elevation", "surface_elevation", "capacity", "gauge", "overfill_alarm", "siphoned_with", "siphon", "chart", "calibration", "displacement", "compartment", "fill",
      ],
    ),
    ...each(within(parts, tank, "fill"), ["at", "elevation", "drop_tube", "overfill_valve"]),
    ...each(within(parts, tank, "overfill_valve"), valve),
    ...each(within(parts, tank, "drop_tube"), ["length", "end_above_bottom"]),
    ...each(
      parts.filter((p) => p.kind === "pump" && [tankId, id].includes(textOf(p, "tank"))),
      ["at", "inlet_above_bottom"],
    ),
  ];
}

/** The truck and its hoses, and of each tank that it fills the way in and the ways out for vapor. */
export function deliveryParts(parts: readonly Part[], deliveryId: string): ShownPart[] {
  const all = parts.filter((p) => p.kind === "delivery");
  const delivery = all.find((p) => p.id === deliveryId) ?? all[0];
  if (!delivery) return [];
  const named = delivery.fields.filter((f) => /^compartment\..*\.tank$/.test(f.key)).map((f) => unquoted(f.text ?? ""));
  const tanks = [...new Set(named)].flatMap((id) => tankOf(parts, id) ?? []);
  return [
    { part: delivery, keys: delivery.fields.map((f) => f.key) },
    ...tanks.flatMap((tank) => [
      ...each(within(parts, tank, "fill"), ["at", "elevation", "bore", "pipe", "loss", "drop_tube", "overfill_valve"]),
      ...each(within(parts, tank, "drop_tube"), ["length", "bore", "end_above_bottom", "roughness"]),
      ...each(within(parts, tank, "overfill_valve"), valve),
      ...each(within(parts, tank, "spill_container"), ["volume"]),
      ...each(within(parts, tank, "vent"), ["shared", "pipe", "outlet_elevation", "valve", "blocked"]),
      ...each(within(parts, tank, "vapor_return"), ["kind", "pipe", "loss", "shared"]),
      ...each([tank], ["reading", "bottom_elevation", "overfill_alarm", "vent", "vapor_return"]),
    ]),
  ];
}

/** What is sold, how volatile it is, and how vapor is held back. */
export function vaporParts(parts: readonly Part[]): ShownPart[] {
  const of = (kind: string) => parts.filter((p) => p.kind === kind);
  return [
    ...each(of("operations"), ["throughput"]),
    ...each(of("product"), [
      "kind", "temperature", "reid_vapor_pressure", "true_vapor_pressure", "vapor_molar_mass", "ethanol", "expansion",
    ]),
    ...each(of("vapor_return"), ["kind", "efficiency", "pressure_test", "efficiency_test"]),
    ...each(of("vent"), ["valve"]),
    ...each(of("tank"), ["reading", "material", "vapor_return", "vent"]),
    ...each(of("site"), ["ground_temperature", "atmospheric_pressure", "altitude"]),
  ];
}

/** The pipes of a line, the fuel in it, and what watches it. */
export function lineTestParts(parts: readonly Part[], product: string, lines: readonly string[]): ShownPart[] {
  const of = (kind: string) => parts.filter((p) => p.kind === kind);
  const pumps = of("pump").filter((p) => p.product === null || p.product === product);
  return [
    ...each(of("product").filter((p) => p.id === product), ["temperature", "density", "expansion", "isothermal_bulk_modulus"]),
    ...each(of("site"), ["ground_temperature"]),
    ...each(of("operations"), ["opens", "closes"]),
    ...each(pumps, ["leak_detector", "check_valve", "relief"]),
    ...each(
      of("leak_detector").filter((d) => pumps.some((p) => d.path.startsWith(`${p.path}.`))),
      ["kind", "detects", "at", "within", "tested", "restricted", "quiet_tests"],
    ),
    ...each(of("line").filter((l) => lines.includes(l.id)), ["bore", "length", "wall", "modulus", "wave_speed", "interstice", "tested"]),
  ];
}

/** Weights, ground and water of the tanks, and the shape that they bear on. */
export const flotationParts = (parts: readonly Part[], id: string): ShownPart[] => [
  ...each(
    parts.filter((p) => p.kind === "tank" && (id === "" || p.id === id)),
    ["flotation", "shape", "bottom_elevation", "compartment"],
  ),
];
