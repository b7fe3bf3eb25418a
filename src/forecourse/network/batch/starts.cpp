#include "forecourse/network/batch/starts.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace forecourse::network {
namespace {

constexpr std::size_t most_starts = 6;
constexpr std::size_t patterns = 3;  // whose mean a start is

/// Every edge open, of the hoses `open` ones evenly spread, the first of them moved on by `shift`.
solvers::SteadyCase evenly_open(const PipingSystem& system, std::size_t open, std::size_t shift) {
  solvers::SteadyCase given;
  given.open.assign(system.runs.size(), 1);
  const std::size_t hoses = system.hoses.size();
  for (std::size_t h = 0; h < hoses; ++h) {
    const bool is_open = (h + shift) % hoses * open % hoses < open;
    given.open[static_cast<std::size_t>(system.hoses[h].run)] = is_open ? 1 : 0;
  }
  return given;
}

/// Sums states; a hose's mean is over those in which it is open.
class Mean {
 public:
  Mean(std::size_t edges, std::size_t nodes) : flow_(edges, 0.0), count_(edges, 0), pressure_(nodes, 0.0) {}

  void add(const solvers::SteadyCase& given, const solvers::SteadyState& state) {
    ++states_;
    for (std::size_t e = 0; e < flow_.size(); ++e) {
      if (given.open[e] == 0) continue;
      flow_[e] += state.flow[e];
      ++count_[e];
    }
    for (std::size_t n = 0; n < pressure_.size(); ++n) pressure_[n] += state.pressure[n];
  }
  [[nodiscard]] std::vector<double> flow(double otherwise) const {
    std::vector<double> out;
    for (std::size_t e = 0; e < flow_.size(); ++e) out.push_back(count_[e] > 0 ? flow_[e] / count_[e] : otherwise);
    return out;
  }
  [[nodiscard]] std::vector<double> pressure() const {
    std::vector<double> out;
    for (const double p : pressure_) out.push_back(p / std::max(1, states_));
    return out;
  }

 private:
  std::vector<double> flow_;
  std::vector<int> count_;
  std::vector<double> pressure_;
  int states_ = 0;
};

/// 1/sqrt(f) at a flow, or at the least turbulent one.
double friction_root(const parts::PipeLaw& pipe, double flow) {
  const double reynolds = std::max(parts::turbulent_limit * (1.0 + 1e-12), pipe.reynolds_per_flow * std::abs(flow));
  return 1.0 / std::sqrt(parts::friction(pipe.friction, reynolds).factor);
}

}  // namespace

BatchStarts::BatchStarts(const PipingSystem& system, const RunLaws& laws, const solvers::SteadyOptions& options)
    : options_(options), hoses_(static_cast<int>(system.hoses.size())) {
  const std::size_t hoses = system.hoses.size();
  const std::size_t count = std::clamp<std::size_t>(hoses, 1, most_starts);
  for (std::size_t i = 0; i < count; ++i) {
    Start start = mean_state(system, laws, (hoses * (2 * i + 1) + count) / (2 * count));
    linearize(*system.graph, laws, start);
    starts_.push_back(std::move(start));
  }
}

solvers::LaneStart BatchStarts::nearest(int open_hoses) const {
  const int count = static_cast<int>(starts_.size());
  const int i = hoses_ > 0 ? std::clamp(open_hoses * count / hoses_, 0, count - 1) : 0;
  const Start& start = starts_[static_cast<std::size_t>(i)];
  return {start.flow.data(), start.conductance.data(), start.offset.data(), start.pressure.data(),
          start.friction.data()};
}

BatchStarts::Start BatchStarts::mean_state(const PipingSystem& system, const RunLaws& laws,
                                           std::size_t open_hoses) const {
  const solvers::SteadyGraph& graph = *system.graph;
  Mean mean(graph.edges().size(), static_cast<std::size_t>(graph.nodes()));
  solvers::SteadySolver solver(graph, laws, options_);
  for (std::size_t pattern = 0; pattern < patterns && open_hoses > 0; ++pattern) {
    const std::size_t shift = pattern * system.hoses.size() / (patterns * open_hoses);
    const solvers::SteadyCase given = evenly_open(system, open_hoses, shift);
    solvers::SteadyState state;
    if (solver.solve(given, state).status == solvers::SteadyStatus::converged) mean.add(given, state);
  }
  Start start;
  start.flow = mean.flow(options_.first_flow);
  start.pressure = mean.pressure();
  std::copy(graph.fixed_pressures().begin(), graph.fixed_pressures().end(), start.pressure.begin() + graph.unknowns());
  return start;
}

/// As `SteadySolver` does it, bounds and all.
void BatchStarts::linearize(const solvers::SteadyGraph& graph, const RunLaws& laws, Start& start) const {
  for (std::size_t e = 0; e < graph.edges().size(); ++e) {
    const solvers::SteadyEdge& edge = graph.edges()[e];
    const double flow = start.flow[e];
    const solvers::EdgeLoss law = laws.loss(static_cast<int>(e), flow);
    const double off = start.pressure[static_cast<std::size_t>(edge.from)] -
                       start.pressure[static_cast<std::size_t>(edge.to)] - law.loss;
    const double trial = flow + off / std::max(law.slope, options_.complementarity_slope);
    const bool held = trial <= edge.lowest || trial >= edge.highest;
    const double conductance = held ? 0.0 : 1.0 / std::max(law.slope, options_.slope_floor);
    start.conductance.push_back(conductance);
    start.offset.push_back(held ? std::clamp(trial, edge.lowest, edge.highest) : flow + conductance * off);
    for (const parts::PipeLaw& pipe : laws.runs()[e].pipes) start.friction.push_back(friction_root(pipe, flow));
  }
}

}  // namespace forecourse::network
