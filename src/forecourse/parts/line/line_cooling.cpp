#include "forecourse/parts/line/line_cooling.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace forecourse::parts {
namespace {

/// Integrates exp(-(beta / alpha) u^2) u^power / delta over the logarithm of u, where
/// delta = (u J0 - 2 alpha J1)^2 + (u Y0 - 2 alpha Y1)^2. Both ends vanish, so the trapezoidal rule is as good as any.
double well_integral(double alpha, double beta, int power) {
  constexpr double least_share = 1e-14;
  constexpr double largest_exponent = 45.0;
  constexpr double step = 0.02;
  const double from = 0.5 * std::log(least_share * std::min({alpha * alpha, alpha, alpha / beta}));
  const double to = 0.5 * std::log(largest_exponent * alpha / beta);
  const int steps = std::max(0, static_cast<int>(std::ceil((to - from) / step)));
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) {
    const double u = std::exp(from + i * step);
    const double first = u * j0(u) - 2.0 * alpha * j1(u);
    const double second = u * y0(u) - 2.0 * alpha * y1(u);
    sum += std::exp(-beta / alpha * u * u) * std::pow(u, power) / (first * first + second * second);
  }
  return sum * step;
}

struct Numbers {
  double alpha = 0.0;  ///< heat of the ground over that of the fuel
  double rate = 0.0;   ///< beta per time [1/s]
};

Numbers numbers_of(const SoilCooling& c) {
  return {c.ground_heat / c.fuel_heat, c.conductivity / (c.fuel_heat * c.radius * c.radius)};
}

constexpr double eight_over_pi_squared = 8.0 / (std::numbers::pi * std::numbers::pi);

double remaining_of(const SteadyCooling& c, double time) { return std::exp(-time / c.time_constant); }
double remaining_of(const SoilCooling& c, double time) {
  if (time <= 0.0) return 1.0;
  const Numbers n = numbers_of(c);
  return eight_over_pi_squared * n.alpha * well_integral(n.alpha, n.rate * time, 0);
}

double fading_of(const SteadyCooling& c, double time) { return std::exp(-time / c.time_constant) / c.time_constant; }
double fading_of(const SoilCooling& c, double time) {
  if (time <= 0.0) return std::numeric_limits<double>::infinity();
  const Numbers n = numbers_of(c);
  return eight_over_pi_squared * n.rate * well_integral(n.alpha, n.rate * time, 2);
}

/// The time at which a falling function of time comes to a value, in its logarithm.
template <class Function>
double falls_to(const Function& value_at, double value, double scale) {
  double low = scale * 1e-9;
  double high = scale;
  while (value_at(high) > value) high *= 4.0;
  while (value_at(low) < value && low > scale * 1e-15) low *= 0.25;
  constexpr int halvings = 60;
  for (int i = 0; i < halvings && high > low * (1.0 + 1e-9); ++i) {
    const double middle = std::sqrt(low * high);
    (value_at(middle) > value ? low : high) = middle;
  }
  return std::sqrt(low * high);
}

double scale_of(const SteadyCooling& c) { return c.time_constant; }
double scale_of(const SoilCooling& c) { return 1.0 / numbers_of(c).rate; }

}  // namespace

double remaining(const CoolingLaw& law, double time) {
  return std::visit([&](const auto& c) { return remaining_of(c, time); }, law);
}

double fading(const CoolingLaw& law, double time) {
  return std::visit([&](const auto& c) { return fading_of(c, time); }, law);
}

double time_until_fading(const CoolingLaw& law, double rate) {
  if (const auto* steady = std::get_if<SteadyCooling>(&law)) {
    const double share = rate * steady->time_constant;
    return share >= 1.0 ? 0.0 : -steady->time_constant * std::log(share);
  }
  return falls_to([&](double t) { return fading(law, t); }, rate, scale_of(std::get<SoilCooling>(law)));
}

double time_until_remaining(const CoolingLaw& law, double share) {
  if (const auto* steady = std::get_if<SteadyCooling>(&law)) return -scale_of(*steady) * std::log(share);
  return falls_to([&](double t) { return remaining(law, t); }, share, scale_of(std::get<SoilCooling>(law)));
}

}  // namespace forecourse::parts
