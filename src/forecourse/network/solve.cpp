#include "forecourse/network/solve.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace forecourse::network {
namespace {

constexpr int most_blend_rounds = 60;
constexpr double blend_agreement = 1e-9;    // relative
constexpr double least_blend_flow = 1e-12;  // [m3/s] the solver's own residual

}  // namespace

StationSolver::StationSolver(const StationNetwork& network) : network_(network) {
  for (const PipingSystem& system : network.systems) {
    solver_of_.push_back(system.graph ? static_cast<int>(solvers_.size()) : -1);
    if (system.graph) solvers_.emplace_back(system);
    caps_.emplace_back(system.hoses.size(), INFINITY);
  }
  find_hoses();
  find_blends();
}

void StationSolver::find_hoses() {
  for (std::size_t s = 0; s < network_.systems.size(); ++s) {
    const std::vector<HosePoint>& hoses = network_.systems[s].hoses;
    for (std::size_t h = 0; h < hoses.size(); ++h) parts_of_[hoses[h].id].push_back({s, h});
  }
}

/// Per system and hose.
std::vector<std::vector<char>> StationSolver::open_in_systems(const std::vector<std::string>& open_hoses) const {
  std::vector<std::vector<char>> open;
  for (const PipingSystem& system : network_.systems) open.emplace_back(system.hoses.size(), 0);
  for (const std::string& id : open_hoses) {
    const auto found = parts_of_.find(id);
    if (found == parts_of_.end()) continue;
    for (const BlendPart& part : found->second) open[part.system][part.hose] = 1;
  }
  return open;
}

void StationSolver::find_blends() {
  std::map<std::string, Blend> blends;
  for (std::size_t s = 0; s < network_.systems.size(); ++s) {
    if (solver_of_[s] < 0) continue;
    for (std::size_t h = 0; h < network_.systems[s].hoses.size(); ++h) {
      const HosePoint& hose = network_.systems[s].hoses[h];
      if (hose.share < 1.0) blends[hose.id].parts.push_back({s, h});
    }
  }
  for (auto& [id, blend] : blends) blends_.push_back(std::move(blend));
}

/// Caps every part of a blended hose but the one that gives least for its share. True if a cap moved.
/// A part at its cap could give more, so only one that stays below its cap can give less than the part that was least.
bool StationSolver::throttle(Blend& blend, const StationState& state, std::vector<char>& moved_in) {
  const auto hose = [&](std::size_t i) -> const HosePoint& {
    return network_.systems[blend.parts[i].system].hoses[blend.parts[i].hose];
  };
  const auto flow = [&](std::size_t i) {
    return state.systems[blend.parts[i].system].flow[static_cast<std::size_t>(hose(i).run)] / hose(i).share;
  };
  const auto cap = [&](std::size_t i) -> double& { return caps_[blend.parts[i].system][blend.parts[i].hose]; };
  for (std::size_t i = 0; i < blend.parts.size(); ++i) {
    const bool below_cap = flow(i) < cap(i) / hose(i).share * (1.0 - blend_agreement);
    if (i != blend.least && below_cap && flow(i) < flow(blend.least)) blend.least = i;
  }
  const double least = flow(blend.least);
  bool moved = false;
  for (std::size_t i = 0; i < blend.parts.size(); ++i) {
    if (std::abs(flow(i) - least) > blend_agreement * std::max(least, 1e-9)) moved = true;
    const double next = i == blend.least ? INFINITY : least * hose(i).share;
    if (next != cap(i)) moved_in[blend.parts[i].system] = 1;
    cap(i) = next;
  }
  return moved;
}

/// A hose throttled to nothing is taken as shut, since the solver then finds the state at rest exactly; it is told
/// open.
void StationSolver::solve_system(std::size_t system, const std::vector<char>& open, SystemState& state) {
  std::vector<char> flowing = open;
  for (std::size_t h = 0; h < open.size(); ++h) {
    if (caps_[system][h] <= least_blend_flow) flowing[h] = 0;
  }
  const bool started = state.report.status == solvers::SteadyStatus::converged;
  state =
      solvers_[static_cast<std::size_t>(solver_of_[system])].solve(flowing, caps_[system], started ? &state : nullptr);
  for (std::size_t h = 0; h < open.size(); ++h) {
    state.open[static_cast<std::size_t>(network_.systems[system].hoses[h].run)] = open[h];
  }
}

StationState StationSolver::solve(const std::vector<std::string>& open_hoses, std::vector<SystemState> apart) {
  StationState state;
  state.systems = std::move(apart);
  state.systems.resize(network_.systems.size());
  const std::vector<std::vector<char>> open = open_in_systems(open_hoses);
  for (std::vector<double>& caps : caps_) std::fill(caps.begin(), caps.end(), INFINITY);
  std::vector<char> moved_in;  // caps of the system moved: it is to be solved again
  for (const SystemState& one : state.systems) {
    moved_in.push_back(one.report.status == solvers::SteadyStatus::converged ? 0 : 1);
  }
  const auto solve_moved = [&] {
    for (std::size_t s = 0; s < network_.systems.size(); ++s) {
      if (solver_of_[s] >= 0 && moved_in[s] != 0) solve_system(s, open[s], state.systems[s]);
      moved_in[s] = 0;
    }
  };
  solve_moved();
  std::vector<Blend*> open_blends;
  for (Blend& blend : blends_) {
    blend.least = 0;
    if (open[blend.parts.front().system][blend.parts.front().hose] != 0) open_blends.push_back(&blend);
  }
  bool moved = !open_blends.empty();
  while (moved && state.blend_rounds < most_blend_rounds) {
    moved = false;
    for (Blend* blend : open_blends) moved = throttle(*blend, state, moved_in) || moved;
    if (!moved) break;
    ++state.blend_rounds;
    solve_moved();
  }
  state.blends_agree = !moved;
  return state;
}

}  // namespace forecourse::network
