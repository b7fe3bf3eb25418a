#pragma once

#include <optional>
#include <vector>

#include "forecourse/network/sets/hose_states.h"

namespace forecourse::studies {

/// The sets of open hoses of a group that differ: of equal hoses it counts only how many are open, so the first ones
/// of each class stand for all sets with as many.
class DistinctSets {
 public:
  explicit DistinctSets(const network::HoseGroup& group);

  /// Every set, by the number of open hoses; empty when there are more than `most`.
  [[nodiscard]] std::optional<std::vector<network::HoseSet>> all(std::size_t most) const;
  /// How many sets of hoses this one stands for.
  [[nodiscard]] double stands_for(network::HoseSet set) const;

  [[nodiscard]] network::HoseSet everything() const;
  [[nodiscard]] std::vector<network::HoseSet> alone() const;  ///< one hose of each class
  [[nodiscard]] std::vector<network::HoseSet> one_more(network::HoseSet set) const;
  [[nodiscard]] std::vector<network::HoseSet> one_less(network::HoseSet set) const;
  [[nodiscard]] std::vector<network::HoseSet> one_swapped(network::HoseSet set) const;
  /// The set that stands for this one.
  [[nodiscard]] network::HoseSet standing_for(network::HoseSet set) const;

 private:
  [[nodiscard]] std::size_t open_of(const std::vector<std::size_t>& equal, network::HoseSet set) const;
  [[nodiscard]] static network::HoseSet bit(std::size_t hose) { return network::HoseSet{1} << hose; }

  std::vector<std::vector<std::size_t>> classes_;
};

[[nodiscard]] std::size_t count_open(network::HoseSet set);

}  // namespace forecourse::studies
