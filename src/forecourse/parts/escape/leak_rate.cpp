#include "forecourse/parts/escape/leak_rate.h"

#include <algorithm>
#include <cmath>

namespace forecourse::parts {
namespace {

bool is_positive(LeakReading r) {
  return r.pressure > 0.0 && r.rate > 0.0 && std::isfinite(r.pressure) && std::isfinite(r.rate);
}

}  // namespace

LeakLaw leak_law(LeakReading reading, double exponent) {
  return {.coefficient = reading.rate / std::pow(reading.pressure, exponent), .exponent = exponent};
}

std::variant<LeakLaw, LeakFault> leak_law(LeakReading one, LeakReading other) {
  if (!is_positive(one) || !is_positive(other)) return LeakFault::not_positive;
  if (one.pressure == other.pressure) return LeakFault::equal_pressures;
  const double exponent = std::log(other.rate / one.rate) / std::log(other.pressure / one.pressure);
  if (!(exponent > 0.0)) return LeakFault::falling_rate;
  return leak_law(one, exponent);
}

double leak_rate(const LeakLaw& law, double pressure) {
  return pressure > 0.0 ? law.coefficient * std::pow(pressure, law.exponent) : 0.0;
}

Estimate leak_rate_between(LeakReading reading, double pressure) {
  const double share = std::max(pressure, 0.0) / reading.pressure;
  const double sharp = reading.rate * std::pow(share, sharp_hole_exponent);
  const double laminar = reading.rate * std::pow(share, laminar_crack_exponent);
  return {.low = std::min(sharp, laminar), .high = std::max(sharp, laminar)};
}

}  // namespace forecourse::parts
