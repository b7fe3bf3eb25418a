// What flow, incidents and checks tell of the shear valve at hand, by the place of its inlet.
#include "forecourse/lesson/numbers/check_pick.h"
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/numbers/incident_pick.h"
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/site/places.h"

namespace forecourse::lesson {
namespace {

using studies::IncidentKind;
using studies::IncidentResult;

/// The same part's dispenser: a blow and a fire meet all of its valves.
From at_dispenser(const From& from) {
  for (const site::Dispenser& dispenser : from.ground.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) == from.at) return {from.ground, dispenser.id.text, from.incidents};
    }
  }
  return from;
}

Picked groove_height(const From& from) { return of_finding(from, "shear-groove-offset", "us-fire-code"); }

Picked pressure_shut(const From& from) {
  const auto at = place_at_rest(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->shutoff_gauge, at->pointer + "/shutoff_pressure_gauge_pa", at->system,
                     "enter line_elevation of " + from.at + " and the level in the tank");
}

Picked pressure_held(const From& from) {
  const auto at = place_at_rest(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->held_gauge, at->pointer + "/held_pressure_gauge_pa", at->system,
                     "enter line_elevation of " + from.at + ", and what holds the line when the pump has stopped");
}

Picked pressure_running(const From& from) {
  const auto at = place_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->pressure_gauge, at->pointer + "/pressure_gauge_pa", at->system, "");
}

/// A value of the jet out of the full opening, the valve not acting.
template <class Value>
Picked of_jet(const From& from, Value value, const char* key) {
  return of_incident(at_dispenser(from), IncidentKind::struck, [&](const IncidentResult& told) {
    const auto full = place_of(told.jets, [](const auto& jet) { return jet.area_share == 1.0; });
    if (!full) return nothing("no fuel stands under pressure at the groove");
    return picked(value(told.jets[*full]), {}, at_place("/result/jets", *full) + key, "");
  });
}

Picked jet_flow(const From& from) {
  return of_jet(
      from, [](const auto& jet) { return jet.flow; }, "/flow_m3_per_s");
}

Picked jet_minute(const From& from) {
  return of_jet(
      from, [](const auto& jet) { return jet.in_60_seconds; }, "/in_60_s_m3");
}

Picked jet_height(const From& from) {
  return of_jet(
      from, [](const auto& jet) { return jet.height_high; }, "/height_high_m");
}

Picked struck(const From& from) {
  return of_incident(at_dispenser(from), IncidentKind::struck, [](const IncidentResult& told) {
    if (told.runs.empty()) return nothing("the incident was not run");
    return picked_spread(told.escaped, "/result/escaped_m3", "");
  });
}

/// A value of a crack's leak.
template <class Value>
Picked of_crack(const From& from, Value value, const char* key, const char* reason) {
  return of_incident(from, IncidentKind::crack, [&](const IncidentResult& told) {
    if (!told.crack) return nothing("how much the crack leaks is not determined");
    return picked_spread(value(*told.crack), std::string("/result/crack/") + key, reason);
  });
}

Picked crack_leak(const From& from) {
  return of_crack(
      from, [](const auto& crack) { return std::optional(crack.at_running); }, "at_running_m3_per_s", "");
}

Picked crack_at_detector(const From& from) {
  return of_crack(
      from, [](const auto& crack) { return std::optional(crack.at_detector); }, "at_detector_m3_per_s", "");
}

Picked crack_to_sensor(const From& from) {
  return of_crack(
      from, [](const auto& crack) { return crack.to_sensor; }, "to_sensor_s",
      "no sensor height is entered for the sump there");
}

/// A value of a fire under the dispenser.
template <class Value>
Picked of_fire(const From& from, Value value, const char* key, const std::string& reason) {
  return of_incident(at_dispenser(from), IncidentKind::sump_fire, [&](const IncidentResult& told) {
    if (!told.fire) return nothing("the fire is not determined");
    return picked(value(*told.fire), {}, std::string("/result/fire/") + key,
                  reason.empty() ? told.fire->link_reason : reason);
  });
}

Picked link_rating(const From& from) {
  return of_fire(
      from, [](const auto& fire) { return fire.rated; }, "rated_k",
      "enter the rating of the link: fusible_link = \"165 degF\"");
}

Picked link_parts(const From& from) {
  return of_fire(
      from, [](const auto& fire) { return fire.link_parts_at; }, "link_parts_at_s", "");
}

Picked fed_without_link(const From& from) {
  return of_fire(
      from, [](const auto& fire) { return fire.fed_without_link; }, "fed_without_link_m3",
      "enter when the pumps are stopped: stop_at = \"2 min\"");
}

Picked flame_height(const From& from) {
  return of_incident(at_dispenser(from), IncidentKind::sump_fire, [](const IncidentResult& told) {
    if (!told.fire) return nothing("the fire is not determined");
    return picked_spread(told.fire->flame_height, "/result/fire/flame_height_m", "");
  });
}

}  // namespace

std::vector<NumberKind> shear_valve_numbers() {
  return {{"groove-height", "Groove above the island's top", Quantity::bore, groove_height},
          {"inlet-pressure-shut", "Pressure there, every hose shut", Quantity::pressure, pressure_shut},
          {"inlet-pressure-held", "Pressure there when the pump has stopped", Quantity::pressure, pressure_held},
          {"inlet-pressure-running", "Pressure there with the hoses open", Quantity::pressure, pressure_running},
          {"jet-flow", "Out of the broken pipe, valve not acting", Quantity::flow, jet_flow},
          {"jet-minute", "In a minute, valve not acting", Quantity::volume, jet_minute},
          {"jet-height", "The jet rises this high, without air", Quantity::length, jet_height},
          {"struck-escapes", "Escapes when struck", Quantity::volume, struck},
          {"crack-leak", "A crack leaks with the pump running", Quantity::leak, crack_leak},
          {"crack-at-detector", "The same crack when the detector tests", Quantity::leak, crack_at_detector},
          {"crack-to-sensor", "Until the sump's sensor tells", Quantity::time, crack_to_sensor},
          {"link-rating", "The link parts at", Quantity::temperature, link_rating},
          {"link-parts", "In the fire the link parts after", Quantity::time, link_parts},
          {"fed-without-link", "Feeds the fire without the link", Quantity::volume, fed_without_link},
          {"flame-height", "Flames rise this high", Quantity::length, flame_height}};
}

}  // namespace forecourse::lesson
