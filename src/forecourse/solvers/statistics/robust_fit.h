#pragma once

#include "forecourse/solvers/statistics/least_squares.h"

namespace forecourse::solvers::statistics {

/// How far out an observation loses its say.
enum class RobustRule {
  huber,     ///< weight falls as 1 / distance beyond 1.345 deviations
  bisquare,  ///< weight falls to nothing at 4.685 deviations: a typo has no say at all
};

/// A linear fit that a few wild observations do not pull.
struct RobustFit {
  LinearFit fit;       ///< its residual deviation is `scale`; weights tell how much each observation counts
  double scale = 0.0;  ///< [response] median of the absolute residuals / 0.6745
  bool settled = false;
};

/// Robust regression by reweighted least squares. The bisquare fit starts from the settled Huber fit, so that a wild
/// start does not decide what is wild. Standard errors after Huber, from the derivative of the rule.
///
/// \source [holland_welsch_1977, constants 1.345 and 4.685: 95 percent as good as least squares where nothing is wild];
///         [huber_1973, standard errors, held against statsmodels]
/// \error residual scatter of a handful of observations: standard errors are large-sample ones
[[nodiscard]] RobustFit robust_fit(const std::vector<Column>& columns, const std::vector<double>& response,
                                   RobustRule rule = RobustRule::bisquare);

}  // namespace forecourse::solvers::statistics
