#include "forecourse/studies/meter/drift.h"

#include <cmath>

#include "forecourse/solvers/statistics/distributions.h"
#include "forecourse/solvers/statistics/least_squares.h"

namespace forecourse::studies {
namespace {

namespace statistics = solvers::statistics;

/// Where the line and the edges of its band reach the limit, from the last proving to the horizon.
void follow(const statistics::LinearFit& fit, double middle, double quantile, MeterDrift& out) {
  constexpr int steps = 2000;
  const double side = *out.slope < 0.0 ? -1.0 : 1.0;
  const double level = *fit.coefficients[0].value;
  const auto& c = fit.covariance;
  for (int i = 0; i <= steps; ++i) {
    const double x = out.x.back() + (out.horizon - out.x.back()) * i / steps;
    const double d = x - middle;
    const double line = side * (level + *out.slope * d);
    const double band = quantile * std::sqrt(std::max(c[0][0] + 2.0 * d * c[0][1] + d * d * c[1][1], 0.0));
    if (!out.earliest && line + band >= *out.share) out.earliest = x;
    if (!out.latest && line - band >= *out.share) out.latest = x;
  }
}

}  // namespace

MeterDrift drift_of(const std::vector<double>& x, const std::vector<double>& error,
                    const std::optional<double>& share) {
  MeterDrift out;
  out.x = x;
  out.error = error;
  out.share = share;
  out.provings = static_cast<int>(x.size());
  if (x.size() < 3) {
    out.problem = "fewer than three provings since the meter was last changed";
    return out;
  }
  double middle = 0.0;
  for (const double one : x) middle += one / static_cast<double>(x.size());
  statistics::Column level{"level", std::vector<double>(x.size(), 1.0)};
  statistics::Column course{"course", {}};
  for (const double one : x) course.values.push_back(one - middle);
  const statistics::LinearFit fit = statistics::least_squares({level, course}, error);
  if (!fit.problem.empty() || !fit.coefficients[1].value || !fit.coefficients[1].standard_error) {
    out.problem = "the provings do not lie apart";
    return out;
  }
  constexpr double one_sided = 0.95;  // on each side: 0.9 between both
  const double quantile = statistics::student_quantile(one_sided, static_cast<double>(x.size() - 2));
  out.slope = fit.coefficients[1].value;
  out.standard_error = fit.coefficients[1].standard_error;
  out.told_apart = std::abs(*out.slope) > quantile * *out.standard_error;
  out.horizon = 2.0 * x.back() - x.front();
  if (share && out.told_apart) follow(fit, middle, quantile, out);
  return out;
}

}  // namespace forecourse::studies
