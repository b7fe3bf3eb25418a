#include "forecourse/network/sets/hose_states.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace forecourse::network {
namespace {

constexpr std::size_t sets_a_piece = 16;  // solved by one StationSolver

/// One state put at its place among the others.
void put(const SystemState& state, std::size_t set, BatchStates& out) {
  std::copy(state.flow.begin(), state.flow.end(), out.flow.begin() + static_cast<std::ptrdiff_t>(set * out.runs));
  std::copy(state.pressure.begin(), state.pressure.end(),
            out.pressure.begin() + static_cast<std::ptrdiff_t>(set * out.nodes));
  out.status[set] = state.report.status;
}

/// Per run, its pumps as the site says.
std::vector<char> open_runs(const PipingSystem& system, const HoseGroup& group, std::size_t s, HoseSet set) {
  std::vector<char> open(system.runs.size(), 1);
  for (const PumpPoint& pump : system.pumps) open[static_cast<std::size_t>(pump.run)] = pump.running ? 1 : 0;
  for (const HosePoint& hose : system.hoses) open[static_cast<std::size_t>(hose.run)] = 0;
  for (std::size_t h = 0; h < group.hoses.size(); ++h) {
    for (const HosePart& part : group.hoses[h].parts) {
      if (part.system == s) open[static_cast<std::size_t>(group.point(part).run)] = (set >> h & 1U) != 0 ? 1 : 0;
    }
  }
  return open;
}

/// The state of each system, as if solved one by one.
std::vector<SystemState> states_of(const HoseGroup& group, const std::vector<BatchStates>& systems, std::size_t i,
                                   HoseSet set) {
  std::vector<SystemState> out(systems.size());
  for (std::size_t s = 0; s < systems.size(); ++s) {
    const BatchStates& from = systems[s];
    out[s].open = open_runs(*group.systems[s], group, s, set);
    const auto flow = from.flow.begin() + static_cast<std::ptrdiff_t>(i * from.runs);
    const auto pressure = from.pressure.begin() + static_cast<std::ptrdiff_t>(i * from.nodes);
    out[s].flow.assign(flow, flow + static_cast<std::ptrdiff_t>(from.runs));
    out[s].pressure.assign(pressure, pressure + static_cast<std::ptrdiff_t>(from.nodes));
    out[s].report.status = from.status[i];
  }
  return out;
}

void put(const BatchStates& from, std::size_t state, std::size_t set, BatchStates& out) {
  std::copy_n(&from.flow[state * out.runs], out.runs, &out.flow[set * out.runs]);
  std::copy_n(&from.pressure[state * out.nodes], out.nodes, &out.pressure[set * out.nodes]);
  out.status[set] = from.status[state];
}

void size_for(const PipingSystem& system, std::size_t sets, BatchStates& out) {
  out.runs = system.runs.size();
  out.nodes = system.places.size() + system.openings.size();
  out.flow.assign(sets * out.runs, 0.0);
  out.pressure.assign(sets * out.nodes, 0.0);
  out.status.assign(sets, solvers::SteadyStatus::not_converged);
}

}  // namespace

HoseStates::HoseStates(const HoseGroup& group) : group_(group) {
  const bool alone = !group.is_blended() && !group.systems.front()->has_moving_control();
  if (alone) {
    batch_ = std::make_shared<const BatchSolver>(*group.systems.front());
  } else {
    for (const PipingSystem* system : group.systems) network_.systems.push_back(*system);
  }
}

void HoseStates::solve(std::span<const HoseSet> sets, SetStates& out, const Context& context) {
  out.systems.resize(group_.systems.size());
  out.solved.assign(sets.size(), 1);
  if (is_batched()) {
    solve_batched(sets, out, context);
  } else {
    solve_one_by_one(sets, out, context);
  }
  gather(out);
}

void HoseStates::solve_batched(std::span<const HoseSet> sets, SetStates& out, const Context& context) const {
  std::vector<BatchCase> cases(sets.size());
  for (std::size_t i = 0; i < sets.size(); ++i) {
    for (std::size_t h = 0; h < group_.hoses.size(); ++h) {
      if ((sets[i] >> h & 1U) != 0) cases[i].hoses |= std::uint64_t{1} << group_.hoses[h].parts.front().hose;
    }
  }
  batch_->solve(cases, out.systems.front(), context);
}

bool HoseStates::can_solve_apart() const {
  return std::none_of(group_.systems.begin(), group_.systems.end(),
                      [](const PipingSystem* system) { return system->has_moving_control(); });
}

void HoseStates::solve_apart(std::span<const HoseSet> sets, SetStates& out, const Context& context) {
  out.solved.assign(sets.size(), 1);
  solve_systems(sets, out.systems, context);
  gather_apart(out);
}

void HoseStates::solve_systems(std::span<const HoseSet> sets, std::vector<BatchStates>& out, const Context& context) {
  if (apart_.empty()) {
    for (const PipingSystem* system : group_.systems) apart_.push_back(std::make_shared<const BatchSolver>(*system));
  }
  out.resize(group_.systems.size());
  for (std::size_t s = 0; s < group_.systems.size(); ++s) {
    const std::vector<std::uint64_t> asked = open_in(s, sets);
    std::vector<std::uint64_t> distinct = asked;  // sets that differ in the hoses of other systems only are one here
    std::sort(distinct.begin(), distinct.end());
    distinct.erase(std::unique(distinct.begin(), distinct.end()), distinct.end());
    std::vector<BatchCase> cases;
    cases.reserve(distinct.size());
    for (const std::uint64_t hoses : distinct) cases.push_back({.hoses = hoses});
    BatchStates solved;
    apart_[s]->solve(cases, solved, context);
    size_for(*group_.systems[s], sets.size(), out[s]);
    for (std::size_t i = 0; i < sets.size(); ++i) {
      const auto found = std::lower_bound(distinct.begin(), distinct.end(), asked[i]) - distinct.begin();
      put(solved, static_cast<std::size_t>(found), i, out[s]);
    }
  }
}

/// For each set the open hoses of one system.
std::vector<std::uint64_t> HoseStates::open_in(std::size_t system, std::span<const HoseSet> sets) const {
  std::vector<std::uint64_t> open(sets.size(), 0);
  for (std::size_t h = 0; h < group_.hoses.size(); ++h) {
    for (const HosePart& part : group_.hoses[h].parts) {
      if (part.system != system) continue;
      for (std::size_t i = 0; i < sets.size(); ++i) open[i] |= (sets[i] >> h & 1U) << part.hose;
    }
  }
  return open;
}

std::vector<std::string> HoseStates::ids(HoseSet set) const {
  std::vector<std::string> open;
  for (std::size_t h = 0; h < group_.hoses.size(); ++h) {
    if ((set >> h & 1U) != 0) open.push_back(group_.hoses[h].id);
  }
  return open;
}

void HoseStates::solve_one_by_one(std::span<const HoseSet> sets, SetStates& out, const Context& context) {
  std::vector<HoseSet> fresh;
  for (const HoseSet set : sets) {
    if (known_.try_emplace(set).second) fresh.push_back(set);
  }
  std::vector<BatchStates> apart;
  if (can_solve_apart() && !fresh.empty()) solve_systems(fresh, apart, context);
  std::vector<StationState> solved(fresh.size());
  context.each((fresh.size() + sets_a_piece - 1) / sets_a_piece, [&](std::size_t piece) {
    StationSolver solver(network_);
    const std::size_t end = std::min(fresh.size(), (piece + 1) * sets_a_piece);
    for (std::size_t i = piece * sets_a_piece; i < end; ++i)
      solved[i] = solver.solve(ids(fresh[i]), states_of(group_, apart, i, fresh[i]));
  });
  for (std::size_t i = 0; i < fresh.size(); ++i) known_[fresh[i]] = std::move(solved[i]);
  for (std::size_t s = 0; s < out.systems.size(); ++s) size_for(*group_.systems[s], sets.size(), out.systems[s]);
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const StationState& state = known_.at(sets[i]);
    if (!state.blends_agree) out.solved[i] = 0;
    for (std::size_t s = 0; s < out.systems.size(); ++s) put(state.systems[s], i, out.systems[s]);
  }
}

/// Flows of the whole hoses, and which sets have none.
void HoseStates::gather(SetStates& out) const {
  const std::size_t hoses = group_.hoses.size();
  out.hose_flow.assign(out.size() * hoses, 0.0);
  for (std::size_t i = 0; i < out.size(); ++i) {
    for (const BatchStates& system : out.systems) {
      if (system.status[i] == solvers::SteadyStatus::not_converged) out.solved[i] = 0;
    }
    for (std::size_t h = 0; h < hoses; ++h) {
      for (const HosePart& part : group_.hoses[h].parts) {
        const auto run = static_cast<std::size_t>(group_.point(part).run);
        out.hose_flow[i * hoses + h] += out.systems[part.system].flow_of(i, run);
      }
    }
  }
}

void HoseStates::gather_apart(SetStates& out) const {
  const std::size_t hoses = group_.hoses.size();
  out.hose_flow.assign(out.size() * hoses, 0.0);
  for (std::size_t i = 0; i < out.size(); ++i) {
    for (const BatchStates& system : out.systems) {
      if (system.status[i] == solvers::SteadyStatus::not_converged) out.solved[i] = 0;
    }
    for (std::size_t h = 0; h < hoses; ++h) {
      double least = INFINITY;
      for (const HosePart& part : group_.hoses[h].parts) {
        const auto run = static_cast<std::size_t>(group_.point(part).run);
        least = std::min(least, out.systems[part.system].flow_of(i, run) / group_.point(part).share);
      }
      out.hose_flow[i * hoses + h] = least;
    }
  }
}

}  // namespace forecourse::network
