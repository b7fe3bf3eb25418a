#include "forecourse/network/batch/worker.h"

#include <algorithm>
#include <bit>
#include <numeric>

namespace forecourse::network {
namespace {

// Steps after which a state is given to the scalar solver. Ordinary states take 3 to 6; those that take more than a
// dozen mostly go round in a circle.
constexpr int most_steps = 12;
// A lane goes on from its last state where no more than this many hoses opened or shut; else from the common start,
// whose first step needs no law.
constexpr int most_changes = 2;

bool is_open(const BatchCase& one, int control) {
  if (control < 0) return true;
  const std::uint64_t word = control < pump_controls ? one.hoses : one.pumps;
  return (word >> static_cast<unsigned>(control & 63) & 1U) != 0;
}

}  // namespace

BatchWorker::BatchWorker(const BatchCore& core) : core_(core) {
  const std::size_t tracks = most_lanes / static_cast<std::size_t>(core.kernel.count);
  for (std::size_t i = 0; i < tracks; ++i) {
    tracks_.push_back({BatchMemory(core.program.view(), core.kernel.count), {}, false});
  }
}

BatchCounts BatchWorker::solve(std::span<const BatchCase> cases, BatchStates& out, std::size_t first) {
  const auto lanes = static_cast<std::size_t>(core_.kernel.count);
  put_in_order(cases);
  for (std::size_t i = 0; i < cases.size(); i += lanes) {
    const auto block = std::span<const std::size_t>(order_).subspan(i, std::min(lanes, cases.size() - i));
    if (core_.rest_is_simple) {
      solve_block(tracks_[i / lanes % tracks_.size()], cases, block, out, first);
    } else {
      for (const std::size_t s : block) solve_scalar(masked(cases[s]), out, first + s);
    }
  }
  return counts_;
}

/// As asked where most cases are neighbors of those eight before, else by the number of open hoses, so that the lanes
/// of a block have much the same pressures and take the same number of steps.
void BatchWorker::put_in_order(std::span<const BatchCase> cases) {
  order_.resize(cases.size());
  std::iota(order_.begin(), order_.end(), std::size_t{0});
  std::size_t neighbors = 0;
  for (std::size_t s = most_lanes; s < cases.size(); ++s) {
    const std::uint64_t changed = (cases[s].hoses ^ cases[s - most_lanes].hoses) & core_.hoses;
    neighbors += std::popcount(changed) <= most_changes && cases[s].pumps == cases[s - most_lanes].pumps ? 1 : 0;
  }
  if (2 * neighbors >= cases.size()) return;
  std::array<std::size_t, 66> place{};  // of the first case with so many open hoses
  const auto open = [&](std::size_t s) {
    return static_cast<std::size_t>(std::popcount(cases[s].hoses & core_.hoses));
  };
  for (std::size_t s = 0; s < cases.size(); ++s) ++place[open(s) + 1];
  std::partial_sum(place.begin(), place.end(), place.begin());
  for (std::size_t s = 0; s < cases.size(); ++s) order_[place[open(s)]++] = s;
}

BatchCase BatchWorker::masked(const BatchCase& asked) const {
  return {asked.hoses & core_.hoses, asked.pumps & core_.pumps};
}

/// The pressure of a system in which nothing flows, NaN if nothing holds one; empty where something flows.
std::optional<double> BatchWorker::rest_pressure(const BatchCase& one) const {
  if (core_.any_flows && one.hoses != 0 && one.pumps != 0) return std::nullopt;
  double reached = -solvers::unbounded, needed = solvers::unbounded;
  for (const RestLevel& level : core_.rest) {
    if (!is_open(one, level.control)) continue;
    reached = std::max(reached, level.reached);
    needed = std::min(needed, level.needed);
  }
  if (reached > needed) return std::nullopt;
  return reached > -solvers::unbounded ? reached : std::numeric_limits<double>::quiet_NaN();
}

void BatchWorker::set_at_rest(double pressure, BatchStates& out, std::size_t state) const {
  const solvers::SteadyGraph& graph = *core_.system.graph;
  out.status[state] = std::isnan(pressure) ? solvers::SteadyStatus::no_supply : solvers::SteadyStatus::at_rest;
  std::fill_n(&out.flow[state * out.runs], out.runs, 0.0);
  double* const row = &out.pressure[state * out.nodes];
  std::fill_n(row, graph.unknowns(), pressure);
  std::copy(graph.fixed_pressures().begin(), graph.fixed_pressures().end(), row + graph.unknowns());
}

void BatchWorker::solve_block(Track& track, std::span<const BatchCase> cases, std::span<const std::size_t> order,
                              BatchStates& out, std::size_t first) {
  const auto lanes = static_cast<std::size_t>(core_.kernel.count);
  std::array<BatchCase, most_lanes> asked;
  std::optional<std::size_t> flowing;  // a lane that the lanes without a state to solve repeat
  unsigned wanted = 0;
  for (std::size_t l = 0; l < order.size(); ++l) {
    asked[l] = masked(cases[order[l]]);
    if (const auto pressure = rest_pressure(asked[l])) {
      set_at_rest(*pressure, out, first + order[l]);
    } else {
      wanted |= 1U << l;
      if (!flowing) flowing = l;
    }
  }
  if (!flowing) return;
  Words words;
  LaneRows rows;
  int changes = 0;
  for (std::size_t l = 0; l < lanes; ++l) {
    const bool solved = (wanted >> l & 1U) != 0;
    const BatchCase& one = asked[solved ? l : *flowing];
    words.hoses[l] = one.hoses;
    words.pumps[l] = one.pumps;
    changes = std::max(changes, std::popcount(one.hoses ^ track.last.hoses[l]) +
                                    (one.pumps == track.last.pumps[l] ? 0 : most_changes + 1));
    if (!solved) continue;
    rows.flow[l] = &out.flow[(first + order[l]) * out.runs];
    rows.pressure[l] = &out.pressure[(first + order[l]) * out.nodes];
  }
  const bool cold = !track.usable || changes > most_changes;
  const solvers::LaneStart start = core_.program.starts().nearest(std::popcount(words.hoses[lanes / 2]));
  const solvers::LaneReport report =
      core_.kernel.solve(core_.program.view(), track.memory.view(),
                         {words.hoses.data(), words.pumps.data(), cold ? &start : nullptr, most_steps});
  core_.kernel.write(core_.program.view(), track.memory.view(), rows);
  ++counts_.blocks;
  counts_.steps += static_cast<std::size_t>(report.steps);
  track.last = words;
  track.usable = (wanted & ~report.settled) == 0;
  for (std::size_t l = 0; l < order.size(); ++l) {
    if ((wanted >> l & 1U) == 0) continue;
    if ((report.settled >> l & 1U) != 0) {
      out.status[first + order[l]] = solvers::SteadyStatus::converged;
    } else {
      solve_scalar(asked[l], out, first + order[l]);
    }
  }
}

void BatchWorker::solve_scalar(const BatchCase& one, BatchStates& out, std::size_t state) {
  ++counts_.by_scalar;
  if (!scalar_) scalar_.emplace(*core_.system.graph, core_.laws, core_.options);
  const solvers::LaneGraph& graph = core_.program.view().graph;
  solvers::SteadyCase given;
  for (int e = 0; e < graph.edges; ++e) given.open.push_back(is_open(one, graph.edge[e].control) ? 1 : 0);
  solvers::SteadyState answer;
  out.status[state] = scalar_->solve(given, answer).status;
  std::copy(answer.flow.begin(), answer.flow.end(), &out.flow[state * out.runs]);
  std::copy(answer.pressure.begin(), answer.pressure.end(), &out.pressure[state * out.nodes]);
}

}  // namespace forecourse::network
