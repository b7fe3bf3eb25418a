#include "forecourse/network/escape/feed.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/base/index.h"
#include "forecourse/network/pump_control.h"
#include "forecourse/network/system_solver.h"

namespace forecourse::network {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr std::size_t samples = 97;

/// Solves the network for a flow drawn at one place, each time from the state before.
class DrawnAt {
 public:
  DrawnAt(const PipingSystem& system, const FeedQuestion& asked) : system_(system), solver_(system), asked_(asked) {
    case_.open_hoses = asked.open_hoses;
    case_.pumps = asked.pumps;
    case_.demand.assign(system.places.size(), 0.0);
  }

  /// \return pressure at the place; empty where the piping cannot give or take the flow
  std::optional<double> pressure(double flow) {
    case_.demand[asked_.place] = flow;
    case_.start = solved_ ? &state_ : nullptr;
    SystemState next = solver_.solve(case_);
    if (!is_solved(next) && solved_) {
      case_.start = nullptr;
      next = solver_.solve(case_);
    }
    if (!is_solved(next)) return std::nullopt;
    state_ = std::move(next);
    solved_ = true;
    return state_.pressure[asked_.place];
  }

  static bool is_solved(const SystemState& state) {
    return state.report.status == solvers::SteadyStatus::converged ||
           state.report.status == solvers::SteadyStatus::at_rest;
  }

  [[nodiscard]] double hose_flow(std::size_t hose) const { return state_.flow[at(system_.hoses[hose].run)]; }

 private:
  const PipingSystem& system_;
  SystemSolver solver_;
  const FeedQuestion& asked_;
  SystemCase case_;
  SystemState state_;
  bool solved_ = false;
};

bool runs(const PipingSystem& system, const PumpSetting& pumps, std::size_t pump) {
  return pumps.running.empty() ? system.pumps[pump].running : pumps.running[pump] != 0;
}

bool any_runs(const PipingSystem& system, const PumpSetting& pumps) {
  for (std::size_t p = 0; p < system.pumps.size(); ++p) {
    if (runs(system, pumps, p)) return true;
  }
  return false;
}

/// What open hoses, and pumps that let it run back, can take together [m3/s]: no more can be pushed into a place.
double most_taken(const PipingSystem& system, const FeedQuestion& asked) {
  double sum = 0.0;
  for (std::size_t h = 0; h < system.hoses.size(); ++h) {
    if (asked.open_hoses[h] != 0) sum += system.runs[at(system.hoses[h].run)].bounds.highest;
  }
  for (std::size_t p = 0; p < system.pumps.size(); ++p) {
    if (runs(system, asked.pumps, p)) sum -= system.runs[at(system.pumps[p].run)].bounds.lowest;
  }
  return sum;
}

/// The flow from none on, in the way of `sign`, at which the pressure passes a value, or beyond which the piping cannot
/// go.
///
/// \param most it cannot go beyond that, which needs no solving [m3/s]
double flow_where(DrawnAt& drawn, double sign, double pressure, double most) {
  double near = 0.0, far = 1e-4;
  const auto passed = [&](double size) {
    if (size > most) return true;
    const auto reached = drawn.pressure(sign * size);
    return !reached || sign * (*reached - pressure) <= 0.0;
  };
  while (!passed(far)) {
    near = far;
    far *= 2.0;
    if (far > 1.0) return sign * far;
  }
  for (int i = 0; i < 30 && far - near > 1e-6 * far; ++i) {
    const double middle = 0.5 * (near + far);
    (passed(middle) ? far : near) = middle;
  }
  return sign * near;
}

}  // namespace

double highest_pressure(const PipingSystem& system) {
  constexpr double room = 1.5;  // a line is pressed by more than its pump's shutoff for moments only
  double highest = 0.0;
  for (std::size_t i = 0; i < system.pumps.size(); ++i) highest = std::max(highest, shutoff_pressure(system, i, 1.0));
  return room * highest;
}

double Feed::flow_at(double pressure_wanted) const {
  if (shut()) return 0.0;
  const std::vector<double>& values = pressure.values();
  const double step = (pressure.last() - pressure.first()) / static_cast<double>(values.size() - 1);
  if (pressure_wanted >= values.front()) return pressure.first();
  if (pressure_wanted <= values.back()) return pressure.last();
  const auto above = std::upper_bound(values.begin(), values.end(), pressure_wanted, std::greater<>());
  double low = pressure.first() + step * static_cast<double>(above - values.begin() - 1), high = low + step;
  double flow = 0.5 * (low + high);
  const auto is_near = [&](double next) { return std::abs(next - flow) <= 1e-15 + 1e-12 * std::abs(flow); };
  for (int i = 0; i < 60 && high - low > 1e-15; ++i) {
    const TableValue here = pressure.at(flow);
    (here.value > pressure_wanted ? low : high) = flow;
    double next = flow - (here.value - pressure_wanted) / here.slope;
    if (is_near(next)) return next;  // before the range is asked: rounding may put the last step beyond its end
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (is_near(next)) return next;
    flow = next;
  }
  return flow;
}

Feed make_feed(const PipingSystem& system, const FeedQuestion& asked) {
  Feed feed;
  std::vector<std::size_t> open;
  for (std::size_t h = 0; h < system.hoses.size(); ++h) {
    if (asked.open_hoses[h] == 0) continue;
    open.push_back(h);
    feed.open.push_back(system.hoses[h].id);
  }
  DrawnAt drawn(system, asked);
  const bool pumped = any_runs(system, asked.pumps);
  if (!pumped && open.empty()) return feed;
  const double at_rest = pumped ? drawn.pressure(0.0).value_or(-infinite) : -infinite;
  feed.supplied = pumped && at_rest > asked.lowest;
  const double first = open.empty() ? 0.0 : flow_where(drawn, -1.0, asked.highest, most_taken(system, asked));
  const double last = feed.supplied ? flow_where(drawn, 1.0, asked.lowest, infinite) : 0.0;
  if (!(last > first)) return feed;
  const double step = (last - first) / static_cast<double>(samples - 1);
  std::vector<double> pressure, total;
  std::vector<std::vector<double>> each(open.size());
  for (std::size_t i = 0; i < samples; ++i) {
    const double flow = i + 1 == samples && !feed.supplied ? -1e-9 : first + step * static_cast<double>(i);
    const auto reached = drawn.pressure(flow);
    if (!reached) return Feed{{}, {}, {}, std::move(feed.open), false, true};
    pressure.push_back(*reached);
    double sum = 0.0;
    for (std::size_t k = 0; k < open.size(); ++k) {
      each[k].push_back(drawn.hose_flow(open[k]));
      sum += each[k].back();
    }
    total.push_back(sum);
  }
  feed.pressure = FlowTable(first, step, std::move(pressure));
  feed.hoses = FlowTable(first, step, std::move(total));
  for (auto& flows : each) feed.hose.emplace_back(first, step, std::move(flows));
  return feed;
}

double column_inertance(const PipingSystem& system, std::size_t place) {
  std::vector<double> length(system.places.size() + system.openings.size(), infinite);
  std::vector<double> inertance(length.size(), 0.0);
  const auto pass = [&](const Run& run, int from, int to) {
    double far = run.kind == RunKind::pump ? 0.0 : length[at(from)];
    double heavy = run.kind == RunKind::pump ? 0.0 : inertance[at(from)];
    for (const Element& element : run.elements) {
      if (!(element.bore > 0.0) || !(element.length > 0.0)) continue;
      far += element.length;
      heavy += system.fluid.density * element.length / (0.25 * std::numbers::pi * element.bore * element.bore);
    }
    if (!(far < length[at(to)])) return false;
    length[at(to)] = far;
    inertance[at(to)] = heavy;
    return true;
  };
  bool moved = true;
  for (std::size_t round = 0; moved && round < length.size(); ++round) {
    moved = false;
    for (const Run& run : system.runs) {
      if (run.kind == RunKind::hose) continue;
      moved = pass(run, run.from, run.to) || moved;
      if (run.kind != RunKind::pump && run.bounds.lowest < 0.0) moved = pass(run, run.to, run.from) || moved;
    }
  }
  return inertance[place];
}

}  // namespace forecourse::network
