#pragma once

#include <memory>
#include <vector>

#include "forecourse/network/piping_system.h"
#include "forecourse/network/run_laws.h"
#include "forecourse/solvers/steady.h"

namespace forecourse::network {

struct ControlOutcome;

/// Pressures and flows of one system for one set of open hoses.
struct SystemState {
  std::vector<double> pressure;  ///< [Pa] piezometric, per node
  std::vector<double> flow;      ///< [m3/s] per run; 0 for a closed hose
  std::vector<char> open;        ///< per run; a pump's run is open while it runs
  solvers::SteadyReport report;
  std::vector<double> speed;                      ///< of full speed, per pump [1]; empty: all at full speed
  std::shared_ptr<const ControlOutcome> control;  ///< null: no control starts, stops or turns pumps by itself

  [[nodiscard]] bool runs(const PumpPoint& pump) const { return open[static_cast<std::size_t>(pump.run)] != 0; }
  [[nodiscard]] double speed_of(std::size_t pump) const { return speed.empty() ? 1.0 : speed[pump]; }
};

/// Share of its full speed at which the pump of a run turns; 1 for any other run [1].
[[nodiscard]] double speed_of_run(const PipingSystem& system, const SystemState& state, std::size_t run);

/// What is asked of a system.
struct SystemCase {
  std::vector<char> open_hoses;        ///< per hose of the system
  std::vector<double> caps;            ///< [m3/s] per hose, a further limit on its flow in this system; empty: none
  PumpSetting pumps;                   ///< empty members: as the site says, at full speed
  std::vector<double> demand;          ///< [m3/s] drawn at each place; empty: none
  const SystemState* start = nullptr;  ///< a state nearby to begin from; null: none
};

/// One system made ready to solve many states, its pumps as the case says. Controls do not enter.
class SystemSolver {
 public:
  explicit SystemSolver(const PipingSystem& system, solvers::SteadyOptions options = {});
  SystemSolver(const SystemSolver&) = delete;
  SystemSolver& operator=(const SystemSolver&) = delete;

  [[nodiscard]] const PipingSystem& system() const { return *system_; }

  [[nodiscard]] SystemState solve(const SystemCase& asked);

  /// \param open_hoses  per hose of the system
  /// \param caps        [m3/s] per hose, a further limit on its flow in this system; empty: none
  [[nodiscard]] SystemState solve(const std::vector<char>& open_hoses, const std::vector<double>& caps = {}) {
    return solve(SystemCase{open_hoses, caps, {}, {}, nullptr});
  }

 private:
  [[nodiscard]] solvers::SteadyCase steady_case(const SystemCase& asked) const;

  const PipingSystem* system_;
  RunLaws laws_;
  solvers::SteadySolver<RunLaws> solver_;
};

}  // namespace forecourse::network
