#include "forecourse/parts/friction_factor.h"

#include <cmath>
#include <cstdint>
#include <numbers>

#include "forecourse/base/bit_cast.h"

namespace forecourse::parts {
namespace {

// With x = 1/sqrt(f) the law of Colebrook and White reads x + c ln(a + b x) = 0,
// where c = 2/ln(10), a = relative roughness / 3.7, b = 2.51/Re. The letters are those of docs/theory/pipe-friction.md.
constexpr double c = 2.0 * std::numbers::log10e;
constexpr double smooth_wall = 2.51;  // [colebrook_1939, the transition law]
constexpr double rough_wall = 3.7;    // [colebrook_1939, the transition law]

// ln(v) to 2e-4 from the exponent and a cubic of the mantissa: enough to start from, and cheaper.
// The cubic is ours, fitted to log2(1 + m) - m over 0 <= m < 1.
double rough_log(double v) {
  constexpr std::uint64_t mantissa = 0x000fffffffffffff, exponent_of_one = 0x3ff0000000000000;
  const auto bits = bit_cast<std::uint64_t>(v);
  const double exponent = static_cast<double>(static_cast<std::int64_t>(bits >> 52) - 1023);
  const double m = bit_cast<double>((bits & mantissa) | exponent_of_one) - 1.0;
  return std::numbers::ln2 * (exponent + m + m * (1.0 - m) * (0.4408 + m * (0.0816 * m - 0.2427)));
}

// First guess of x, within about 1 %: an explicit form of the same law.
// SOURCE: [haaland_1983, eq. for 1/sqrt(f), exponent 1.11 and 6.9/Re]
double first_guess(const FrictionLaw& law, double per_reynolds) {
  return -1.8 * std::numbers::log10e * rough_log(law.start_term + 6.9 * per_reynolds);
}

// Newton's step towards x + c ln(a + b x) = 0, where `inside` = a + b x and `log_inside` its logarithm.
double newton_step(double x, double cb, double inside, double log_inside) {
  return (x + c * log_inside) * inside / (inside + cb);
}

// 1/sqrt(f) of a turbulent flow. A step with the rough logarithm leaves 1e-4, from where a step of Halley's method
// with the true logarithm reaches rounding: one logarithm in all.
double solve(const FrictionLaw& law, double per_reynolds) {
  const double a = law.roughness_term, b = smooth_wall * per_reynolds;
  const double guess = first_guess(law, per_reynolds);
  const double near = guess - newton_step(guess, c * b, a + b * guess, rough_log(a + b * guess));
  const double inside = a + b * near;
  const double newton = newton_step(near, c * b, inside, std::log(inside));
  return near - newton / (1.0 + 0.5 * c * b * b * newton / ((inside + c * b) * inside));
}

Friction turbulent(const FrictionLaw& law, double reynolds) {
  const double per_reynolds = 1.0 / reynolds;
  const double x = solve(law, per_reynolds);
  const double b = smooth_wall * per_reynolds;
  const double factor = 1.0 / (x * x);
  const double share = c * b / (law.roughness_term + b * x + c * b);
  return {factor, -2.0 * share * factor * per_reynolds};  // by implicit differentiation
}

Friction laminar(double reynolds) { return {64.0 / reynolds, -64.0 / (reynolds * reynolds)}; }

// Cubic in t = 0..1 with value and slope (per unit of t) of both ends.
std::array<double, 4> cubic_between(Friction from, Friction to, double width) {
  const double rise = to.factor - from.factor;
  const double start = from.slope * width, end = to.slope * width;
  return {from.factor, start, 3.0 * rise - 2.0 * start - end, start + end - 2.0 * rise};
}

Friction transition(const FrictionLaw& law, double reynolds) {
  constexpr double width = turbulent_limit - laminar_limit;
  const auto& k = law.transition;
  const double t = (reynolds - laminar_limit) / width;
  return {k[0] + t * (k[1] + t * (k[2] + t * k[3])), (k[1] + t * (2.0 * k[2] + t * 3.0 * k[3])) / width};
}

}  // namespace

FrictionLaw friction_law(double relative_roughness) {
  const double a = relative_roughness / rough_wall;
  FrictionLaw law{.roughness_term = a, .start_term = std::pow(a, 1.11), .transition = {}};
  law.transition =
      cubic_between(laminar(laminar_limit), turbulent(law, turbulent_limit), turbulent_limit - laminar_limit);
  return law;
}

Friction friction(const FrictionLaw& law, double reynolds) {
  if (reynolds > turbulent_limit) return turbulent(law, reynolds);
  if (reynolds > laminar_limit) return transition(law, reynolds);
  return laminar(reynolds);
}

double inverse_root_friction(const FrictionLaw& law, double karman_number) {
  return -c * std::log(law.roughness_term + smooth_wall / karman_number);
}

}  // namespace forecourse::parts
