#include "forecourse/solvers/sequence/blow_down.h"

#include <cmath>
#include <limits>

namespace forecourse::solvers::sequence {

namespace {

/// Share of the pressure lost per time at the start [1/s].
double first_rate(double pressure, double compliance, LeakLaw leak) {
  const double power = leak.exponent == 0.5 ? 1.0 / std::sqrt(pressure) : std::pow(pressure, leak.exponent - 1.0);
  return leak.coefficient * power / compliance;
}

/// ln(p / p0) after y = first rate * time; minus infinity once nothing is left.
double log_ratio(double y, double exponent) {
  const double bend = 1.0 - exponent;
  if (bend == 0.0) return -y;
  if (bend * y >= 1.0) return -std::numeric_limits<double>::infinity();
  return std::log1p(-bend * y) / bend;
}

}  // namespace

BlowDown blow_down(double pressure, double compliance, LeakLaw leak, double duration) {
  if (!(pressure > 0.0)) return {pressure, 0.0};
  const double y = first_rate(pressure, compliance, leak) * duration;
  if (leak.exponent == 0.5) {
    const double left = y < 2.0 ? 1.0 - 0.5 * y : 0.0;
    const double lost = y < 2.0 ? y * (1.0 - 0.25 * y) : 1.0;
    return {pressure * left * left, compliance * pressure * lost};
  }
  const double log = log_ratio(y, leak.exponent);
  return {pressure * std::exp(log), -compliance * pressure * std::expm1(log)};
}

double blow_down_time(double from, double to, double compliance, LeakLaw leak) {
  if (!(from > to)) return 0.0;
  const double rate = first_rate(from, compliance, leak);
  const double bend = 1.0 - leak.exponent;
  const double log = std::log(to / from);  // minus infinity at to = 0
  const double y = bend == 0.0 ? -log : -std::expm1(bend * log) / bend;
  return y / rate;
}

}  // namespace forecourse::solvers::sequence
