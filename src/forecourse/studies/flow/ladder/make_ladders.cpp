#include "forecourse/studies/flow/ladder/make_ladders.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "forecourse/studies/flow/worst/set_descent.h"

namespace forecourse::studies {
namespace {

using network::HoseGroup;
using network::HoseSet;
using network::SetStates;

constexpr double alike = 1e-6;  // relative: flows that no one tells apart
constexpr double slack = 1e-9;  // relative: what the solver leaves between flows that are equal

/// The hoses that open one after another, as indices into the group.
using Order = std::vector<std::size_t>;

Order spread_order(const HoseGroup& group) {
  std::map<std::string, std::size_t> seen;  // hoses of the dispenser so far
  std::vector<std::pair<std::size_t, std::size_t>> turns;
  for (std::size_t h = 0; h < group.hoses.size(); ++h) turns.emplace_back(seen[group.hoses[h].dispenser]++, h);
  std::stable_sort(turns.begin(), turns.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  Order order;
  for (const auto& turn : turns) order.push_back(turn.second);
  return order;
}

Order given_order(const HoseGroup& group, const std::vector<std::string>& asked) {
  Order order;
  for (const std::string& id : asked) {
    const auto found = std::find_if(group.hoses.begin(), group.hoses.end(), [&](const auto& h) { return h.id == id; });
    if (found != group.hoses.end()) order.push_back(static_cast<std::size_t>(found - group.hoses.begin()));
  }
  return order;
}

std::vector<HoseSet> sets_of(const Order& order) {
  std::vector<HoseSet> sets;
  HoseSet set = 0;
  for (const std::size_t hose : order) sets.push_back(set |= HoseSet{1} << hose);
  return sets;
}

/// The first of the hoses that give least, and how many give as little.
void name_slowest(LadderStep& step) {
  const auto is_least = [&](double flow) { return !(flow > step.slowest * (1.0 + alike)); };
  const auto first = std::find_if(step.flow.begin(), step.flow.end(), is_least);
  step.slowest_hose = step.hoses[static_cast<std::size_t>(first - step.flow.begin())];
  step.tied = static_cast<int>(std::count_if(step.flow.begin(), step.flow.end(), is_least));
}

LadderStep step_of(const HoseGroup& group, const Order& open, const SetStates& states, std::size_t i) {
  LadderStep step;
  const bool solved = states.solved[i] != 0;
  for (const std::size_t hose : open) {
    const double flow = solved ? states.hose_flow[i * group.hoses.size() + hose] : std::nan("");
    step.hoses.push_back(group.hoses[hose].id);
    step.flow.push_back(flow);
    step.total += flow;
    if (step.hoses.size() == 1 || flow < step.slowest * (1.0 - slack)) step.slowest = flow;
  }
  name_slowest(step);
  return step;
}

std::optional<int> keeps(const std::vector<LadderStep>& steps, std::optional<double> flow) {
  if (!flow) return std::nullopt;
  int kept = 0;
  for (const LadderStep& step : steps) {
    if (!(step.slowest >= *flow * (1.0 - slack))) break;
    ++kept;
  }
  return kept;
}

Ladder along(SetSearch& search, const Order& order, LadderOrder kind) {
  Ladder ladder{search.group().id, kind, {}, {}, {}, {}};
  search.solve(sets_of(order), [&](std::size_t first, const SetStates& states) {
    for (std::size_t i = 0; i < states.size(); ++i) {
      const Order open(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(first + i + 1));
      ladder.steps.push_back(step_of(search.group(), open, states, i));
    }
  });
  return ladder;
}

/// Solves as many sets as are worth it, so that the search knows the slowest of each size.
void look_for_slowest(SetSearch& search, const SearchLimits& limits) {
  const auto all = search.sets().all(search.is_batched() ? limits.most_sets : limits.most_single);
  if (all) {
    search.enumerate(*all);
  } else {
    descend_to_slowest(search, search.is_batched() ? 6 : 1);
  }
}

/// One and all but one open are solved in each way to search, where hoses are added one by one; of all open there is
/// one set only.
Proof proof_of(const SetSearch& search, std::size_t open) {
  const std::size_t all = search.group().hoses.size();
  if (search.failed() > 0) return Proof::best_found;
  if (open == all) return Proof::argument;
  if (search.is_enumerated() || open == 1) return Proof::enumeration;
  return search.is_batched() && open + 1 == all ? Proof::enumeration : Proof::best_found;
}

/// The slowest set of so many hoses; where none was solved, as after a cancel, the first hoses.
HoseSet slowest_of(const SetSearch& search, std::size_t open) {
  const HoseSet found = search.slowest()[open].set;
  return found != 0 ? found : ~HoseSet{0} >> (64U - open);
}

Ladder worst(SetSearch& search) {
  std::vector<HoseSet> sets;
  const std::size_t hoses = search.group().hoses.size();
  for (std::size_t n = 1; n <= hoses; ++n) sets.push_back(slowest_of(search, n));
  Ladder ladder{search.group().id, LadderOrder::worst, {}, {}, {}, {}};
  search.solve(sets, [&](std::size_t first, const SetStates& states) {
    for (std::size_t i = 0; i < states.size(); ++i) {
      Order open;
      for (std::size_t h = 0; h < hoses; ++h) {
        if ((sets[first + i] >> h & 1U) != 0) open.push_back(h);
      }
      const SlowestSet& found = search.slowest()[first + i + 1];
      ladder.steps.push_back(step_of(search.group(), open, states, i));
      ladder.steps.back().proof = proof_of(search, first + i + 1);
      if (found.sets > 0.0) ladder.steps.back().mean_slowest = found.sum / found.sets;
    }
  });
  return ladder;
}

}  // namespace

bool all_alike(const LadderStep& step) {
  if (step.tied != static_cast<int>(step.hoses.size())) return false;
  if (!step.mean_slowest) return step.hoses.size() > 1;
  return std::abs(*step.mean_slowest - step.slowest) <= alike * step.slowest;
}

std::vector<Ladder> ladders(SetSearch& search, const LadderRequest& request) {
  if (search.group().hoses.empty()) return {};
  look_for_slowest(search, request.limits);
  const Ladder spread = along(search, spread_order(search.group()), LadderOrder::spread);
  const Order order = given_order(search.group(), request.order);
  std::vector<Ladder> given;
  if (!order.empty()) given.push_back(along(search, order, LadderOrder::given));
  std::vector<Ladder> all{worst(search), spread};
  all.insert(all.end(), given.begin(), given.end());
  for (Ladder& ladder : all) ladder.keeps = keeps(ladder.steps, request.keep_flow);
  return all;
}

}  // namespace forecourse::studies
