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

/// The same walks over estimates, where sets are dear to solve. Estimates are lower bounds: where one product holds a
/// blended hose back, the others give it less than they do apart, and no hose gets less by that. So of the candidates
/// of a size, all those are known to be no slower whose estimate is above the slowest one solved.
class EstimatedDescent {
 public:
  explicit EstimatedDescent(SetSearch& search) : search_(search), sizes_(search.slowest().size()) {}

  void go() {
    // From two starts: the hose with least to spare alone, and the one that is slowest with all open.
    walk(consider(search_.sets().alone()), &DistinctSets::one_more, most_added);
    walk(slowest_alone(search_).front(), &DistinctSets::one_more, most_added);
    walk(search_.sets().everything(), &DistinctSets::one_less, search_.group().hoses.size());
    for (std::size_t n = 2; n + 1 < sizes_.size() && n <= most_swapped; ++n) swap(n);
    solve_slowest();
  }

 private:
  static constexpr std::size_t most_added = 8;    ///< open hoses; sets of more are found from all open
  static constexpr std::size_t most_swapped = 6;  ///< open hoses; of more the walks find the slowest nearly always

  /// Sets of one size, each with its estimate.
  struct Candidates {
    std::vector<HoseSet> sets;
    std::vector<Slowness> bound;

    [[nodiscard]] std::size_t lowest(std::size_t first = 0) const {
      std::size_t least = first;
      for (std::size_t i = first; i < bound.size(); ++i) {
        if (is_slower(bound[i], bound[least])) least = i;
      }
      return least;
    }
  };

  /// Keeps sets of one size as candidates. Which of them is slowest by its estimate.
  HoseSet consider(const std::vector<HoseSet>& sets) {
    Candidates& size = sizes_[count_open(sets.front())];
    const std::size_t first = size.sets.size();
    std::vector<Slowness> bound = search_.estimate(sets);
    for (Slowness& one : bound) {
      if (std::isinf(one.flow)) one = {0.0, 0.0, 0};  // no estimate: to be solved in any case
    }
    size.sets.insert(size.sets.end(), sets.begin(), sets.end());
    size.bound.insert(size.bound.end(), bound.begin(), bound.end());
    return size.sets[size.lowest(first)];
  }

  void walk(HoseSet set, std::vector<HoseSet> (DistinctSets::*next)(HoseSet) const, std::size_t most) {
    for (std::size_t n = 1; n < std::min(most, search_.group().hoses.size()); ++n)
      set = consider((search_.sets().*next)(set));
  }

  /// Swaps hoses of the slowest set of a size until none gets slower.
  void swap(std::size_t n) {
    const Candidates& size = sizes_[n];
    for (HoseSet tried = 0; size.sets[size.lowest()] != tried;) {
      tried = size.sets[size.lowest()];
      const std::vector<HoseSet> swapped = search_.sets().one_swapped(tried);
      if (!swapped.empty()) consider(swapped);
    }
  }

  /// Of each size, those that may be slower than the slowest one solved: one of each size at a time.
  void solve_slowest() {
    std::vector<Slowness> slowest(sizes_.size());
    for (std::vector<HoseSet> next = next_to_solve(slowest); !next.empty(); next = next_to_solve(slowest)) {
      const std::vector<Slowness> solved = search_.solve(next);
      for (std::size_t i = 0; i < next.size(); ++i) {
        Slowness& own = slowest[count_open(next[i])];
        if (is_slower(solved[i], own)) own = solved[i];
      }
    }
  }

  /// With their bounds used up.
  std::vector<HoseSet> next_to_solve(const std::vector<Slowness>& slowest) {
    std::vector<HoseSet> next;
    for (std::size_t n = 1; n < sizes_.size(); ++n) {
      Candidates& size = sizes_[n];
      const std::size_t lowest = size.lowest();
      if (size.sets.empty() || !is_slower(size.bound[lowest], slowest[n])) continue;
      next.push_back(size.sets[lowest]);
      size.bound[lowest] = {};
    }
    return next;
  }

  SetSearch& search_;
  std::vector<Candidates> sizes_;  ///< per number of open hoses
};

}  // namespace

void descend_to_slowest(SetSearch& search, std::size_t starts) {
  if (search.estimates()) {
    std::vector<HoseSet> sets = search.sets().alone();
    sets.push_back(search.sets().everything());
    search.solve(sets);
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
