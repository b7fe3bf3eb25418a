/** What the engine says of containment, as far as this sheet reads it; values in SI. */
export type Holds = "assured" | "not assured" | "not determined";

export interface Fill {
  inflow_m3_per_s: number;
  to_sensor_s: number | null;
  to_lowest_seal_s: number | null;
  to_brim_s: number | null;
  sensor_tells_at_s: number | null;
  volume_when_told_m3: number | null;
  runs_over_before: boolean;
}

export interface Sump {
  owner: string;
  of: "tank" | "dispenser";
  holds: Holds;
  reasons: string[];
  problem: string | null;
  depth_m: number | null;
  brim_m3: number | null;
  sensor_height_m: number | null;
  at_sensor_m3: number | null;
  lowest_seal_m: number | null;
  at_lowest_seal_m3: number | null;
  points: { height_m: number; volume_m3: number }[];
  fills: Fill[];
}

export interface Joint {
  place: string;
  joint: string;
  sump: string | null;
  holds: Holds;
  goes: string;
}

export interface DrainLine {
  line: string;
  sump: string | null;
  holds: Holds;
  goes: string;
}

export interface ContainmentDocument {
  cautions: string[];
  warnings: { message: string }[];
  options: { inflows_m3_per_s: number[] };
  result: { sumps: Sump[]; joints: Joint[]; lines: DrainLine[] };
}
