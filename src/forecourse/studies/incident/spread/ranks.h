#pragma once

#include <vector>

namespace forecourse::studies {

/// Spearman's rank correlation: the correlation of ranks, equal values sharing the mean of theirs.
/// \return [1], -1 to 1; 0 where one of them does not vary
/// \source [spearman_1904, by its definition]
[[nodiscard]] double rank_correlation(const std::vector<double>& a, const std::vector<double>& b);

/// The value below which a share of a sorted sample lies, straight between its members.
/// \pre not empty, share in [0, 1]
/// \source [hyndman_fan_1996, definition 7]
[[nodiscard]] double quantile(const std::vector<double>& sorted, double share);

}  // namespace forecourse::studies
