// Made by tools/fresh.sh from src/forecourse/server/answers/; not to be changed here.
export type { Field, Part, Station } from "./station";
export type Units = "us" | "si";
export interface Diagnostic {
  severity: "error" | "warning" | "note";
  message: string;
  hint: string;
  /** From 1; 0: at no place. */
  line: number;
  column: number;
  /** In characters. */
  length: number;
  path: string | null;
}
export interface FieldTold {
  key: string;
  /** Name of the table that has the key; see Tables. Null: none has it. */
  in: string | null;
  /** Where it is not that of the part, a dot and the key. */
  path?: string;
  /** As typed; missing: not entered. */
  text?: string;
  us?: string;
  si?: string;
  line?: number;
  problem?: string;
}
export interface TableKey {
  key: string;
  kind: string;
  table: string | null;
  required: boolean;
  choices: string[] | null;
  help: string;
  /** What it names; see StationTold.ids. */
  names?: string;
}
export interface Position {
  x_m: number;
  y_m: number;
}
export interface PartTold {
  path: string;
  kind: string;
  id: string;
  /** Of the eleven of the course. */
  stop: number | null;
  product: string | null;
  /** Path of the part it belongs to. */
  of: string | null;
  position: Position | null;
  fields: FieldTold[];
}
export interface Product {
  id: string;
  tone: "regular" | "premium" | "diesel";
}
export interface StationTold {
  revision: number;
  file: string;
  name: string;
  display: Units;
  text: string;
  editable: boolean;
  undo: string | null;
  redo: string | null;
  diagnostics: Diagnostic[];
  products: Product[];
  parts: PartTold[];
  /** Those that a key may name, by TableKey.names. */
  ids: Record<string, string[]>;
}
export interface DrawingAnswer {
  svg: string;
  remarks: string[];
}
export interface ErrorAnswer {
  error: string;
  hint: string;
}
/** The keys of every table, by its name. */
export type Tables = Record<string, TableKey[]>;
export type Edit = { path: string; value: string } | { path: string; remove: true } | { append: string };
/** "all", "each", "none", ids parted by commas, a list of ids, or a list of such lists. */
export type OpenSets = string | string[] | string[][];
export type FlowPart = "systems" | "hoses" | "states" | "spans" | "lines_at_rest" | "ladders" | "worst_states";
export type FlowDrawing = "section" | "plan" | "grade-line" | "ladder" | "budget";
export type IncidentKind =
  | "struck"
  | "drive-off"
  | "sump-fire"
  | "crack"
  | "line-break"
  | "overfill"
  | "nozzle-left-open";
export type Barrier =
  | "shear-valve"
  | "upper-poppet"
  | "crack-trip"
  | "fusible-link"
  | "breakaway"
  | "sump-sensor"
  | "leak-detector"
  | "emergency-stop"
  | "check-valve"
  | "sump"
  | "overfill-valve"
  | "overfill-alarm"
  | "driver";
export interface FlowWant {
  study: "flow";
  open?: OpenSets;
  keep?: string;
  order?: string | string[];
  parts?: FlowPart | FlowPart[];
  units?: Units;
}
export interface FindingsWant {
  study: "findings";
  keep?: string;
  on?: string;
  units?: Units;
}
export interface MendsWant {
  study: "mends";
  rule?: string;
  subject?: string;
  keep?: string;
  on?: string;
  units?: Units;
}
export interface CalendarWant {
  study: "calendar";
  on?: string;
  within?: number;
  units?: Units;
}
export interface KitWant {
  study: "kit";
  units?: Units;
}
export interface LessonWant {
  study: "lesson";
  lesson?: string;
  failure?: string;
  at?: string;
  questions?: number;
  level?: number;
  seed?: number;
  page?: string;
  on?: string;
  units?: Units;
}
export interface ContainmentWant {
  study: "containment";
  inflows?: string | string[];
  sensor_dead_for?: string;
  units?: Units;
}
export interface TankWant {
  study: "tank";
  tank?: string;
  depth?: string;
  at?: string;
  step?: string;
  rate?: string;
  room?: string;
  draws?: string | string[];
  units?: Units;
}
export interface FlotationWant {
  study: "flotation";
  tank?: string;
  water_level?: string;
  filled?: string;
  factor?: string;
  units?: Units;
}
export interface VaporWant {
  study: "vapor";
  temperature?: string;
  on?: string;
  units?: Units;
}
export interface DeliveryWant {
  study: "delivery";
  delivery?: string;
  tank?: string;
  volume?: string;
  rate?: string;
  stop_at?: string;
  without?: string | string[];
  blocked?: string | string[];
  units?: Units;
}
export interface IncidentWant {
  study: "incident";
  kind?: IncidentKind;
  id?: string;
  at?: string;
  open?: string | string[];
  stop_at?: string;
  for?: string;
  open_area?: string;
  without?: Barrier | Barrier[];
  dead?: string | string[];
  runs?: number;
  seed?: number;
  on?: string;
  units?: Units;
}
export interface LedgerWant {
  study: "ledger";
  tank?: string;
  month?: string;
  from?: string;
  to?: string;
  delivered_as?: string;
  meter_errors?: string | string[];
  evaporation?: string;
  reading_deviation?: string;
  delivery_deviation?: string;
  sales_deviation?: string;
  smallest_leak?: string;
  own_volume?: string;
  own_drift?: string;
  own_expansion?: string;
  units?: Units;
}
export interface LineTestWant {
  study: "line-test";
  product?: string;
  warmer?: string | string[];
  fuel_temperature?: string;
  ground_temperature?: string;
  time_constant?: string;
  ground?: string;
  ground_conductivity?: string;
  ground_heat?: string;
  expansion?: string;
  line_expansion?: string;
  volume?: string;
  compliance?: string;
  per_degree?: string;
  vapor?: string;
  leak?: string;
  leak_pressure?: string;
  exponent?: string;
  pressure?: string;
  wait?: string;
  duration?: string;
  drop?: string;
  measured?: string;
  find?: string;
  limit?: string;
  quiet?: string | string[];
  stopped?: string;
  on?: string;
  units?: Units;
}
export interface MeterWant {
  study: "meter";
  hose?: string;
  from?: string;
  to?: string;
  expansion?: string;
  prices?: string | string[];
  yearly?: string | string[];
  limits?: string | string[];
  units?: Units;
}
export interface CompareWant {
  study: "compare";
  sets?: string | string[];
  open?: OpenSets;
  keep?: string;
  units?: Units;
}
export interface FlowDrawingWant {
  drawing: FlowDrawing;
  prefix?: string;
  product?: string;
  hose?: string;
  open?: OpenSets;
  keep?: string;
  order?: string | string[];
  width?: number;
  units?: Units;
}
export interface SumpsWant {
  drawing: "sumps";
  prefix?: string;
  inflows?: string | string[];
  sensor_dead_for?: string;
  width?: number;
  units?: Units;
}
export interface SceneWant {
  drawing: "scene";
  kind?: IncidentKind;
  id?: string;
  at?: string;
  open?: string | string[];
  stop_at?: string;
  for?: string;
  open_area?: string;
  without?: Barrier | Barrier[];
  dead?: string | string[];
  runs?: number;
  seed?: number;
  on?: string;
  prefix?: string;
  width?: number;
  units?: Units;
}
export interface FlotationDrawingWant {
  drawing: "flotation" | "factor-by-water" | "factor-by-fill";
  prefix?: string;
  tank?: string;
  water_level?: string;
  filled?: string;
  factor?: string;
  width?: number;
  units?: Units;
}
export interface VaporDrawingWant {
  drawing: "vapor-pressure" | "static-test";
  prefix?: string;
  temperature?: string;
  width?: number;
  units?: Units;
}
export interface LineTestDrawingWant {
  drawing: "volume-test" | "shut-pressure";
  product?: string;
  warmer?: string | string[];
  fuel_temperature?: string;
  ground_temperature?: string;
  time_constant?: string;
  ground?: string;
  ground_conductivity?: string;
  ground_heat?: string;
  expansion?: string;
  line_expansion?: string;
  volume?: string;
  compliance?: string;
  per_degree?: string;
  vapor?: string;
  leak?: string;
  leak_pressure?: string;
  exponent?: string;
  pressure?: string;
  wait?: string;
  duration?: string;
  drop?: string;
  measured?: string;
  find?: string;
  limit?: string;
  quiet?: string | string[];
  stopped?: string;
  prefix?: string;
  width?: number;
  units?: Units;
}
export interface MeterDrawingWant {
  drawing: "meter-errors";
  hose?: string;
  from?: string;
  to?: string;
  expansion?: string;
  prices?: string | string[];
  yearly?: string | string[];
  limits?: string | string[];
  prefix?: string;
  width?: number;
  units?: Units;
}
export type KnownWant =
  | FlowWant
  | FindingsWant
  | MendsWant
  | CalendarWant
  | KitWant
  | LessonWant
  | ContainmentWant
  | TankWant
  | FlotationWant
  | VaporWant
  | DeliveryWant
  | IncidentWant
  | LedgerWant
  | LineTestWant
  | MeterWant
  | CompareWant
  | FlowDrawingWant
  | SumpsWant
  | SceneWant
  | FlotationDrawingWant
  | VaporDrawingWant
  | LineTestDrawingWant
  | MeterDrawingWant;
/** One that is put together while the page runs may be of any; the program refuses what it does not know. */
export type Want = { units?: Units } & Record<string, unknown>;
