#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/incident/incident.h"

namespace forecourse::decide {

/// How B minus A is spread over runs with drawn inputs. Run i of A and run i of B are a pair: an input that both have
/// is drawn from the same number, by its name, so that what is left of the spread comes from the choice.
struct PairedSpread {
  std::size_t runs = 0;
  std::size_t counted = 0;  ///< that finished in A and in B; the figures are theirs
  std::uint64_t seed = 0;
  std::array<double, 3> shares = {0.05, 0.5, 0.95};
  std::array<double, 3> escaped = {};  ///< [m3] quantiles of the difference of what escapes
  std::array<double, 3> outside = {};  ///< [m3] of what leaves the containment
  double mean = 0.0;                   ///< [m3] of the difference of what escapes
  double deviation = 0.0;              ///< [m3] standard deviation of it
  double deviation_apart = 0.0;        ///< [m3] what it would be if A and B were drawn each with its own luck
  double less = 0.0;                   ///< share of runs in which less escapes in B [1]
  double same = 0.0;                   ///< in which as much escapes, by `same_amount`
  double more = 0.0;
  std::vector<std::string> drawn_in_both;  ///< inputs, by name
  std::vector<std::string> only_a;         ///< drawn in A alone: they are not paired
  std::vector<std::string> only_b;
};

/// Pairs the runs of two spreads of the same seed; empty if no pair finished.
[[nodiscard]] std::optional<PairedSpread> pair_spreads(const studies::IncidentSpread& a,
                                                       const studies::IncidentSpread& b);

}  // namespace forecourse::decide
