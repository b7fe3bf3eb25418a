#pragma once

#include <string_view>

namespace forecourse::site {

/// An invented station that uses every table of a site file.
inline constexpr std::string_view whole_station = R"(# Invented for tests: no such station stands anywhere.
format = 1

[site]
name = "Lower Wick"   # as on the sign
display = "us"
rules = ["us-federal", "us-fire-code"]
ground_temperature = { low = "52 degF", likely = "57 degF", high = "63 degF" }
atmospheric_pressure = "14.7 psia"

[[product]]
id = "regular"
kind = "gasoline-e10"
density = "738 kg/m3"
density_at = "60 degF"
viscosity = "0.50 mPa.s"
reid_vapor_pressure = "9 psi"
isentropic_bulk_modulus = "1.0 GPa"

[[product]]
id = "premium"
kind = "gasoline-e10"
gravity = "58 degAPI"

[[product]]
id = "diesel"
kind = "diesel-b5"
temperature = "60 degF"
expansion = "0.00046 1/degF"

[[tank]]
id = "T1"
product = "regular"
shape = { kind = "horizontal-cylinder", inside_diameter = "118 in", outside_diameter = "120 in", length = "31 ft", heads = "dished", head_depth = "12 in", pitch = "0.5 %", low_end = "fill" }
bottom_elevation = "-14 ft 2 in"
reading = { depth = "71 in", at = "8 ft", water = "0.5 in", temperature = "58 degF", taken = 2026-03-02 }
siphoned_with = ["T1b"]
position = ["0 ft", "40 ft"]
capacity = "20000 gal"
ground = { surround = "12 in", traffic = true, asphalt = "8 in", paving_beyond = "2 ft" }
double_wall = true
material = "glass-fiber reinforced plastic"
interstice = { watch = "brine", alarm = true, tested = 2025-04-01 }
installed = 2011-06-20
  [tank.sump]
  kind = "round"
  diameter = "42 in"
  depth = "48 in"
  sensor = { id = "S1", height = "1 in", kind = "float", tested = 2026-01-10 }
  seal = [{ id = "S1.north", height = "14 in", tight = true }, { height = "16 in", opening = "0.1 in2" }]
  [[tank.fill]]
  at = "4 ft"
  bore = "4.03 in"
  elevation = "0 ft"
  drop_tube = { length = "14 ft", bore = "3.9 in", end_above_bottom = "6 in" }
  spill_container = { volume = "5 gal", tight = true, tested = 2025-02-11, liquid_test = { below_top = "1 in", settled = "5 min", waited = "1 h", change = "0 in" } }
  overfill_valve = { restricts_at = "106 in", closes_at = "112 in", restricted = "100 gpm", tested = 2025-02-11 }
  [tank.overfill_alarm]
  at_share = "90 %"
  heard_at_fill = true
  [[tank.vent]]
  shared = "stack"
  pipe = { length = "60 ft", bore = "2.07 in", loss = 5 }
  outlet_elevation = "12 ft"
  valve = { opens_at = "3 inH2O", vacuum_opens_at = "8 inH2O", points = [["0 L/s", "3 inH2O"], ["20 L/s", "6 inH2O"]] }
  [tank.vapor_return]
  kind = "two-point"
  pipe = "10 ft"
  [tank.gauge]
  kind = "automatic"
  at = "15 ft"
  uncertainty = "0.01 in"
  detects = "0.2 gph"
  [tank.flotation]
  empty_mass = "5200 lb"
  cover = "3 ft"
  water_level = "2 ft"
  backfill = "120 lbf/ft3"
  slab = { thickness = "8 in", density = "2400 kg/m3", overhang = "1 ft" }
  deadman = [{ count = 2, length = "31 ft", width = "12 in", height = "12 in" }]
  factor = 1.2

[[tank]]
id = "T1b"
product = "regular"
bottom_elevation = "-14 ft 2 in"
reading.depth = "71 in"   # dotted keys work too
reading.at = "8 ft"

[[tank]]
id = "T2"
chart = [["0 in", "0 gal"], ["60 in", "4000 gal"], ["118 in", "9500 gal"]]
surface_elevation = "-8 ft"
  [[tank.compartment]]
  id = "T2p"
  product = "premium"
  length = "12 ft"
  reading = { depth = "60 in" }
  [[tank.compartment]]
  id = "T2d"
  product = "diesel"
  length = "16 ft"

[[pump]]
id = "P1"
kind = "submersible"
tank = "T1"
curve = { shutoff = "29.4 psi", per_flow_squared = "0.0019 psi/gpm^2" }
check_valve = true
check_valve_loss = { cv = 60 }
leg = { length = "4 ft", bore = "2.067 in", loss = "0.0002 psi/gpm^2" }
leak_detector = { id = "L1", kind = "mechanical", detects = "3 gph", at = "10 psi", opening_time = "4 s", tested = 2025-11-02 }
pressure_relief = "45 psi"
motor_power = "1.5 hp"
position = ["10 ft", "40 ft"]

[[pump]]
id = "P2"
tank = "T2p"
curve = { coefficients = ["30 psi", "-0.01 psi/gpm", "-0.0019 psi/gpm^2"] }
position = ["20 ft", "40 ft"]

[[pump]]
id = "P3"
tank = "T2d"
curve = { points = [["0 gpm", "31 psi"], ["30 gpm", "28 psi"], ["60 gpm", "19 psi"]], fit = "power" }
running = true
position = ["30 ft", "40 ft"]

[[control]]
id = "regular-pumps"
product = "regular"
pumps = ["P1"]
kind = "variable-speed"
holds = "26 psi"
least_speed = "60 %"

[[line]]
id = "trunk"
from = "P1"
to = "B1"
length = "150 ft"
acceptance = { kind = "pneumatic", pressure = "50 psi", greatest = "36 psi", held = "1 h", tested = 2024-05-20 }
bore = "2.00 in"          # inside
roughness = "0.0015 mm"
loss = 3.6
double_wall = true
interstice = { watch = "dry", drains_to = "P1" }
seal = [{ id = "trunk.a", tight = true }]
tested = 2025-11-02

[[line]]
id = "spur"
from = "B1"
to = "D1.regular"
length = "40 ft"
bore = "2.00 in"
loss = { k = 1.5, bore = "1.61 in" }
check_valve = false

[[line]]
id = "premium-line"
from = "P2"
to = "D1.premium"
length = "190 ft"
nominal = "schedule-40-two-inch"

[[line]]
id = "diesel-line"
from = "P3"
to = "D1.diesel"
length = "190 ft"
bore = "2.00 in"

[[branch]]
id = "B1"
position = ["150 ft", "0 ft"]
elevation = "-3 ft"

[[dispenser]]
id = "D1"
position = ["190 ft", "0 ft"]
access = { highest = "47 in", lowest = "20 in", reach_over = "9 in", existing_curb = false, slope = "1.5 %" }
vapor_line = { breaks = true, shear_mounted = true, drains = true, closes = true }
elevation = "6 in"
sump = { kind = "tapered", floor = ["14 in", "26 in"], top = ["18 in", "40 in"], depth = "36 in", parts_share = "5 %", sensor_height = "1.5 in", lowest_seal = "11 in" }
vapor_recovery = { capture = "90 %", monitored = true, tested = 2026-01-15 }
stabilizer_bar = true
mass = "500 lb"
base_width = "24 in"
anchorage = "3300 lbf.ft"
outlet_height = "6 ft"
  [[dispenser.inlet]]
  product = "regular"
  connection = "tee"
  connection_loss = 1.1
  riser = { length = "3 ft 6 in", bore = "1.61 in", loss = 3.3 }
  shear_valve = { poppet = "double", anchored = true, groove_elevation = "0 in", fusible_link = "165 degF", tested = 2026-03-12, crack_trip = true, trip_volume = "200 mL", trip_pressure = "5 psi", response_index = 100, conduction = 0.8, link_height = "30 in", closing = { delay = "0.05 s", points = [["0 s", "100 %"], ["0.1 s", "40 %"], ["0.2 s", "0 %"]] }, seat_leak = { rate = "0.1 gph", at = "30 psi" } }
  filter = "illustrative-filter"
  loss_to_groove = { k = 3.7, bore = "1.61 in" }
  discharge_loss = 1.0
  liquid_above = "1.5 gal"
  drains = "60 %"
  [[dispenser.inlet]]
  product = "premium"
  shear_valve = { groove_lift = "8 ft", closing = { equivalent_time = "0.1 s" } }
  [[dispenser.inlet]]
  product = "diesel"
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  outlet_elevation = "3 ft 6 in"
  meter = { loss = { points = [["5 gpm", "0.8 psi"], ["10 gpm", "3 psi"]] } }
  whip = "30 in"
  curb = { length = "9 ft", bore = "0.75 in", stiffness = "45 lbf/in", strength = "600 lbf" }
  breakaway = "illustrative-three-quarter"
  parting = { pull = "150 lbf", poppet = "double", reconnectable = true, friction = 0.1, tested = 2026-01-15, rejoined = { purged = "2 gal", watched = "2 min", on = 2026-01-15 } }
  nozzle_pull_out = "400 lbf"
  nozzle = { shelf = "illustrative-three-quarter-nozzle" }
  limiter = "10 gpm"
  [[dispenser.hose]]
  id = "D1.a.2"
  outlet_elevation = "3 ft 6 in"
  blend = [{ product = "regular", share = "65 %" }, { product = "premium", share = 0.35 }]
  loss = "0.2 psi/gpm"
  [[dispenser.hose]]
  id = "D1.d"
  product = "diesel"
  outlet_elevation = "3 ft 6 in"
  loss = { per_flow = "0.01 psi/gpm", per_flow_squared = "0.17 psi/gpm^2" }
  high_flow = false

[[emergency_stop]]
id = "E1"
position = ["170 ft", "20 ft"]
stops = ["P1", "P2", "P3"]
acts_in = { low = "20 s", likely = "60 s", high = "180 s" }
by_whom = "attendant"
reset = "by key, at the switch"
tested = 2026-02-01

[[interlock]]
id = "I1"
when = "S1"
then = "stop"
what = ["P1", "D1"]
acts_in = "5 s"
fail_safe = true

[[delivery]]
id = "usual"
at_once = 2
truck_open_to = "ullage"
surfaces = "moving"
hose = { length = "20 ft", bore = "4 in" }
compartment = [{ product = "regular", tank = "T1", volume = "3000 gal", height = "5 ft" }]
vapor_growth = 1.2

[operations]
opens = "06:00"
closes = "22:00"
attended = true
arrivals = [0, 0, 0, 0, 0, 5, 20, 40, 50, 40, 30, 30, 35, 30, 30, 35, 45, 60, 50, 30, 20, 10, 5, 0]
sale = "11 gal"
throughput = [{ product = "regular", per_month = "90000 gal" }]

[flow]
open = [["D1.a"], ["D1.a", "D1.d"]]
order = ["D1.d", "D1.a"]
keep = "8 gpm"

[forecourt]
slope = "1 %"
film = "2 mm"
drains_to = "interceptor"
drain_distance = "30 ft"
interceptor_volume = "500 gal"

[[incident]]
kind = "struck"
at = "D1"
open = ["D1.d"]
stop_at = "45 s"
stop_by = "E1"
counts_until = "10 min"
line_compliance = "20 mL/psi"
into_sump = "30 %"
sensor_dead_for = "2 s"

[[incident]]
id = "seep"
kind = "crack"
at = "D1.regular"
reading = [{ rate = "3 gph", at = "10 psi" }, { rate = "6 gph", at = "30 psi" }]
runs_for = "90 s"
rests_for = "210 s"

[[incident]]
kind = "drive-off"
at = "D1.a"
vehicle = { acceleration = "5 ft/s2", slack = "2 ft", angle = "30 deg", nozzle_height = "30 in", distance = "4 ft" }

[[incident]]
kind = "sump-fire"
at = "D1"
fire = { diameter = "20 in", gas_temperature = "900 degC", gas_speed = "3 m/s", start_temperature = "70 degF", link_above = "24 in" }

[[incident]]
kind = "overfill"
at = "T1"
delivery = "usual"
driver_acts_in = "20 s"
ordered = "3000 gal"

[[incident]]
kind = "line-break"
at = "trunk"
along = "50 %"
open_area = "0.5 in2"
discharge_coefficient = 0.61
pump_runs = false

[[extinguisher]]
id = "X1"
position = ["190 ft", "20 ft"]
rating = "4-A:40-B:C"

[surroundings]
complete = true
flood_elevation = "-3 ft"
  [[surroundings.building]]
  corner = ["100 ft", "60 ft"]
  opposite = ["160 ft", "100 ft"]
  fire_rating = "2 h"
    [[surroundings.building.opening]]
    position = ["130 ft", "60 ft"]
  [[surroundings.lot_line]]
  from = ["-40 ft", "-50 ft"]
  to = ["240 ft", "-50 ft"]
  [[surroundings.ignition]]
  position = ["200 ft", "40 ft"]
  [[surroundings.vapor_processor]]
  position = ["20 ft", "80 ft"]
)";

}  // namespace forecourse::site
