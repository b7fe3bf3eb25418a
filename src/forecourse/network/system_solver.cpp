#include "forecourse/network/system_solver.h"

#include <algorithm>
#include <utility>

namespace forecourse::network {

double speed_of_run(const PipingSystem& system, const SystemState& state, std::size_t run) {
  if (state.speed.empty() || system.runs[run].kind != RunKind::pump) return 1.0;
  for (std::size_t p = 0; p < system.pumps.size(); ++p) {
    if (static_cast<std::size_t>(system.pumps[p].run) == run) return state.speed[p];
  }
  return 1.0;
}

SystemSolver::SystemSolver(const PipingSystem& system, solvers::SteadyOptions options)
    : system_(&system), laws_(system), solver_(*system.graph, laws_, options) {}

solvers::SteadyCase SystemSolver::steady_case(const SystemCase& asked) const {
  solvers::SteadyCase given;
  given.open.assign(system_->runs.size(), 1);
  given.demand = asked.demand;
  for (std::size_t p = 0; p < system_->pumps.size(); ++p) {
    const PumpPoint& pump = system_->pumps[p];
    const bool running = asked.pumps.running.empty() ? pump.running : asked.pumps.running[p] != 0;
    given.open[static_cast<std::size_t>(pump.run)] = running ? 1 : 0;
  }
  if (!asked.caps.empty()) {
    for (const Run& run : system_->runs) given.highest.push_back(run.bounds.highest);
  }
  for (std::size_t h = 0; h < system_->hoses.size(); ++h) {
    const auto run = static_cast<std::size_t>(system_->hoses[h].run);
    given.open[run] = asked.open_hoses[h];
    if (!asked.caps.empty()) given.highest[run] = std::min(given.highest[run], asked.caps[h]);
  }
  return given;
}

SystemState SystemSolver::solve(const SystemCase& asked) {
  for (std::size_t p = 0; p < system_->pumps.size(); ++p) {
    laws_.set_speed(system_->pumps[p].run, asked.pumps.speed.empty() ? 1.0 : asked.pumps.speed[p]);
  }
  solvers::SteadyCase given = steady_case(asked);
  SystemState state;
  solvers::SteadyState steady;
  if (asked.start != nullptr) steady = {asked.start->pressure, asked.start->flow};
  state.report = solver_.solve(given, steady);
  state.pressure = std::move(steady.pressure);
  state.flow = std::move(steady.flow);
  state.open = std::move(given.open);
  state.speed = asked.pumps.speed;
  return state;
}

}  // namespace forecourse::network
