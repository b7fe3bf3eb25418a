#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace forecourse::solvers::statistics {

/// A chart of sums of what exceeds a reference, on both sides. All in standard deviations of one observation.
struct CusumChart {
  double reference = 0.5;   ///< k: half the shift that is to be found
  double limit = 5.0;       ///< h: a sum above it signals
  double head_start = 0.0;  ///< where both sums begin
};

struct CusumPoint {
  double upper = 0.0;
  double lower = 0.0;  ///< told positive: the sum of what falls below the reference
  bool signals_up = false;
  bool signals_down = false;
};

/// A chart of the average that forgets. All in standard deviations of one observation.
struct EwmaChart {
  double weight = 0.2;   ///< lambda: share of the newest observation
  double limit = 2.962;  ///< L: in deviations of the average
};

struct EwmaPoint {
  double average = 0.0;
  double limit = 0.0;  ///< of this point: narrower at the beginning
  bool signals = false;
};

/// \param standardized observations less their mean, in standard deviations
/// \return one point per observation; after a signal the sums go on
/// \source [page_1954, the rule]; [lucas_crosier_1982, the head start]
[[nodiscard]] std::vector<CusumPoint> cusum(const std::vector<double>& standardized, const CusumChart& chart);

/// \param standardized observations less their mean, in standard deviations
/// \source [lucas_saccucci_1990, the rule with the exact deviation of each point]
[[nodiscard]] std::vector<EwmaPoint> ewma(const std::vector<double>& standardized, const EwmaChart& chart);

/// Mean number of observations until a chart signals, by the integral equation of the chart's value, solved at
/// Gauss-Legendre points.
///
/// \param shift of the mean of the observations [standard deviations]; 0: nothing is wrong
/// \return observations; NaN where the chart's figures are not above zero
/// \error 1e-8 of the length for limits up to 12 and weights from 0.02
/// \source [page_1954, integral equation]; [lucas_crosier_1982, both sides together, from memory, not verified]
[[nodiscard]] double upper_cusum_run_length(const CusumChart& chart, double shift);
[[nodiscard]] double cusum_run_length(const CusumChart& chart, double shift);

/// The same for the average, with limits as they are after many observations.
/// \source [lucas_saccucci_1990, table 3 as its results; the integral equation is a closed form]
[[nodiscard]] double ewma_run_length(const EwmaChart& chart, double shift);

}  // namespace forecourse::solvers::statistics
