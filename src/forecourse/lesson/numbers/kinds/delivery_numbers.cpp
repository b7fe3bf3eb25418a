// What the delivery study tells of a drop: by the delivery at hand, or by the tank that it goes into.
#include <algorithm>

#include "forecourse/lesson/numbers/check_pick.h"
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {
namespace {

using studies::DeliveryResult;
using studies::DeliveryRun;

constexpr const char* enter_delivery = "add a [[delivery]] that says how a tanker unloads here";

/// A delivery that is about the part at hand.
const DeliveryResult* delivery_of(const From& from) {
  for (const DeliveryResult& one : from.ground.studied.deliveries) {
    if (one.delivery == from.at) return &one;
    if (one.runs.empty()) continue;
    const auto into = [&](const auto& tank) { return tank.tank == from.at; };
    if (place_of(one.runs.front().tanks, into)) return &one;
  }
  return nullptr;
}

/// Defaults that move what stands in pipes and hoses, and how it begins to flow: no times, and nothing of the vapor.
std::vector<DefaultUsed> of_the_liquid(std::vector<DefaultUsed> defaults) {
  const auto other = [](const DefaultUsed& one) {
    return one.unit == "s" || one.what.find("vapor") != std::string::npos;
  };
  defaults.erase(std::remove_if(defaults.begin(), defaults.end(), other), defaults.end());
  return defaults;
}

/// What of the defaults of a delivery a value rests on.
enum class Rests { on_all, on_liquid };

/// A value of its run.
template <class Value>
Picked of_run(const From& from, Value value, Rests rests = Rests::on_all) {
  const DeliveryResult* told = delivery_of(from);
  if (told == nullptr) return nothing(enter_delivery);
  if (told->runs.empty() || !told->problem.empty()) return nothing(told->problem);
  Picked out = value(told->runs.front());
  if (out.proof.pointer.empty()) return out;
  out.proof.command = {"delivery", told->delivery};
  out.proof.pointer = "/result/runs/0" + out.proof.pointer;
  out.rests_on = unpublished(rests == Rests::on_all ? told->defaults : of_the_liquid(told->defaults));
  return out;
}

/// A value of the drop into the tank at hand, or of the first.
template <class Value>
Picked of_drop(const From& from, Value value, const std::string& key) {
  return of_run(
      from,
      [&](const DeliveryRun& run) {
        if (run.drops.empty()) return nothing("nothing is dropped");
        const auto into = [&](const auto& drop) { return drop.tank == from.at; };
        const std::size_t place = place_of(run.drops, into).value_or(0);
        return picked(value(run.drops[place]), {}, at_place("/drops", place) + key, "");
      },
      Rests::on_liquid);
}

/// A value of the tank at hand, or of the first that is filled.
template <class Value>
Picked of_filled(const From& from, Value value, const std::string& key, const char* reason) {
  return of_run(from, [&](const DeliveryRun& run) {
    if (run.tanks.empty()) return nothing("nothing is dropped");
    const auto is_meant = [&](const auto& tank) { return tank.tank == from.at; };
    const std::size_t place = place_of(run.tanks, is_meant).value_or(0);
    return picked(value(run.tanks[place]), {}, at_place("/tanks", place) + key, reason);
  });
}

/// A value of the vapor above the tank at hand.
template <class Value>
Picked of_ullage(const From& from, Value value, const std::string& key, const char* reason) {
  return of_run(from, [&](const DeliveryRun& run) {
    const auto is_over = [&](const auto& ullage) {
      return place_of(ullage.tanks, [&](const std::string& id) { return id == from.at; }).has_value();
    };
    const auto place = place_of(run.ullages, is_over);
    if (!place) return nothing("no delivery into tank " + from.at + " is listed: add it to a [[delivery]]");
    if (!run.ullages[*place].problem.empty()) return nothing(run.ullages[*place].problem);
    return picked(value(run.ullages[*place]), {}, at_place("/ullages", *place) + key, reason);
  });
}

Picked rate(const From& from) {
  return of_drop(
      from, [](const auto& drop) { return std::optional<double>(drop.first_rate); }, "/first_rate_m3_per_s");
}

Picked time(const From& from) {
  Picked out = of_run(from, [](const DeliveryRun& run) { return picked(run.time, {}, "/time_s", ""); });
  const DeliveryResult* told = delivery_of(from);
  if (told == nullptr || !told->time_range) return out;
  return between(std::move(out), {told->time_range->low, told->time_range->high, "/result/time_range_s/low",
                                  "/result/time_range_s/high"});
}

Picked in_hose(const From& from) {
  return of_drop(
      from, [](const auto& drop) { return std::optional<double>(drop.hose_holds); }, "/hose_holds_m3");
}

Picked container(const From& from) {
  Picked out = of_filled(
      from, [](const auto& tank) { return tank.container; }, "/spill_container_m3",
      "enter the volume of the spill container: spill_container = { volume = \"5 gal\" }");
  out.rests_on.clear();  // it is as entered
  return out;
}

Picked to_shut(const From& from) {
  return of_filled(
      from, [](const auto& tank) { return tank.seconds_to_shut; }, "/alarm_to_shutoff_s",
      "this drop does not come from the alarm to the shutoff");
}

Picked highest(const From& from) {
  Picked out = of_ullage(
      from, [](const auto& one) { return std::optional<double>(one.highest_pressure); }, "/highest_pressure_gauge_pa",
      "");
  const DeliveryResult* told = delivery_of(from);
  // The study's range is of the highest of all ullages.
  if (told == nullptr || !told->pressure_range || told->runs.front().ullages.size() != 1) return out;
  const std::string place = "/result/highest_ullage_pressure_range_gauge_pa";
  return between(std::move(out),
                 {told->pressure_range->low, told->pressure_range->high, place + "/low", place + "/high"});
}

/// By the delivery, else by the finding on the setting of the tank's vent.
Picked opens_at(const From& from) {
  Picked out = of_ullage(
      from, [](const auto& one) { return one.opens_at; }, "/vent_opens_at_pa",
      "enter opens_at of the valve of the vent");
  if (out.value) return out;
  for (const site::Tank& tank : from.ground.site.tanks) {
    if (tank.id.text != from.at || tank.vents.empty()) continue;
    Picked found = of_finding({from.ground, tank.vents.front().id.text, from.incidents}, "vent-pressure-setting", "");
    if (found.value) return found;
  }
  return out;
}

Picked vented(const From& from) {
  return of_ullage(
      from, [](const auto& one) { return std::optional<double>(one.vented); }, "/vented_m3", "");
}

Picked returned(const From& from) {
  return of_ullage(
      from, [](const auto& one) { return std::optional<double>(one.returned); }, "/to_truck_m3", "");
}

}  // namespace

std::vector<NumberKind> delivery_numbers() {
  return {{"drop-rate", "Drop at the start", Quantity::flow, rate},
          {"drop-time", "Until the delivery ends", Quantity::time, time},
          {"drop-hose-holds", "Fuel in truck pipe and hose", Quantity::volume, in_hose},
          {"spill-container-holds", "Spill container holds", Quantity::volume, container},
          {"alarm-to-shutoff", "From the alarm to the shutoff", Quantity::time, to_shut},
          {"ullage-highest", "Highest vapor pressure in a drop", Quantity::ullage_pressure, highest},
          {"vent-opens-at", "The vent's valve opens at", Quantity::ullage_pressure, opens_at},
          {"vapor-vented", "Vapor out of the vent in a delivery", Quantity::volume, vented},
          {"vapor-returned", "Vapor back to the tanker in a delivery", Quantity::volume, returned}};
}

}  // namespace forecourse::lesson
