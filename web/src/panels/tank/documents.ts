/** What the tank study tells, as the command's JSON has it. */
import type { Finding } from "../parts/finding";
import type { ErrorAnswer } from "../../api/types";

export interface Place {
  along_m: number;
  level_m: number;
}

/** A fill, a gauge, a pump, the place of the reading. */
export interface TankPlace {
  what: string;
  along_m: number;
  stick_m: number;
  depth_m: number | null;
  foot: Place;
  head: Place;
}

export interface Room {
  share: number;
  volume_m3: number;
  level_m: number;
  room_m3: number | null;
}

export interface ChartRow {
  depth_m: number;
  level_m: number;
  volume_m3: number;
  share: number;
  level_chart_m3: number | null;
}

export type Device = "shutoff" | "alarm" | "restriction";

export interface Setting {
  route: string;
  device: Device;
  asks: string;
  enter: string | null;
  impossible: string | null;
  volume_m3: number | null;
  share: number | null;
  along_m: number | null;
  depth_m: number | null;
}

export interface WrongSetting {
  device: Device;
  set_by: string;
  share: number;
  depth_m: number;
  acts_at_m3: number;
  true_share: number;
  late: boolean;
}

export interface DeviceSet {
  device: Device;
  what: string;
  along_m: number | null;
  depth_m: number | null;
  volume_m3: number;
  share: number;
  before_full_s: number | null;
}

export interface Tank {
  id: string;
  tank: string;
  product: string | null;
  problem: string | null;
  shape: string | null;
  pitch: number;
  inside_diameter_m: number | null;
  section_width_m: number | null;
  capacity_m3: number | null;
  full_level_m: number | null;
  now: {
    level_m: number;
    depth_m: number;
    along_m: number | null;
    volume_m3: number;
    share: number;
    ullage_m3: number;
    water_m3: number | null;
    water_level_m: number | null;
    by_option: boolean;
  } | null;
  not_read: string | null;
  places: TankPlace[];
  rooms: Room[];
  chart: { place: string; along_m: number; rows: ChartRow[] } | null;
  delivery_rate_m3_per_s: number | null;
  from_90_to_95_s: number | null;
  overfill: { settings: Setting[]; wrong: WrongSetting[]; set_now: DeviceSet[]; remarks: string[] };
  outline: Place[];
}

/** A tank whose sizes are known. */
export interface KnownTank extends Tank {
  capacity_m3: number;
  full_level_m: number;
  chart: NonNullable<Tank["chart"]>;
}

export const isKnown = (tank: Tank): tank is KnownTank =>
  tank.capacity_m3 !== null && tank.full_level_m !== null && tank.chart !== null;

export interface TankDocument {
  cautions: string[];
  warnings: ErrorAnswer[];
  findings: Finding[];
  result: { tanks: Tank[] };
}
