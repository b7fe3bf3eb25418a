#include "forecourse/studies/flow/worst/set_descent.h"

#include <algorithm>
#include <bit>
#include <cmath>

namespace forecourse::studies {
namespace {

using network::HoseSet;

constexpr int most_passes = 10;
constexpr double worth_a_step = 1e-10;  // relative

/// Candidates for the next step of several walks, solved together.
struct Fan {
  std::vector<HoseSet> sets;
  std::vector<std::size_t> ends;  ///< of each walk's candidates

  void add(const std::vector<HoseSet>& candidates) {
    sets.insert(sets.end(), candidates.begin(), candidates.end());
    ends.push_back(sets.size());
  }
};

/// Each walk goes on with the slowest of its candidates.
void step(SetSearch& search, const Fan& fan, std::vector<HoseSet>& walks) {
  const std::vector<Slowness> slowness = search.solve(fan.sets);
  std::size_t first = 0;
  for (std::size_t w = 0; w < walks.size(); ++w) {
    std::size_t best = first;
    for (std::size_t i = first; i < fan.ends[w]; ++i) {
      if (is_slower(slowness[i], slowness[best])) best = i;
    }
    if (best < fan.ends[w]) walks[w] = fan.sets[best];
    first = fan.ends[w];
  }
  std::sort(walks.begin(), walks.end());
  walks.erase(std::unique(walks.begin(), walks.end()), walks.end());
}

/// One hose of each class, those that are slowest with all open first.
std::vector<HoseSet> slowest_alone(SetSearch& search) {
  std::vector<double> flow;
  search.solve(std::vector<HoseSet>{search.sets().everything()},
               [&](std::size_t, const network::SetStates& states) { flow = states.hose_flow; });
  std::vector<HoseSet> sets = search.sets().alone();
  std::stable_sort(sets.begin(), sets.end(), [&](HoseSet a, HoseSet b) {
    return flow[static_cast<std::size_t>(std::countr_zero(a))] < flow[static_cast<std::size_t>(std::countr_zero(b))];
  });
  return sets;
}

void walk(SetSearch& search, std::vector<HoseSet> walks, std::vector<HoseSet> (DistinctSets::*next)(HoseSet) const) {
  for (std::size_t n = 1; n < search.group().hoses.size(); ++n) {
    Fan fan;
    for (const HoseSet set : walks) fan.add((search.sets().*next)(set));
    step(search, fan, walks);
  }
}

/// Swaps hoses of the slowest set of each size, all sizes side by side, until none gets slower.
void swap(SetSearch& search) {
  std::vector<HoseSet> tried(search.slowest().size(), 0);
  for (int pass = 0; pass < most_passes; ++pass) {
    std::vector<HoseSet> sets;
    for (std::size_t n = 1; n + 1 < search.slowest().size(); ++n) {
      const HoseSet best = search.slowest()[n].set;
      if (best == tried[n]) continue;
      tried[n] = best;
      const std::vector<HoseSet> swapped = search.sets().one_swapped(best);
      sets.insert(sets.end(), swapped.begin(), swapped.end());
    }
    if (sets.empty()) return;
    search.solve(sets);
  }
}

/// The same walks over estimates, but for few hoses; of the others the slowest set of each size is solved in the end.
class EstimatedDescent {
 public:
  explicit EstimatedDescent(SetSearch& search) : search_(search), best_(search.slowest().size()) {}

  void go() {
    walk(consider(search_.sets().alone()), &DistinctSets::one_more);
    walk(consider({search_.sets().everything()}), &DistinctSets::one_less);
    swap();
    std::vector<HoseSet> sets;
    for (const Best& best : best_) {
      if (best.set != 0) sets.push_back(best.set);
    }
    search_.solve(sets);
  }

 private:
  struct Best {
    Slowness slowness;
    HoseSet set = 0;
  };

  /// The slowest of these; each is kept if it is the slowest of its size.
  HoseSet consider(const std::vector<HoseSet>& sets) {
    const bool few = count_open(sets.front()) <= most_solved;
    const std::vector<Slowness> slowness = few ? search_.solve(sets) : search_.estimate(sets);
    std::size_t slowest = 0;
    for (std::size_t i = 0; i < sets.size(); ++i) {
      Best& best = best_[count_open(sets[i])];
      if (best.set == 0 || is_slower(slowness[i], best.slowness)) best = {slowness[i], sets[i]};
      if (is_slower(slowness[i], slowness[slowest])) slowest = i;
    }
    return sets[slowest];
  }

  void walk(HoseSet set, std::vector<HoseSet> (DistinctSets::*next)(HoseSet) const) {
    for (std::size_t n = 1; n < search_.group().hoses.size(); ++n) set = consider((search_.sets().*next)(set));
  }

  /// Few hoses open make few sets, of which all are solved, since an estimate errs most there.
  static constexpr std::size_t most_solved = 6;  ///< open hoses

  void swap() {
    std::vector<HoseSet> tried(most_solved + 1, 0);
    for (int pass = 0; pass < most_passes; ++pass) {
      std::vector<HoseSet> sets;
      for (std::size_t n = 1; n + 1 < best_.size() && n <= most_solved; ++n) {
        if (best_[n].set == tried[n]) continue;
        tried[n] = best_[n].set;
        const std::vector<HoseSet> swapped = search_.sets().one_swapped(tried[n]);
        sets.insert(sets.end(), swapped.begin(), swapped.end());
      }
      if (sets.empty()) return;
      consider(sets);
    }
  }

  SetSearch& search_;
  std::vector<Best> best_;  ///< per number of open hoses
};

}  // namespace

void descend_to_slowest(SetSearch& search, std::size_t starts) {
  if (search.estimates()) {
    search.solve(search.sets().alone());
    return EstimatedDescent(search).go();
  }
  std::vector<HoseSet> walks = slowest_alone(search);
  search.solve(walks);
  walks.resize(std::min(walks.size(), starts));
  walk(search, std::move(walks), &DistinctSets::one_more);
  walk(search, {search.sets().everything()}, &DistinctSets::one_less);
  swap(search);
}

void ascend_to_greatest(SetSearch& search, std::size_t system, std::size_t run) {
  HoseSet set = search.sets().everything();
  double flow = -1.0;
  std::vector<HoseSet> candidates{set};
  while (!candidates.empty()) {
    std::size_t best = candidates.size();
    search.solve(candidates, [&](std::size_t first, const network::SetStates& states) {
      for (std::size_t i = 0; i < states.size(); ++i) {
        const double own = states.solved[i] != 0 ? std::abs(states.systems[system].flow_of(i, run)) : -1.0;
        if (own <= flow + worth_a_step * std::abs(flow)) continue;
        flow = own;
        best = first + i;
      }
    });
    if (best == candidates.size()) return;
    set = candidates[best];
    candidates = search.sets().one_more(set);
    const std::vector<HoseSet> less = search.sets().one_less(set);
    candidates.insert(candidates.end(), less.begin(), less.end());
  }
}

}  // namespace forecourse::studies
