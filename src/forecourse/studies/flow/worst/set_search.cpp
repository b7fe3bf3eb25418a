#include "forecourse/studies/flow/worst/set_search.h"

#include <algorithm>
#include <cmath>

namespace forecourse::studies {
namespace {

using network::HoseSet;
using network::SetStates;

constexpr std::size_t sets_a_stretch = 2048;  // kept in memory at once
constexpr double rounding = 1e-10;            // relative; below it two values are alike

bool is_below(double a, double b) {
  if (std::isinf(b)) return a < b;
  return a < b - rounding * std::max(std::abs(a), std::abs(b)) - 1e-15;
}

/// Keeps the lower of two; `sign` -1 keeps the higher.
void keep(Found& found, double value, HoseSet set, double sign) {
  if (std::isnan(value)) return;
  if (std::isnan(found.value) || is_below(sign * value, sign * found.value)) found = {value, set};
}

}  // namespace

bool is_slower(const Slowness& a, const Slowness& b) {
  if (is_below(a.flow, b.flow) || is_below(b.flow, a.flow)) return a.flow < b.flow;
  if (std::isinf(b.flow)) return !std::isinf(a.flow);
  return is_below(a.spare, b.spare);
}

SetSearch::SetSearch(const network::HoseGroup& group, const Context& context)
    : group_(group), context_(context), sets_(group), states_(group), class_of_(group.hoses.size()) {
  for (std::size_t c = 0; c < group.equal.size(); ++c) {
    for (const std::size_t hose : group.equal[c]) class_of_[hose] = c;
  }
  slowest_.resize(group.hoses.size() + 1);
  least_flow_.resize(group.equal.size());
  greatest_flow_.resize(group.equal.size());
  for (const network::PipingSystem* system : group.systems) {
    run_flow_.emplace_back(system->runs.size());
    pressure_.emplace_back(system->places.size());
  }
}

std::vector<Slowness> SetSearch::solve(std::span<const HoseSet> sets, const Tell& tell) {
  std::vector<Slowness> out;
  out.reserve(sets.size());
  SetStates states;
  for (std::size_t first = 0; first < sets.size(); first += sets_a_stretch) {
    const auto stretch = sets.subspan(first, std::min(sets_a_stretch, sets.size() - first));
    states_.solve(stretch, states, context_);
    for (std::size_t i = 0; i < stretch.size(); ++i) {
      ++solved_;
      if (states.solved[i] == 0) {
        ++failed_;
        out.emplace_back();
        continue;
      }
      out.push_back(slowness_of(states, i, stretch[i]));
      fold(states, i, stretch[i], out.back());
    }
    if (tell) tell(first, states);
  }
  return out;
}

std::vector<Slowness> SetSearch::estimate(std::span<const HoseSet> sets) {
  std::vector<Slowness> out;
  out.reserve(sets.size());
  SetStates states;
  states_.solve_apart(sets, states, context_);
  for (std::size_t i = 0; i < sets.size(); ++i) {
    out.push_back(states.solved[i] != 0 ? slowness_of(states, i, sets[i]) : Slowness{});
  }
  return out;
}

void SetSearch::enumerate(std::span<const HoseSet> sets) {
  const std::vector<Slowness> slowness = solve(sets);
  enumerated_ = true;
  for (std::size_t i = 0; i < sets.size(); ++i) {
    if (std::isinf(slowness[i].flow)) continue;
    SlowestSet& size = slowest_[count_open(sets[i])];
    const double ways = sets_.stands_for(sets[i]);
    size.sum += ways * slowness[i].flow;
    size.sets += ways;
  }
}

Slowness SetSearch::slowness_of(const SetStates& states, std::size_t i, HoseSet set) const {
  Slowness out;
  const std::size_t hoses = group_.hoses.size();
  for (std::size_t h = 0; h < hoses; ++h) {
    if ((set >> h & 1U) == 0) continue;
    const double flow = states.hose_flow[i * hoses + h];
    if (is_below(flow, out.flow)) out.hose = h;
    out.flow = std::min(out.flow, flow);
    for (const network::HosePart& part : group_.hoses[h].parts) {
      const network::Run& run = group_.run(part);
      const network::BatchStates& system = states.systems[part.system];
      const double across = system.pressure_of(i, static_cast<std::size_t>(run.from)) -
                            system.pressure_of(i, static_cast<std::size_t>(run.to));
      out.spare = std::min(out.spare, across);
    }
  }
  return out;
}

void SetSearch::fold(const SetStates& states, std::size_t i, HoseSet set, const Slowness& slowness) {
  SlowestSet& size = slowest_[count_open(set)];
  if (set != 0 && is_slower(slowness, size.slowness)) {
    size.slowness = slowness;
    size.set = set;
  }
  const std::size_t hoses = group_.hoses.size();
  for (std::size_t h = 0; h < hoses; ++h) {
    if ((set >> h & 1U) == 0) continue;
    const double flow = states.hose_flow[i * hoses + h];
    keep(least_flow_[class_of_[h]], flow, set, 1.0);
    keep(greatest_flow_[class_of_[h]], flow, set, -1.0);
  }
  for (std::size_t s = 0; s < states.systems.size(); ++s) {
    const network::BatchStates& system = states.systems[s];
    for (std::size_t r = 0; r < run_flow_[s].size(); ++r)
      keep(run_flow_[s][r], std::abs(system.flow_of(i, r)), set, -1.0);
    for (std::size_t n = 0; n < pressure_[s].size(); ++n) keep(pressure_[s][n], system.pressure_of(i, n), set, -1.0);
  }
}

/// The set with this hose open in place of the equal one it was found for.
Found SetSearch::for_hose(const std::vector<Found>& found, std::size_t hose) const {
  Found out = found[class_of_[hose]];
  const HoseSet own = HoseSet{1} << hose;
  if ((out.set & own) != 0 || std::isnan(out.value)) return out;
  for (const std::size_t other : group_.equal[class_of_[hose]]) {
    const HoseSet bit = HoseSet{1} << other;
    if ((out.set & bit) == 0) continue;
    out.set = (out.set & ~bit) | own;
    return out;
  }
  return out;
}

}  // namespace forecourse::studies
