#include "forecourse/decide/mend/lever_rows.h"

#include <array>

namespace forecourse::decide {

// Which entered value a figure reads. Ratings, listings and what was measured are not among them: another one is fitted
// or measured, and what it then is cannot be told beforehand.

namespace {

// Of a part that pipes lead to: they are not drawn anew here.
constexpr std::string_view move_dispenser =
    "move the dispenser, and lay its lines anew (their lengths are not changed here)";
constexpr std::string_view move_vent = "move the vent, and lay its pipe anew (its length is not changed here)";
constexpr std::string_view move_fill = "move the fill, and lay its pipe anew (its length is not changed here)";
constexpr std::string_view move_tank = "move the tank, and lay its lines anew (their lengths are not changed here)";
constexpr std::string_view move_processor =
    "move the vapor processor, and lay its lines anew (their lengths are not changed here)";

}  // namespace

std::span<const AmountRow> amount_rows() {
  using enum PartOf;
  using enum Sense;
  static constexpr auto rows = std::to_array<AmountRow>({
      // Vents and fills
      {"vent-above-fill", vent, "outlet_elevation", more, Grid::inch, "raise the vent's outlet"},
      {"vents|vent-height", vent, "outlet_elevation", more, Grid::inch, "raise the vent's outlet"},
      {"fill-height", fill, "elevation", less, Grid::inch, "lower the fill"},
      {"fill-pipe-end", fill, "drop_tube.end_above_bottom", less, Grid::eighth, "fit a longer drop tube"},
      {"drop-tube-gap", fill, "drop_tube.end_above_bottom", less, Grid::eighth, "fit a longer drop tube"},
      {"vapor|submerged-fill", fill, "drop_tube.end_above_bottom", less, Grid::eighth, "fit a longer drop tube"},
      {"spill-room", fill, "spill_container.volume", more, Grid::gallon, "fit a larger spill container"},
      // Tanks in the ground
      {"tank-surround", tank, "ground.surround", more, Grid::inch, "dig wider, and fill around the tank"},
      {"tank-paving-beyond", tank, "flotation.slab.overhang", more, Grid::inch, "let the slab reach further"},
      {"tank-paving-beyond", tank, "ground.paving_beyond", more, Grid::inch, "pave further"},
      {"protected-notice-share", tank, "overfill_alarm.at_share", less, Grid::percent, "set the alarm lower", false},
      {"protected-notice-share", tank, "overfill_alarm.at_depth", less, Grid::eighth, "set the alarm lower", false},
      // No lever is the cover: a tank in place is not buried deeper, and its bottom would lie where it is.
      // The slab's thickness takes from the earth over the tank, or stands for it.
      {"tank-earth-cover", tank, "flotation.slab.thickness", more, Grid::inch, "pour a thicker slab", false},
      {"tank-earth-cover", tank, "ground.asphalt", more, Grid::inch, "pave thicker", false},
      {"flotation|flotation-factor-empty", tank, "flotation.slab.thickness", more, Grid::inch,
       "pour a thicker slab, by a licensed engineer", false},
      {"flotation|flotation-factor-empty", tank, "flotation.slab.overhang", more, Grid::inch,
       "let the slab reach further, by a licensed engineer", false},
      {"flotation|flotation-strap", tank, "flotation.strap.count", more, Grid::count,
       "tie it with more straps, by a licensed engineer", false},
      {"gauging-quiet", tank, "gauging_quiet", more, Grid::hour, "let the tank stand longer"},
      // Lines
      {"line-straight-run", line, "straight_run", more, Grid::inch, "lay a longer straight run"},
      {"line-in-sump", line, "in_sump", less, Grid::inch, "change to metal or a listed connector nearer to the wall"},
      // Dispensers
      {"shear-groove-offset", inlet, "shear_valve.groove_elevation", either, Grid::eighth,
       "set the shear valve with its groove nearer to the top of the island"},
      {"island-height", dispenser, "island_height", more, Grid::eighth, "raise the island"},
      {"access-highest", dispenser, "access.highest", less, Grid::inch, "lower the highest part that is operated"},
      {"access-lowest", dispenser, "access.lowest", more, Grid::inch, "raise the lowest part that is operated"},
      {"access-reach-over", dispenser, "access.reach_over", less, Grid::eighth,
       "set the dispenser nearer to the edge of its curb"},
      {"access-floor-length", dispenser, "access.floor_length", more, Grid::inch, "clear more floor"},
      {"access-floor-width", dispenser, "access.floor_width", more, Grid::inch, "clear more floor"},
      {"access-slope", dispenser, "access.slope", less, Grid::tenth, "level the floor"},
      {"sump-room", tank, "sump.depth", more, Grid::inch, "fit a deeper sump", false},
      {"sump-room", dispenser, "sump.depth", more, Grid::inch, "fit a deeper sump", false},
      {"sump-brim-time", tank, "sump.depth", more, Grid::inch, "fit a deeper sump", false},
      {"sump-brim-time", dispenser, "sump.depth", more, Grid::inch, "fit a deeper sump", false},
      {"sump-sensor-time", tank, "sump.sensor_height", less, Grid::eighth, "set the sensor lower", false},
      {"sump-sensor-time", dispenser, "sump.sensor_height", less, Grid::eighth, "set the sensor lower", false},
      {"sump-sensor-time", tank, "sump.sensor.height", less, Grid::eighth, "set the sensor lower", false},
      {"sump-sensor-time", dispenser, "sump.sensor.height", less, Grid::eighth, "set the sensor lower", false},
      // Hoses
      {"hose-length", hose, "curb.length", less, Grid::inch, "fit a shorter curb hose"},
      {"hose-length", hose, "whip.length", less, Grid::inch, "fit a shorter whip hose"},
      {"nozzle-to-opening", hose, "curb.length", less, Grid::inch, "fit a shorter curb hose"},
      {"retriever-beyond-breakaway", hose, "retriever_at", more, Grid::inch,
       "clamp the retriever on the dispenser's side of the breakaway"},
      // Operation
      {"emergency-stop-height", stop, "height", either, Grid::inch, "mount the switch"},
      {"sale-limit", station, "operations.sale_limit", less, Grid::gallon, "set the limit of a sale lower"},
      {"kept-monitoring", station, "operations.records_kept.monitoring", more, Grid::month, "keep them longer"},
      {"kept-operability", station, "operations.records_kept.operability", more, Grid::month, "keep them longer"},
      {"kept-claims", station, "operations.records_kept.claims", more, Grid::month, "keep them longer"},
      {"kept-repairs", station, "operations.records_kept.repairs", more, Grid::month, "keep them longer"},
      {"kept-schedules", station, "operations.records_kept.schedules", more, Grid::month, "keep them longer"},
      {"throughput-ready", station, "operations.records_kept.throughput_ready", less, Grid::hour,
       "keep the records where they can be had"},
  });
  return rows;
}

std::span<const FactRow> fact_rows() {
  using enum PartOf;
  static constexpr auto rows = std::to_array<FactRow>({
      {"tank-double-wall", tank, "double_wall", "true"},
      {"tank-compatible", tank, "compatible", "true"},
      {"tank-interstice-alarm", tank, "interstice.alarm", "true"},
      {"vent-upward", vent, "upward", "true"},
      {"vent-drains", vent, "drains", "true"},
      {"vent-guarded", vent, "flame_arrester", "true",
       "fit a flame arrester; or a pressure/vacuum valve, and enter that in its place"},
      {"vents|vent-restrictor", vent, "restrictor", "false"},
      {"vapor|two-point", tank, "vapor_return.kind", "\"two-point\""},
      {"fill-outside", fill, "outside", "true"},
      {"fill-tight", fill, "tight", "true"},
      {"fill-through-top", fill, "through_top", "true"},
      {"fill-slopes", fill, "slopes", "true"},
      {"gauged-before-drop", delivery, "gauged", "true"},
      {"tanker-tightness-proof", delivery, "tightness_proof", "true"},
      {"tanker-tight-hoses", delivery, "tight_hoses", "true"},
      {"flow|pump-bypass", pump, "bypass", "true"},
      {"line-double-wall", line, "double_wall", "true"},
      {"line-interstice-alarm", line, "interstice.alarm", "true"},
      {"line-flexible-joints", line, "flexible_joints", "true"},
      {"dispenser-sump-tight", dispenser, "sump.tight", "true"},
      {"dispenser-sump-open", dispenser, "sump.open_to_view", "true"},
      {"shear-valve-anchored", inlet, "shear_valve.anchored", "true"},
      {"shear-valve-clear", inlet, "shear_valve.clear", "true"},
      {"dispenser-guard", dispenser, "guarded", "true"},
      {"dispenser-guarded", dispenser, "guarded", "true"},
      {"dispenser-fastened", dispenser, "fastened", "true"},
      {"vehicle-inside", dispenser, "vehicle_inside", "true"},
      {"nozzle-switch", dispenser, "nozzle_switch", "true"},
      {"vapor-line-breaks", dispenser, "vapor_line.breaks", "true"},
      {"vapor-line-shear-mounted", dispenser, "vapor_line.shear_mounted", "true"},
      {"vapor-line-drains", dispenser, "vapor_line.drains", "true"},
      {"vapor-line-closes", dispenser, "vapor_line.closes", "true"},
      {"hose-racked", hose, "racked", "true"},
      {"nozzle-self-closing", hose, "self_closing", "true"},
      {"nozzle-closes-without-pressure", hose, "closes_without_pressure", "true"},
      {"breakaway-retains", hose, "parting.poppet", "\"double\""},
      {"emergency-stop-sign", stop, "sign", "true"},
      {"emergency-stop-manual-reset", stop, "manual_reset", "true"},
      {"emergency-stop-cuts-power", stop, "also_cuts_power", "true"},
      {"stop-keeps-monitoring", stop, "keeps_monitoring", "true"},
      {"card-limits", station, "operations.card_limits", "true"},
      {"warning-signs", station, "operations.warning_signs", "true"},
  });
  return rows;
}

std::span<const PlaceRow> place_rows() {
  using enum PartOf;
  static constexpr auto rows = std::to_array<PlaceRow>({
      {"dispenser-to-lot-line", dispenser, true, move_dispenser},
      {"dispenser-to-building", dispenser, true, move_dispenser},
      {"dispenser-to-ignition", dispenser, true, move_dispenser},
      {"dispenser-to-ignition", ignition, false, "move source of ignition"},
      {"vent-to-opening", vent, true, move_vent},
      {"vent-to-lot-line", vent, true, move_vent},
      {"vent-to-ignition", vent, true, move_vent},
      {"vent-to-ignition", ignition, false, "move source of ignition"},
      {"fill-to-opening", fill, true, move_fill},
      {"fill-to-lot-line", fill, true, move_fill},
      {"fill-to-ignition", fill, true, move_fill},
      {"fill-to-ignition", ignition, false, "move source of ignition"},
      {"tank-to-basement", tank, true, move_tank},
      {"tank-to-lot-line", tank, true, move_tank},
      {"tank-to-buildable", tank, true, move_tank},
      {"tank-to-tank", tank, true, move_tank},
      {"processor-to-building", processor, true, move_processor},
      {"processor-to-lot-line", processor, true, move_processor},
      {"processor-to-dispenser", processor, true, move_processor},
      {"emergency-stop-clearance", stop, true, "move the emergency stop"},
      {"emergency-stop-reach", stop, false, "move the emergency stop"},
  });
  return rows;
}

std::span<const SizeRow> size_rows() {
  using enum PartOf;
  static constexpr auto rows = std::to_array<SizeRow>({
      {"vent-size", vent, "pipe", "lay a wider vent"},
      {"vent-size-for-flow", vent, "pipe", "lay a wider vent"},
      {"delivery|vent-size", vent, "pipe", "lay a wider vent"},
  });
  return rows;
}

std::span<const OtherRow> other_rows() {
  using enum MendWay;
  static constexpr auto rows = std::to_array<OtherRow>({
      // A tank in place is not buried deeper by a value.
      {"tank-earth-cover", work},
      // Another part is fitted.
      {"spill-container-fitted", replace},
      {"dispenser-sump-fitted", replace},
      {"dispenser-sump-sensor", replace},
      {"shear-valve-fitted", replace},
      {"breakaway-fitted", replace},
      {"tank-held-down", replace},
      {"pump-stopped", replace},
      {"recovery-fitted", replace},
      {"recovery-capture", replace},
      {"vapor-return-efficiency", replace},
      {"gauge-leak-rate", replace},
      {"tank-tightness-rate", replace},
      {"statistics-leak-rate", replace},
      {"statistics-threshold", replace},
      {"detection", replace},
      {"false-alarm", replace},
      {"level-step", replace},
      {"tank-capacity", replace},
      {"well-water-depth", replace},
      {"well-conductivity", replace},
      {"well-layer", replace},
      {"barrier-permeability", replace},
      {"barrier-dry-place", replace},
      {"spout-diameter", replace},
      {"spout-straight", replace},
      {"spout-spring", replace},
      {"breakaway-pull", replace},
      {"breakaway-rating", replace},
      {"breakaway-burst", replace},
      {"swivel-rating", replace},
      {"nozzle-rating", replace},
      {"hose-bore", replace},
      {"hose-ethanol", replace},
      {"hose-pressure", replace},
      {"pump-pressure", replace},
      {"line-pressure", replace},
      {"riser-pressure", replace},
      {"shear-valve-pressure", replace},
      {"shear-valve-passes", replace},
      {"coldest-air", replace},
      {"hottest-air", replace},
      {"line-ground", replace},
      {"meter-class", replace},
      {"overfill-valve-leak", replace},
      {"fill-turns-at", replace},
      {"vent-valve-pressure-leak", replace},
      {"vent-valve-vacuum-leak", replace},
      {"vent-valve-opens-at", replace},
      {"vent-valve-vacuum-opens-at", replace},
      {"protected-slow-flow", replace},
      {"vapor|vent-pressure-setting", replace},
      {"vapor|vent-vacuum-setting", replace},
      {"vapor|vent-pressure-leak", replace},
      {"vapor|vent-vacuum-leak", replace},
      {"line-test|leak-detector-rate", replace},
      {"line-test|leak-detector-time", replace},
      // A test or a reading is made again.
      {"spill-test-below-top", retest},
      {"spill-test-settled", retest},
      {"spill-test-waited", retest},
      {"spill-test-change", retest},
      {"sump-test-above-seal", retest},
      {"sump-test-below-top", retest},
      {"sump-test-settled", retest},
      {"sump-test-waited", retest},
      {"sump-test-change", retest},
      {"sump-test-boots", retest},
      {"shear-valve-tested-since-hit", retest},
      {"detector-tested-at", retest},
      {"line-acceptance-pressure", retest},
      {"line-acceptance-operating", retest},
      {"line-acceptance-time", retest},
      {"breakaway-purged", retest},
      {"breakaway-watched", retest},
      {"recovery-ratio", retest},
      {"vapor|static-pressure-test", retest},
      {"line-test|line-tightness-test", retest},
      // Something is due.
      {"release-reported", duty},
      {"repair-to-test", duty},
      {"sump-repair-to-test", duty},
      {"spill-repair-to-test", duty},
      {"monitoring-end-to-test", duty},
      {"protection-repair-to-test", duty},
      {"tank-change-notice", duty},
      {"line-test|leak-detector-yearly", duty},
      {"line-test|line-yearly", duty},
  });
  return rows;
}

}  // namespace forecourse::decide
