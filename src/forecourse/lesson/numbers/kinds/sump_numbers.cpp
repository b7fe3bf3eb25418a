// What the containment study tells of the sump at hand: of a dispenser or a tank, by its id.
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/lesson/numbers/pick.h"
#include "forecourse/lesson/numbers/sump_pick.h"

namespace forecourse::lesson {
namespace {

using studies::ContainedSump;

// The inflows that the containment study takes where none are asked for.
constexpr std::size_t at_detector_rate = 2;  ///< 3 gal/h
constexpr std::size_t at_broken_part = 4;    ///< 10 gal/min

/// A value of the sump at hand.
template <class Value>
Picked of_sump(const From& from, Value value) {
  const auto place = sump_place(from.ground, from.at);
  if (!place) return nothing("there is no sump at " + from.at + ": add sump = { ... }");
  const ContainedSump& sump = from.ground.studied.containment->sumps[*place];
  if (!sump.problem.empty()) return nothing(sump.problem);
  Picked out = value(sump);
  if (out.proof.pointer.empty()) return out;
  out.proof.command = {"containment"};
  out.proof.pointer = at_place("/result/sumps", *place) + out.proof.pointer;
  return out;
}

Picked brim(const From& from) {
  return of_sump(from, [](const ContainedSump& sump) { return picked(sump.brim, {}, "/brim_m3", ""); });
}

Picked at_sensor(const From& from) {
  return of_sump(from, [](const ContainedSump& sump) {
    return picked(sump.at_sensor, {}, "/at_sensor_m3", "enter how high the sensor trips: sensor_height = \"2 in\"");
  });
}

Picked sensor_height(const From& from) {
  return of_sump(from, [](const ContainedSump& sump) {
    return picked(sump.sensor_height, {}, "/sensor_height_m",
                  "enter how high the sensor trips: sensor_height = \"2 in\"");
  });
}

/// A time of the sump at one of the inflows.
template <class Value>
Picked of_fill(const From& from, std::size_t inflow, Value value, const char* key, const char* reason) {
  return of_sump(from, [&](const ContainedSump& sump) {
    if (sump.fills.size() <= inflow) return nothing("how soon it fills is not known");
    return picked(value(sump.fills[inflow]), {}, at_place("/fills", inflow) + key, reason);
  });
}

Picked to_sensor(const From& from) {
  return of_fill(
      from, at_detector_rate, [](const auto& fill) { return fill.to_sensor; }, "/to_sensor_s",
      "enter how high the sensor trips: sensor_height = \"2 in\"");
}

Picked to_seal(const From& from) {
  return of_fill(
      from, at_detector_rate, [](const auto& fill) { return fill.to_seal; }, "/to_lowest_seal_s",
      "enter how high the lowest seal sits: lowest_seal = \"10 in\"");
}

Picked to_brim(const From& from) {
  return of_fill(
      from, at_broken_part, [](const auto& fill) { return std::optional<double>(fill.to_brim); }, "/to_brim_s", "");
}

}  // namespace

std::optional<std::size_t> sump_place(const Ground& ground, const std::string& owner) {
  if (!ground.studied.containment) return std::nullopt;
  return place_of(ground.studied.containment->sumps, [&](const ContainedSump& one) { return one.owner == owner; });
}

std::vector<NumberKind> sump_numbers() {
  return {{"sump-holds", "Sump holds, to the brim", Quantity::volume, brim},
          {"sump-at-sensor", "In the sump when the sensor tells", Quantity::volume, at_sensor},
          {"sump-sensor-height", "Sensor trips above the floor at", Quantity::bore, sensor_height},
          {"sump-to-sensor", "A leak of 3 gal/h reaches the sensor in", Quantity::time, to_sensor},
          {"sump-to-seal", "A leak of 3 gal/h reaches the lowest seal in", Quantity::time, to_seal},
          {"sump-to-brim", "A broken part at 10 gal/min fills it in", Quantity::time, to_brim}};
}

}  // namespace forecourse::lesson
