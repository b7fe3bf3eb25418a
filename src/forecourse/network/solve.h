#pragma once

#include <deque>
#include <string>
#include <vector>

#include "forecourse/network/piping_system.h"
#include "forecourse/network/run_laws.h"
#include "forecourse/solvers/steady.h"

namespace forecourse::network {

/// Pressures and flows of one system for one set of open hoses.
struct SystemState {
  std::vector<double> pressure;  ///< [Pa] piezometric, per node
  std::vector<double> flow;      ///< [m3/s] per run; 0 for a closed hose
  std::vector<char> open;        ///< per run
  solvers::SteadyReport report;
};

/// One system made ready to solve many states.
class SystemSolver {
 public:
  explicit SystemSolver(const PipingSystem& system, solvers::SteadyOptions options = {});
  SystemSolver(const SystemSolver&) = delete;
  SystemSolver& operator=(const SystemSolver&) = delete;

  [[nodiscard]] const PipingSystem& system() const { return *system_; }

  /// \param open_hoses  per hose of the system
  /// \param caps        [m3/s] per hose, a further limit on its flow in this system; empty: none
  [[nodiscard]] SystemState solve(const std::vector<char>& open_hoses, const std::vector<double>& caps = {});

 private:
  const PipingSystem* system_;
  RunLaws laws_;
  solvers::SteadySolver<RunLaws> solver_;
};

/// The states of every system of a station for one set of open hoses.
struct StationState {
  std::vector<SystemState> systems;  ///< as `StationNetwork::systems`; empty members where a system has problems
  int blend_rounds = 0;              ///< rounds until the shares of blended hoses agreed; 0: none open
  bool blends_agree = true;
};

/// Solves a station: systems apart, blended hoses so that each draws its products at their shares.
///
/// The product that can give least for its share sets the flow of a blended hose; the others are throttled
/// to it. Rounds go on until no hose's flow moves by more than 1e-9 of itself.
/// \source common practice, no source
class StationSolver {
 public:
  explicit StationSolver(const StationNetwork& network);

  /// \param open_hoses ids of the hoses that are open; unknown ids are ignored
  [[nodiscard]] StationState solve(const std::vector<std::string>& open_hoses);

 private:
  struct BlendPart {
    std::size_t system, hose;
  };
  using Blend = std::vector<BlendPart>;  ///< the parts of one blended hose

  void find_blends();
  [[nodiscard]] bool throttle(const Blend& blend, const StationState& state);

  const StationNetwork& network_;
  std::deque<SystemSolver> solvers_;       ///< of the systems without problems
  std::vector<int> solver_of_;             ///< per system; -1 if it has problems
  std::vector<std::vector<double>> caps_;  ///< per system and hose
  std::vector<Blend> blends_;
};

}  // namespace forecourse::network
