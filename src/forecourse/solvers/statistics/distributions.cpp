#include "forecourse/solvers/statistics/distributions.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace forecourse::solvers::statistics {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

bool is_probability(double p) { return p > 0.0 && p < 1.0; }

/// Continued fraction of the incomplete beta function after Lentz.
double beta_fraction(double a, double b, double x) {
  constexpr int most_terms = 500;
  constexpr double tiny = 1e-300;
  const auto kept = [](double value) { return std::abs(value) < tiny ? tiny : value; };
  double c = 1.0;
  double d = 1.0 / kept(1.0 - (a + b) * x / (a + 1.0));
  double sum = d;
  for (int m = 1; m <= most_terms; ++m) {
    const double even = m * (b - m) * x / ((a + 2 * m - 1.0) * (a + 2 * m));
    d = 1.0 / kept(1.0 + even * d);
    c = kept(1.0 + even / c);
    sum *= d * c;
    const double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1.0));
    d = 1.0 / kept(1.0 + odd * d);
    c = kept(1.0 + odd / c);
    sum *= d * c;
    if (std::abs(d * c - 1.0) < 1e-16) break;
  }
  return sum;
}

/// Regularized incomplete beta function; x and its complement are both given so that neither loses digits.
double incomplete_beta(double a, double b, double x, double complement) {
  if (x <= 0.0) return 0.0;
  if (complement <= 0.0) return 1.0;
  const double front =
      std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) + a * std::log(x) + b * std::log(complement));
  if (x < (a + 1.0) / (a + b + 2.0)) return front * beta_fraction(a, b, x) / a;
  return 1.0 - front * beta_fraction(b, a, complement) / b;
}

/// Probability above |t|.
double student_tail(double t, double degrees) {
  const double square = t * t;
  return 0.5 * incomplete_beta(0.5 * degrees, 0.5, degrees / (degrees + square), square / (degrees + square));
}

/// The t above which lies a probability of at most a half, by bisection.
double upper_quantile(double tail, double degrees) {
  double low = 0.0;
  double high = 1.0;
  while (student_tail(high, degrees) > tail && high < 1e300) high *= 2.0;
  constexpr int most_halvings = 200;
  for (int i = 0; i < most_halvings && high - low > 1e-15 * high; ++i) {
    const double middle = 0.5 * (low + high);
    (student_tail(middle, degrees) > tail ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

double normal_probability(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

double normal_quantile(double probability) {
  if (!is_probability(probability)) return nan;
  if (probability > 0.5) return -normal_quantile(1.0 - probability);
  if (probability == 0.5) return 0.0;
  const double r = std::sqrt(-2.0 * std::log(probability));
  double z = -(r - (2.515517 + r * (0.802853 + r * 0.010328)) / (1.0 + r * (1.432788 + r * (0.189269 + r * 0.001308))));
  for (int i = 0; i < 2; ++i) {
    const double density = std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
    const double step = (normal_probability(z) - probability) / density;
    z -= step / (1.0 + 0.5 * z * step);
  }
  return z;
}

double student_probability(double t, double degrees) {
  if (!(degrees > 0.0)) return nan;
  return t > 0.0 ? 1.0 - student_tail(t, degrees) : student_tail(t, degrees);
}

double student_quantile(double probability, double degrees) {
  if (!is_probability(probability) || !(degrees > 0.0)) return nan;
  if (probability == 0.5) return 0.0;
  return probability > 0.5 ? upper_quantile(1.0 - probability, degrees) : -upper_quantile(probability, degrees);
}

double share_when_none_seen(int trials, double confidence) {
  if (trials < 1 || !is_probability(confidence)) return nan;
  return 1.0 - std::pow(1.0 - confidence, 1.0 / trials);
}

double alarm_probability(double threshold, double rate, double bias, double deviation, int tests) {
  if (tests < 2 || !(deviation > 0.0)) return nan;
  return student_probability(-(threshold - rate - bias) / deviation, tests - 1.0);
}

}  // namespace forecourse::solvers::statistics
