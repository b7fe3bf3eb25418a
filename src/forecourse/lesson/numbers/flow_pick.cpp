#include "forecourse/lesson/numbers/flow_pick.h"

#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {
namespace {

using studies::FlowResult;
using studies::FlowState;
using studies::FlowStatus;
using studies::SystemFlow;

const FlowResult* flow_of(const Ground& ground) { return ground.studied.flow ? &*ground.studied.flow : nullptr; }

bool is_told(const SystemFlow& system) {
  return system.status == FlowStatus::determined || system.status == FlowStatus::at_rest;
}

/// Looks for an item of a list of the systems of one state.
template <class Told>
std::optional<InFlow<Told>> in_state(const FlowState& state, std::size_t place, std::vector<Told> SystemFlow::*list,
                                     const char* key, const std::string& id) {
  for (std::size_t s = 0; s < state.systems.size(); ++s) {
    const SystemFlow& system = state.systems[s];
    if (!is_told(system)) continue;
    const auto found = place_of(system.*list, [&](const Told& told) { return told.id == id; });
    if (!found) continue;
    const std::string head = at_place(at_place("/result/states", place) + "/systems", s);
    return InFlow<Told>{&(system.*list)[*found], at_place(head + key, *found), system.system};
  }
  return std::nullopt;
}

template <class Told>
std::optional<InFlow<Told>> in_first(const Ground& ground, std::vector<Told> SystemFlow::*list, const char* key,
                                     const std::string& id) {
  const FlowResult* flow = flow_of(ground);
  if (flow == nullptr || flow->states.empty()) return std::nullopt;
  return in_state(flow->states.front(), 0, list, key, id);
}

}  // namespace

std::optional<InFlow<studies::HoseFlow>> hose_in_flow(const Ground& ground, const std::string& hose) {
  const FlowResult* flow = flow_of(ground);
  if (flow == nullptr) return std::nullopt;
  std::optional<InFlow<studies::HoseFlow>> shut;
  for (std::size_t i = 0; i < flow->states.size(); ++i) {
    auto found = in_state(flow->states[i], i, &SystemFlow::hoses, "/hoses", hose);
    if (found && found->told->open) return found;
    if (!shut) shut = found;
  }
  return shut;
}

std::optional<InFlow<studies::HoseSummary>> hose_summary(const Ground& ground, const std::string& hose) {
  const FlowResult* flow = flow_of(ground);
  if (flow == nullptr) return std::nullopt;
  const auto place = place_of(flow->hoses, [&](const auto& one) { return one.id == hose; });
  if (!place) return std::nullopt;
  const auto in = hose_in_flow(ground, hose);
  return InFlow<studies::HoseSummary>{&flow->hoses[*place], at_place("/result/hoses", *place),
                                      in ? in->system : std::string()};
}

std::optional<InFlow<studies::PumpDuty>> pump_in_flow(const Ground& ground, const std::string& pump) {
  return in_first(ground, &SystemFlow::pumps, "/pumps", pump);
}

std::optional<InFlow<studies::LineFlow>> line_in_flow(const Ground& ground, const std::string& line) {
  return in_first(ground, &SystemFlow::lines, "/lines", line);
}

std::optional<InFlow<studies::PlacePressure>> place_in_flow(const Ground& ground, const std::string& place) {
  return in_first(ground, &SystemFlow::places, "/places", place);
}

std::optional<InFlow<studies::RestPlace>> place_at_rest(const Ground& ground, const std::string& place) {
  const FlowResult* flow = flow_of(ground);
  if (flow == nullptr) return std::nullopt;
  for (std::size_t s = 0; s < flow->lines_at_rest.size(); ++s) {
    const studies::LineAtRest& rest = flow->lines_at_rest[s];
    const auto found = place_of(rest.places, [&](const auto& one) { return one.id == place; });
    if (!found) continue;
    return InFlow<studies::RestPlace>{&rest.places[*found],
                                      at_place(at_place("/result/lines_at_rest", s) + "/places", *found), rest.system};
  }
  return std::nullopt;
}

std::optional<InFlow<studies::LineAtRest>> system_at_rest(const Ground& ground, const std::string& system) {
  const FlowResult* flow = flow_of(ground);
  if (flow == nullptr) return std::nullopt;
  const auto found = place_of(flow->lines_at_rest, [&](const auto& one) { return one.system == system; });
  if (!found) return std::nullopt;
  return InFlow<studies::LineAtRest>{&flow->lines_at_rest[*found], at_place("/result/lines_at_rest", *found), system};
}

std::string system_of_line(const Ground& ground, const std::string& line) {
  if (!ground.studied.line_test) return {};
  for (const studies::LineTest& one : ground.studied.line_test->lines) {
    if (place_of(one.lines, [&](const std::string& id) { return id == line; })) return one.system;
  }
  return {};
}

std::string why_no_flow(const Ground& ground, const std::string& system) {
  const FlowResult* flow = flow_of(ground);
  if (flow == nullptr) return "the station has no hose: add a [[dispenser.hose]]";
  for (const FlowState& state : flow->states) {
    for (const SystemFlow& one : state.systems) {
      if ((system.empty() || one.system == system) && !one.reason.empty()) return one.reason;
    }
  }
  return "it is not in the piping of any product";
}

Picked picked_flow(const Ground& ground, std::optional<double> value, const std::string& pointer,
                   const std::string& system, std::string reason) {
  return picked(value, {"flow"}, pointer, std::move(reason), unpublished(ground.studied.flow->defaults, system));
}

}  // namespace forecourse::lesson
