#include "forecourse/network/pump_control.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "forecourse/base/index.h"
#include "forecourse/solvers/bracket.h"

namespace forecourse::network {
namespace {

constexpr double pressure_agreement = 1e-3;  // [Pa] a hundred times the solver's residual
constexpr double speed_agreement = 1e-12;    // of full speed

double total_flow(const PipingSystem& system, const SystemState& state) {
  double sum = 0.0;
  for (const PumpPoint& pump : system.pumps) sum += state.flow[at(pump.run)];
  return sum;
}

/// Pumps that the number of hoses calling asks for.
std::size_t pumps_called(double hoses_calling, std::size_t hoses, std::size_t most) {
  std::size_t pumps = 1;
  while (pumps<most&& static_cast<double>(hoses)> hoses_calling * static_cast<double>(pumps)) ++pumps;
  return pumps;
}

}  // namespace

double line_pressure(const PipingSystem& system, const SystemState& state) {
  const PumpPoint& first = system.pumps[system.control->pumps.front()];
  return state.pressure[at(system.runs[at(first.run)].to)] - system.weight_of(first.discharge_elevation);
}

ControlledSolver::ControlledSolver(const PipingSystem& system, solvers::SteadyOptions options)
    : solver_(system, options) {}

SystemState ControlledSolver::solve(const std::vector<char>& open_hoses, const std::vector<double>& caps,
                                    const SystemState* start) {
  SystemCase asked{open_hoses, caps, {}, {}, nullptr};
  if (!system().control) {
    asked.start = start;
    return solver_.solve(asked);
  }
  switch (system().control->kind) {
    case site::ControlKind::lead_lag:
      return lead_and_lag(std::move(asked));
    case site::ControlKind::alternating:
      return alternating(std::move(asked));
    case site::ControlKind::variable_speed:
      return variable_speed(std::move(asked));
    case site::ControlKind::off:
    case site::ControlKind::all:
      break;
  }
  return solver_.solve(asked);
}

/// The pumps of the control that are `on` run, its others do not; pumps of no control as the site says.
PumpSetting ControlledSolver::setting(const std::vector<std::size_t>& on) const {
  PumpSetting out;
  for (const PumpPoint& pump : system().pumps) out.running.push_back(pump.running ? 1 : 0);
  for (const std::size_t pump : system().control->pumps) out.running[pump] = 0;
  for (const std::size_t pump : on) out.running[pump] = 1;
  return out;
}

ControlStep ControlledSolver::step(const SystemCase& asked, const SystemState& state,
                                   std::vector<std::size_t> on) const {
  ControlStep out;
  out.pumps = asked.pumps;
  out.on = std::move(on);
  out.status = state.report.status;
  out.line_pressure = line_pressure(system(), state);
  out.total_flow = total_flow(system(), state);
  out.flow = state.flow;
  return out;
}

/// Whether a further pump starts with the first `n` running, and whether the control leaves them as they are.
bool ControlledSolver::starts_next(const SystemCase& asked, std::size_t n, ControlStep& one) const {
  const ControlPoint& control = *system().control;
  const std::size_t count = control.pumps.size();
  if (control.hoses_calling) {
    const auto hoses = static_cast<std::size_t>(std::count(asked.open_hoses.begin(), asked.open_hoses.end(), 1));
    const std::size_t called = pumps_called(*control.hoses_calling, hoses, count);
    one.rests = n == called;
    return n < called;
  }
  const bool starts = n < count && control.starts_below && one.line_pressure < *control.starts_below;
  const bool stops = n > 1 && control.stops_above && one.line_pressure > *control.stops_above;
  one.rests = !starts && !stops;
  return starts;
}

SystemState ControlledSolver::lead_and_lag(SystemCase asked) {
  const std::vector<std::size_t>& pumps = system().control->pumps;
  auto outcome = std::make_shared<ControlOutcome>();
  std::vector<SystemState> states;
  std::size_t reached = 0;  // the first number, less one, at which no further pump starts
  for (std::size_t n = 1; n <= pumps.size(); ++n) {
    std::vector<std::size_t> on(pumps.begin(), pumps.begin() + static_cast<std::ptrdiff_t>(n));
    asked.pumps = setting(on);
    states.push_back(solver_.solve(asked));
    outcome->steps.push_back(step(asked, states.back(), std::move(on)));
    if (starts_next(asked, n, outcome->steps.back()) && reached == n - 1) reached = n;
  }
  for (std::size_t i = 0; i <= reached; ++i) {
    if (!states[i].report.usable()) return std::move(states[i]);
  }
  const bool stops = reached > 0 && !outcome->steps[reached].rests;
  if (stops) outcome->hunts_with = reached--;
  outcome->taken = reached;
  SystemState state = std::move(states[reached]);
  state.control = std::move(outcome);
  return state;
}

SystemState ControlledSolver::alternating(SystemCase asked) {
  auto outcome = std::make_shared<ControlOutcome>();
  std::vector<SystemState> states;
  for (const std::size_t pump : system().control->pumps) {
    asked.pumps = setting({pump});
    states.push_back(solver_.solve(asked));
    outcome->steps.push_back(step(asked, states.back(), {pump}));
  }
  SystemState state = std::move(states.front());
  state.control = std::move(outcome);
  return state;
}

SystemState ControlledSolver::at_speed(SystemCase& asked, double speed) {
  for (const std::size_t pump : system().control->pumps) asked.pumps.speed[pump] = speed;
  return solver_.solve(asked);
}

/// Tells the state at one speed, with what it is to the pressure held.
SystemState ControlledSolver::told_at(SystemCase& asked, double speed, PressureHeld held) {
  auto outcome = std::make_shared<ControlOutcome>();
  SystemState state = at_speed(asked, speed);
  outcome->steps.push_back(step(asked, state, system().control->pumps));
  outcome->speed = speed;
  outcome->held = held;
  state.control = std::move(outcome);
  return state;
}

SystemState ControlledSolver::variable_speed(SystemCase asked) {
  const ControlPoint& control = *system().control;
  asked.pumps = setting(control.pumps);
  asked.pumps.speed.assign(system().pumps.size(), 1.0);
  const auto off = [&](double speed) {
    const SystemState state = at_speed(asked, speed);
    return state.report.usable() ? line_pressure(system(), state) - *control.holds : std::nan("");
  };
  const double off_most = off(control.most_speed);
  const double off_least = off(control.least_speed);
  if (!std::isfinite(off_most) || !std::isfinite(off_least)) {
    return told_at(asked, control.most_speed, PressureHeld::not_determined);
  }
  if (off_most < -pressure_agreement) return told_at(asked, control.most_speed, PressureHeld::not_reached);
  if (off_least > pressure_agreement) return told_at(asked, control.least_speed, PressureHeld::passed);
  if (off_most <= pressure_agreement) return told_at(asked, control.most_speed, PressureHeld::held);
  const double speed = solvers::bracketed_root(off, {control.least_speed, off_least, control.most_speed, off_most},
                                               {speed_agreement, pressure_agreement});
  if (!std::isfinite(speed)) return told_at(asked, control.most_speed, PressureHeld::not_determined);
  return told_at(asked, speed, PressureHeld::held);
}

// ---- a weaker pump ------------------------------------------------------------------------------------

double shutoff_pressure(const PipingSystem& system, std::size_t pump, double speed) {
  const Run& run = system.runs[at(system.pumps[pump].run)];
  double pressure = system.weight_of(system.openings[at(run.from) - system.places.size()].elevation);
  for (const Element& element : run.elements) pressure -= loss(element, 0.0, speed).pressure_loss;
  return pressure;
}

std::optional<double> opening_flow(SystemSolver& solver, const PumpSetting& pumps, std::size_t pump,
                                   std::size_t place) {
  const PipingSystem& system = solver.system();
  const double shutoff = shutoff_pressure(system, pump, pumps.speed.empty() ? 1.0 : pumps.speed[pump]);
  const auto node = at(system.runs[at(system.pumps[pump].run)].to);
  SystemCase asked{std::vector<char>(system.hoses.size(), 0), {}, pumps, {}};
  asked.demand.assign(system.places.size(), 0.0);
  asked.pumps.running[pump] = 0;
  const auto off = [&](double flow) {
    asked.demand[place] = flow;
    const SystemState state = solver.solve(asked);
    return state.report.usable() ? state.pressure[node] - shutoff : std::nan("");
  };
  constexpr double least_hold = 1e-3;  // [Pa] less than this holds no check valve shut
  constexpr double most_flow = 1.0;    // [m3/s] far above what any station gives
  solvers::Bracket bracket{0.0, off(0.0), 1e-3, 0.0};
  if (!(bracket.off_low > least_hold)) return std::nullopt;
  while ((bracket.off_high = off(bracket.high)) > 0.0 && bracket.high < most_flow) {
    bracket.low = bracket.high;
    bracket.off_low = bracket.off_high;
    bracket.high *= 2.0;
  }
  if (!(bracket.off_high <= 0.0)) return std::nullopt;
  const double flow = solvers::bracketed_root(off, bracket, {1e-11 * bracket.high, pressure_agreement});
  return std::isfinite(flow) ? std::optional(flow) : std::nullopt;
}

}  // namespace forecourse::network
