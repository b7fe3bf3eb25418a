#include "forecourse/studies/flow/worst/distinct_sets.h"

#include <algorithm>
#include <bit>

namespace forecourse::studies {
namespace {

using network::HoseSet;

double choose(std::size_t n, std::size_t k) {
  double ways = 1.0;
  for (std::size_t i = 0; i < k; ++i) ways = ways * static_cast<double>(n - i) / static_cast<double>(i + 1);
  return ways;
}

}  // namespace

std::size_t count_open(HoseSet set) { return static_cast<std::size_t>(std::popcount(set)); }

DistinctSets::DistinctSets(const network::HoseGroup& group) : classes_(group.equal) {}

std::optional<std::vector<HoseSet>> DistinctSets::all(std::size_t most) const {
  double count = 1.0;
  for (const auto& equal : classes_) count *= static_cast<double>(equal.size() + 1);
  if (count > static_cast<double>(most)) return std::nullopt;
  std::vector<HoseSet> sets{0};
  for (const auto& equal : classes_) {
    const std::size_t before = sets.size();
    HoseSet open = 0;
    for (const std::size_t hose : equal) {
      open |= bit(hose);
      for (std::size_t i = 0; i < before; ++i) sets.push_back(sets[i] | open);
    }
  }
  std::stable_sort(sets.begin(), sets.end(), [](HoseSet a, HoseSet b) { return count_open(a) < count_open(b); });
  return sets;
}

double DistinctSets::stands_for(HoseSet set) const {
  double ways = 1.0;
  for (const auto& equal : classes_) ways *= choose(equal.size(), open_of(equal, set));
  return ways;
}

HoseSet DistinctSets::everything() const {
  HoseSet all = 0;
  for (const auto& equal : classes_) {
    for (const std::size_t hose : equal) all |= bit(hose);
  }
  return all;
}

std::vector<HoseSet> DistinctSets::alone() const { return one_more(0); }

std::vector<HoseSet> DistinctSets::one_more(HoseSet set) const {
  std::vector<HoseSet> out;
  for (const auto& equal : classes_) {
    const std::size_t open = open_of(equal, set);
    if (open < equal.size()) out.push_back(set | bit(equal[open]));
  }
  return out;
}

std::vector<HoseSet> DistinctSets::one_less(HoseSet set) const {
  std::vector<HoseSet> out;
  for (const auto& equal : classes_) {
    const std::size_t open = open_of(equal, set);
    if (open > 0) out.push_back(set & ~bit(equal[open - 1]));
  }
  return out;
}

std::vector<HoseSet> DistinctSets::one_swapped(HoseSet set) const {
  std::vector<HoseSet> out;
  for (const HoseSet less : one_less(set)) {
    for (const HoseSet swapped : one_more(less)) {
      if (swapped != set) out.push_back(swapped);
    }
  }
  return out;
}

HoseSet DistinctSets::standing_for(HoseSet set) const {
  HoseSet out = 0;
  for (const auto& equal : classes_) {
    for (std::size_t i = 0; i < open_of(equal, set); ++i) out |= bit(equal[i]);
  }
  return out;
}

std::size_t DistinctSets::open_of(const std::vector<std::size_t>& equal, HoseSet set) const {
  return static_cast<std::size_t>(
      std::count_if(equal.begin(), equal.end(), [&](std::size_t hose) { return (set & bit(hose)) != 0; }));
}

}  // namespace forecourse::studies
