#include "forecourse/solvers/statistics/robust_fit.h"

#include <algorithm>
#include <cmath>

namespace forecourse::solvers::statistics {
namespace {

constexpr double huber_constant = 1.345;
constexpr double bisquare_constant = 4.685;
constexpr double quartile_of_normal = 0.6745;  // as the constants above were fitted with

double weight_at(RobustRule rule, double u) {
  u = std::abs(u);
  if (rule == RobustRule::huber) return u <= huber_constant ? 1.0 : huber_constant / u;
  if (u >= bisquare_constant) return 0.0;
  const double inside = 1.0 - (u / bisquare_constant) * (u / bisquare_constant);
  return inside * inside;
}

/// Derivative of u times its weight.
double slope_at(RobustRule rule, double u) {
  u = std::abs(u);
  if (rule == RobustRule::huber) return u <= huber_constant ? 1.0 : 0.0;
  if (u >= bisquare_constant) return 0.0;
  const double t = (u / bisquare_constant) * (u / bisquare_constant);
  return (1.0 - t) * (1.0 - 5.0 * t);
}

double scale_of(const std::vector<double>& residuals) {
  std::vector<double> sizes;
  sizes.reserve(residuals.size());
  for (const double r : residuals) sizes.push_back(std::abs(r));
  std::sort(sizes.begin(), sizes.end());
  const std::size_t half = sizes.size() / 2;
  const double median = sizes.size() % 2 == 1 ? sizes[half] : 0.5 * (sizes[half - 1] + sizes[half]);
  return median / quartile_of_normal;
}

/// Reweights until the residuals stay.
RobustFit reweigh(const std::vector<Column>& columns, const std::vector<double>& response, RobustRule rule,
                  LinearFit start) {
  constexpr int most_rounds = 200;
  constexpr double settled_change = 1e-10;
  RobustFit out{std::move(start), 0.0, false};
  for (int round = 0; round < most_rounds && !out.settled; ++round) {
    out.scale = scale_of(out.fit.residuals);
    if (!(out.scale > 0.0)) {  // half of the observations lie on the fit
      out.settled = true;
      break;
    }
    FitOptions options;
    for (const double r : out.fit.residuals) options.weights.push_back(weight_at(rule, r / out.scale));
    LinearFit next = least_squares(columns, response, options);
    double change = 0.0;
    double size = 0.0;
    for (std::size_t i = 0; i < response.size(); ++i) {
      change += std::pow(next.residuals[i] - out.fit.residuals[i], 2);
      size += std::pow(out.fit.residuals[i], 2);
    }
    out.settled = change <= settled_change * settled_change * size;
    out.fit = std::move(next);
  }
  return out;
}

void tell_errors(const std::vector<Column>& columns, const std::vector<double>& response, RobustRule rule,
                 RobustFit& out) {
  const LinearFit plain = least_squares(columns, response);
  LinearFit& fit = out.fit;
  fit.degrees_of_freedom = plain.degrees_of_freedom;
  fit.residual_deviation = out.scale;
  if (plain.degrees_of_freedom == 0 || !(out.scale > 0.0)) return;
  const double n = static_cast<double>(response.size());
  double squares = 0.0;
  double slopes = 0.0;
  double slope_squares = 0.0;
  for (const double r : fit.residuals) {
    const double u = r / out.scale;
    squares += std::pow(r * weight_at(rule, u), 2);
    slopes += slope_at(rule, u);
    slope_squares += std::pow(slope_at(rule, u), 2);
  }
  const double mean = slopes / n;
  const double variance = (slope_squares - n * mean * mean) / (n - 1.0);
  const double kappa = 1.0 + static_cast<double>(plain.rank) * variance / (n * mean * mean);
  const double deviation = std::sqrt(squares / static_cast<double>(plain.degrees_of_freedom)) * kappa / mean;
  const double factor = std::pow(deviation / plain.residual_deviation, 2);
  fit.covariance = plain.covariance;
  for (std::size_t a = 0; a < fit.covariance.size(); ++a) {
    for (double& entry : fit.covariance[a]) entry *= factor;
    if (fit.coefficients[a].value) fit.coefficients[a].standard_error = std::sqrt(fit.covariance[a][a]);
  }
}

}  // namespace

RobustFit robust_fit(const std::vector<Column>& columns, const std::vector<double>& response, RobustRule rule) {
  LinearFit plain = least_squares(columns, response);
  if (!plain.problem.empty()) return {std::move(plain), 0.0, false};
  RobustFit out = reweigh(columns, response, RobustRule::huber, std::move(plain));
  if (rule == RobustRule::bisquare) out = reweigh(columns, response, rule, std::move(out.fit));
  tell_errors(columns, response, rule, out);
  return out;
}

}  // namespace forecourse::solvers::statistics
