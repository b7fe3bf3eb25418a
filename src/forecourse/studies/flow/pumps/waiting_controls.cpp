#include "forecourse/studies/flow/pumps/waiting_controls.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"

namespace forecourse::studies {
namespace {

using network::ControlOutcome;
using network::ControlPoint;
using network::ControlStep;
using network::PipingSystem;

/// "P1", "P1 and P2", "P1, P2 and P3": the pumps of a control from `first` up to `end`.
std::string listed(const PipingSystem& system, std::size_t first, std::size_t end) {
  std::string out;
  for (std::size_t i = first; i < end; ++i) {
    if (i > first) out += i + 1 == end ? " and " : ", ";
    out += system.pumps[system.control->pumps[i]].id;
  }
  return out;
}

bool reads_pressure(const PipingSystem& system) {
  if (!system.control || system.hoses.empty()) return false;
  const ControlPoint& control = *system.control;
  return control.kind == site::ControlKind::lead_lag && control.starts_below && !control.hoses_calling;
}

bool has_blended_hose(const PipingSystem& system) {
  return std::any_of(system.hoses.begin(), system.hoses.end(), [](const auto& hose) { return hose.share < 1.0; });
}

/// Whether it was already told that the lift alone keeps the pressure up.
bool is_told(const std::vector<Diagnostic>& warnings, const ControlPoint& control) {
  return std::any_of(warnings.begin(), warnings.end(), [&](const Diagnostic& d) {
    return d.where == control.where && d.message.find("can never start") != std::string::npos;
  });
}

/// To a tenth of the unit that the station shows.
std::string pressure(double si, site::Display display) {
  const char* unit = display == site::Display::si ? "kPa" : "psi";
  return show_quantity(to_si(std::round(10.0 * from_si(si, unit)) / 10.0, unit), unit);
}

Diagnostic waiting(const site::Site& site, const PipingSystem& system, std::size_t running, const ControlStep& step) {
  const ControlPoint& control = *system.control;
  const bool one_more = control.pumps.size() == running + 1;
  return {Severity::warning,
          "control '" + control.id + "' never starts pump" + (one_more ? " " : "s ") +
              listed(system, running, control.pumps.size()) + ": with every hose open and " +
              listed(system, 0, running) + " running, the line pressure is " +
              pressure(step.line_pressure, site.display) + ", and starts_below is " +
              pressure(*control.starts_below, site.display),
          control.where,
          "raise starts_below above that line pressure, or leave the pump out",
          {}};
}

}  // namespace

std::vector<Diagnostic> waiting_controls(const site::Site& site, const network::StationNetwork& network,
                                         const network::StationState& all_open) {
  std::vector<Diagnostic> out;
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    const PipingSystem& system = network.systems[s];
    if (!system.graph || !reads_pressure(system) || has_blended_hose(system)) continue;
    if (!all_open.systems[s].control || is_told(network.warnings, *system.control)) continue;
    const ControlOutcome& outcome = *all_open.systems[s].control;
    const std::size_t reached = outcome.hunts_with.value_or(outcome.taken);
    const ControlStep& step = outcome.steps[reached];
    const bool all_run = reached + 1 == system.control->pumps.size();
    if (!all_run && std::isfinite(step.line_pressure)) out.push_back(waiting(site, system, reached + 1, step));
  }
  return out;
}

}  // namespace forecourse::studies
