#include "forecourse/network/solve.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace forecourse::network {
namespace {

constexpr int most_blend_rounds = 60;
constexpr double blend_agreement = 1e-9;  // relative

std::vector<char> mask(const PipingSystem& system, const std::vector<std::string>& open_hoses) {
  std::vector<char> open;
  for (const HosePoint& hose : system.hoses) {
    open.push_back(std::find(open_hoses.begin(), open_hoses.end(), hose.id) != open_hoses.end() ? 1 : 0);
  }
  return open;
}

}  // namespace

SystemSolver::SystemSolver(const PipingSystem& system, solvers::SteadyOptions options)
    : system_(&system), laws_(system), solver_(*system.graph, laws_, options) {}

SystemState SystemSolver::solve(const std::vector<char>& open_hoses, const std::vector<double>& caps) {
  solvers::SteadyCase given;
  given.open.assign(system_->runs.size(), 1);
  for (const PumpPoint& pump : system_->pumps) given.open[static_cast<std::size_t>(pump.run)] = pump.running ? 1 : 0;
  if (!caps.empty()) {
    for (const Run& run : system_->runs) given.highest.push_back(run.bounds.highest);
  }
  for (std::size_t h = 0; h < system_->hoses.size(); ++h) {
    const auto run = static_cast<std::size_t>(system_->hoses[h].run);
    given.open[run] = open_hoses[h];
    if (!caps.empty()) given.highest[run] = std::min(given.highest[run], caps[h]);
  }
  SystemState state;
  solvers::SteadyState steady;
  state.report = solver_.solve(given, steady);
  state.pressure = std::move(steady.pressure);
  state.flow = std::move(steady.flow);
  state.open = std::move(given.open);
  return state;
}

StationSolver::StationSolver(const StationNetwork& network) : network_(network) {
  for (const PipingSystem& system : network.systems) {
    solver_of_.push_back(system.graph ? static_cast<int>(solvers_.size()) : -1);
    if (system.graph) solvers_.emplace_back(system);
    caps_.emplace_back(system.hoses.size(), INFINITY);
  }
  find_blends();
}

void StationSolver::find_blends() {
  std::map<std::string, Blend> blends;
  for (std::size_t s = 0; s < network_.systems.size(); ++s) {
    if (solver_of_[s] < 0) continue;
    for (std::size_t h = 0; h < network_.systems[s].hoses.size(); ++h) {
      const HosePoint& hose = network_.systems[s].hoses[h];
      if (hose.share < 1.0) blends[hose.id].push_back({s, h});
    }
  }
  for (auto& [id, blend] : blends) blends_.push_back(std::move(blend));
}

/// Caps every part of a blended hose but the one that gives least for its share. True if a cap moved.
bool StationSolver::throttle(const Blend& blend, const StationState& state) {
  const auto per_share = [&](const BlendPart& part) {
    const HosePoint& hose = network_.systems[part.system].hoses[part.hose];
    return state.systems[part.system].flow[static_cast<std::size_t>(hose.run)] / hose.share;
  };
  std::size_t least = 0;
  for (std::size_t i = 1; i < blend.size(); ++i) {
    if (per_share(blend[i]) < per_share(blend[least])) least = i;
  }
  const double flow = per_share(blend[least]);
  bool moved = false;
  for (std::size_t i = 0; i < blend.size(); ++i) {
    const HosePoint& hose = network_.systems[blend[i].system].hoses[blend[i].hose];
    double& cap = caps_[blend[i].system][blend[i].hose];
    if (std::abs(per_share(blend[i]) - flow) > blend_agreement * std::max(flow, 1e-9)) moved = true;
    cap = i == least ? INFINITY : flow * hose.share;
  }
  return moved;
}

StationState StationSolver::solve(const std::vector<std::string>& open_hoses) {
  StationState state;
  state.systems.resize(network_.systems.size());
  std::vector<std::vector<char>> open;
  for (std::size_t s = 0; s < network_.systems.size(); ++s) {
    open.push_back(mask(network_.systems[s], open_hoses));
    std::fill(caps_[s].begin(), caps_[s].end(), INFINITY);
  }
  const auto solve_all = [&] {
    for (std::size_t s = 0; s < network_.systems.size(); ++s) {
      if (solver_of_[s] >= 0)
        state.systems[s] = solvers_[static_cast<std::size_t>(solver_of_[s])].solve(open[s], caps_[s]);
    }
  };
  solve_all();
  std::vector<const Blend*> open_blends;
  for (const Blend& blend : blends_) {
    if (open[blend.front().system][blend.front().hose] != 0) open_blends.push_back(&blend);
  }
  bool moved = !open_blends.empty();
  while (moved && state.blend_rounds < most_blend_rounds) {
    moved = false;
    for (const Blend* blend : open_blends) moved = throttle(*blend, state) || moved;
    if (!moved) break;
    ++state.blend_rounds;
    solve_all();
  }
  state.blends_agree = !moved;
  return state;
}

}  // namespace forecourse::network
