#include "forecourse/report/flow/pump_json.h"

#include "forecourse/site/fields/rules.h"

namespace forecourse::report {
namespace {

using network::PressureHeld;

Json warming(const std::optional<studies::PumpHeat>& heat) {
  if (!heat) return nullptr;
  const bool known = heat->rate.has_value();
  return {{"rate_k_per_s", number_or_null(heat->rate)},
          {"rate_low_k_per_s", known ? number_or_null(heat->rate_low) : Json(nullptr)},
          {"rate_high_k_per_s", known ? number_or_null(heat->rate_high) : Json(nullptr)},
          {"rise_k", number_or_null(heat->rise)},
          {"time_to_rise_s", known ? number_or_null(heat->time_to_rise) : Json(nullptr)},
          {"missing", known ? Json(nullptr) : Json(heat->missing)}};
}

Json opening(const std::optional<studies::PumpOpening>& opening) {
  if (!opening) return nullptr;
  return {{"total_flow_m3_per_s", number_or_null(opening->total_flow)}, {"drawn_at", opening->drawn_at}};
}

const char* word(PressureHeld held) {
  switch (held) {
    case PressureHeld::held:
      return "held";
    case PressureHeld::not_reached:
      return "not reached";
    case PressureHeld::passed:
      return "passed";
    case PressureHeld::not_asked:
    case PressureHeld::not_determined:
      break;
  }
  return "not determined";
}

std::string word(site::ControlKind kind) {
  for (const auto& entry : site::control_words) {
    if (entry.value == kind) return std::string(entry.word);
  }
  return {};
}

Json step(const studies::ControlStepTold& s) {
  return {{"pumps", s.pumps},
          {"determined", s.determined},
          {"rests", s.rests},
          {"line_pressure_gauge_pa", s.determined ? number_or_null(s.line_pressure_gauge) : Json(nullptr)},
          {"total_flow_m3_per_s", s.determined ? number_or_null(s.total_flow) : Json(nullptr)}};
}

Json range(const studies::HoseRange& hose) {
  return {{"id", hose.id},
          {"least_flow_m3_per_s", number_or_null(hose.least)},
          {"most_flow_m3_per_s", number_or_null(hose.most)}};
}

}  // namespace

Json pump_json(const studies::PumpDuty& p) {
  return {{"id", p.id},
          {"tank", p.tank},
          {"running", p.running},
          {"speed_share", number_or_null(p.speed)},
          {"flow_m3_per_s", number_or_null(p.flow)},
          {"pressure_rise_pa", number_or_null(p.pressure_rise)},
          {"discharge_pressure_gauge_pa", number_or_null(p.discharge_pressure_gauge)},
          {"leak_detector_pressure_gauge_pa", number_or_null(p.leak_detector_pressure_gauge)},
          {"dead_headed", p.dead_headed},
          {"runs_back", p.runs_back},
          {"opens_at", opening(p.opening)},
          {"warming", warming(p.heat)},
          {"bypass", p.bypass ? Json(*p.bypass) : Json(nullptr)},
          {"best_efficiency_flow_share", number_or_null(p.share_of_best_efficiency_flow)}};
}

Json control_json(const std::optional<studies::ControlTold>& told) {
  if (!told) return nullptr;
  const studies::ControlTold& c = *told;
  const bool has_speed = c.kind == site::ControlKind::variable_speed;
  Json steps = Json::array();
  for (const auto& s : c.steps) steps.push_back(step(s));
  Json ranges = Json::array();
  for (const auto& hose : c.hoses) ranges.push_back(range(hose));
  return {{"id", c.id},
          {"kind", word(c.kind)},
          {"order", c.order},
          {"hoses_open", c.hoses_open},
          {"starts_below_pressure_gauge_pa", number_or_null(c.starts_below)},
          {"stops_above_pressure_gauge_pa", number_or_null(c.stops_above)},
          {"hoses_calling", number_or_null(c.hoses_calling)},
          {"alternates_after_s", number_or_null(c.alternates_after)},
          {"holds_pressure_gauge_pa", number_or_null(c.holds)},
          {"least_speed_share", has_speed ? number_or_null(c.least_speed) : Json(nullptr)},
          {"most_speed_share", has_speed ? number_or_null(c.most_speed) : Json(nullptr)},
          {"speed_share", has_speed ? number_or_null(c.speed) : Json(nullptr)},
          {"pressure", has_speed ? Json(word(c.held)) : Json(nullptr)},
          {"states", std::move(steps)},
          {"state_told", c.taken},
          {"short_cycles_with_state", c.hunts_with ? Json(*c.hunts_with) : Json(nullptr)},
          {"hose_ranges", std::move(ranges)}};
}

}  // namespace forecourse::report
