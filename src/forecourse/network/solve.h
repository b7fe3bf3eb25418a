#pragma once

#include <deque>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "forecourse/network/pump_control.h"
#include "forecourse/network/system_solver.h"

namespace forecourse::network {

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
  /// \param apart      per system its state with these hoses open and each part of a blended hose giving what it can,
  ///                   if that was solved before; solved here where it is not converged
  [[nodiscard]] StationState solve(const std::vector<std::string>& open_hoses, std::vector<SystemState> apart = {});

 private:
  struct BlendPart {
    std::size_t system, hose;
  };
  struct Blend {  ///< a blended hose
    std::vector<BlendPart> parts;
    std::size_t least = 0;  ///< the part that gives least for its share
  };

  void find_hoses();
  void find_blends();
  [[nodiscard]] std::vector<std::vector<char>> open_in_systems(const std::vector<std::string>& open_hoses) const;
  [[nodiscard]] bool throttle(Blend& blend, const StationState& state, std::vector<char>& moved_in);
  void solve_system(std::size_t system, const std::vector<char>& open, SystemState& state);

  const StationNetwork& network_;
  std::deque<ControlledSolver> solvers_;   ///< of the systems without problems
  std::vector<int> solver_of_;             ///< per system; -1 if it has problems
  std::vector<std::vector<double>> caps_;  ///< per system and hose
  std::vector<Blend> blends_;
  std::unordered_map<std::string_view, std::vector<BlendPart>> parts_of_;  ///< by the hose's id
};

}  // namespace forecourse::network
