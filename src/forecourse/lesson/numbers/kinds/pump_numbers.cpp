// What the flow study and the line tests tell of the pump at hand and of its leak detector.
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {
namespace {

using studies::DetectorTold;

Picked shutoff(const From& from) {
  const auto at = place_at_rest(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->shutoff_gauge, at->pointer + "/shutoff_pressure_gauge_pa", at->system,
                     "enter discharge_elevation of pump " + from.at + " and the level in its tank");
}

Picked flow(const From& from) {
  const auto at = pump_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->flow, at->pointer + "/flow_m3_per_s", at->system, "");
}

Picked pressure(const From& from) {
  const auto at = pump_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->discharge_pressure_gauge, at->pointer + "/discharge_pressure_gauge_pa",
                     at->system, "");
}

Picked rise(const From& from) {
  const auto at = pump_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->pressure_rise, at->pointer + "/pressure_rise_pa", at->system, "");
}

/// A value of the leak detector of the pump at hand.
template <class Value>
Picked of_detector(const From& from, Value value) {
  if (!from.ground.studied.line_test) return nothing("add the [[line]] that pump " + from.at + " feeds");
  const auto& lines = from.ground.studied.line_test->lines;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto place = place_of(lines[i].detectors, [&](const auto& one) { return one.pump == from.at; });
    if (!place) continue;
    Picked out = value(lines[i].detectors[*place]);
    if (out.proof.pointer.empty()) return out;
    out.proof.command = {"line-test"};
    out.proof.pointer = at_place(at_place("/result/lines", i) + "/detectors", *place) + out.proof.pointer;
    return out;
  }
  return nothing("pump " + from.at + " has no leak detector: add leak_detector = { ... }");
}

Picked finds(const From& from) {
  return of_detector(from, [](const DetectorTold& one) {
    return picked(one.detects, {}, "/detects_m3_per_s", "enter what the leak detector detects: detects = \"3 gph\"");
  });
}

Picked finds_at(const From& from) {
  return of_detector(from, [](const DetectorTold& one) {
    return picked(one.at, {}, "/at_pressure_gauge_pa",
                  "enter the pressure at which the leak detector finds that: at = \"10 psi\"");
  });
}

/// Through a sharp hole of the published rate, at the pressure of the line without flow.
Picked passes(const From& from) {
  return of_detector(from, [](const DetectorTold& one) {
    if (one.catches.size() < 2) return nothing("the pressure that is held in the line is not known");
    const std::size_t last = one.catches.size() - 1;
    return picked(one.catches[last].rate, {}, at_place("/catches", last) + "/sharp_m3_per_s", "");
  });
}

Picked hole(const From& from) {
  return of_detector(from, [](const DetectorTold& one) { return picked(one.orifice, {}, "/orifice_m", ""); });
}

Picked opening(const From& from) {
  const auto at = place_at_rest(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  const auto rest = system_at_rest(from.ground, at->system);
  return picked_flow(from.ground, rest->told->opening_time, rest->pointer + "/leak_detector_opening_time_s", at->system,
                     rest->told->detector_note);
}

}  // namespace

std::vector<NumberKind> pump_numbers() {
  return {{"pump-pressure-shut", "At the discharge, every hose shut", Quantity::pressure, shutoff},
          {"pump-flow", "Pumped with the hoses open", Quantity::flow, flow},
          {"pump-pressure", "At the discharge, with the hoses open", Quantity::pressure, pressure},
          {"pump-rise", "Added by the pump, with the hoses open", Quantity::pressure, rise},
          {"detector-finds", "Leak that the detector must find", Quantity::leak, finds},
          {"detector-finds-at", "At a line pressure of", Quantity::pressure, finds_at},
          {"detector-passes", "The same hole leaks, at the pressure here", Quantity::leak, passes},
          {"detector-hole", "That hole is this wide", Quantity::bore, hole},
          {"detector-opening", "Until the detector lets full flow pass", Quantity::time, opening}};
}

}  // namespace forecourse::lesson
