#include "forecourse/studies/flow/pumps/control_told.h"

#include <algorithm>

namespace forecourse::studies {
namespace {

using network::ControlOutcome;
using network::ControlStep;
using network::PipingSystem;

std::vector<std::string> names(const PipingSystem& system, const std::vector<std::size_t>& pumps) {
  std::vector<std::string> out;
  out.reserve(pumps.size());
  for (const std::size_t pump : pumps) out.push_back(system.pumps[pump].id);
  return out;
}

bool is_usable(const ControlStep& step) { return step.status != solvers::SteadyStatus::not_converged; }

/// The steps at which the pumps may be found: those at rest, and the two between which a pump starts and stops.
std::vector<const ControlStep*> possible(const ControlOutcome& outcome) {
  std::vector<const ControlStep*> out;
  for (std::size_t i = 0; i < outcome.steps.size(); ++i) {
    const bool hunts = outcome.hunts_with && (i == outcome.taken || i == *outcome.hunts_with);
    const bool found = outcome.steps[i].rests || hunts;
    if (found && is_usable(outcome.steps[i])) out.push_back(&outcome.steps[i]);
  }
  return out;
}

std::vector<HoseRange> ranges(const PipingSystem& system, const network::SystemState& state) {
  const std::vector<const ControlStep*> steps = possible(*state.control);
  std::vector<HoseRange> out;
  if (steps.size() < 2) return out;
  for (const network::HosePoint& hose : system.hoses) {
    const auto run = static_cast<std::size_t>(hose.run);
    if (state.open[run] == 0) continue;
    const auto by_flow = [run](const ControlStep* a, const ControlStep* b) { return a->flow[run] < b->flow[run]; };
    const auto [least, most] = std::minmax_element(steps.begin(), steps.end(), by_flow);
    out.push_back({hose.id, (*least)->flow[run] / hose.share, (*most)->flow[run] / hose.share});
  }
  return out;
}

}  // namespace

std::optional<ControlTold> control_told(const PipingSystem& system, const network::SystemState& state) {
  if (!system.control || !state.control) return std::nullopt;
  const network::ControlPoint& control = *system.control;
  ControlTold out;
  out.id = control.id;
  out.kind = control.kind;
  out.order = names(system, control.pumps);
  for (const network::HosePoint& hose : system.hoses) out.hoses_open += state.open[static_cast<std::size_t>(hose.run)];
  out.starts_below = control.starts_below;
  out.stops_above = control.stops_above;
  out.hoses_calling = control.hoses_calling;
  out.alternates_after = control.alternates_after;
  out.holds = control.holds;
  out.least_speed = control.least_speed;
  out.most_speed = control.most_speed;
  out.speed = state.control->speed;
  out.held = state.control->held;
  for (const ControlStep& step : state.control->steps) {
    out.steps.push_back({names(system, step.on), is_usable(step), step.line_pressure, step.total_flow, step.rests});
  }
  out.taken = state.control->taken;
  out.hunts_with = state.control->hunts_with;
  out.hoses = ranges(system, state);
  return out;
}

}  // namespace forecourse::studies
