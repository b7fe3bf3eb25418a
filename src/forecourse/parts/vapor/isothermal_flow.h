#pragma once

#include <algorithm>
#include <cmath>

namespace forecourse::parts {

/// Factor by which the pressure loss between two places is multiplied before a law of a liquid of constant density
/// gives the flow of a gas: the loss of a gas goes by its mean density, and its flow is told at the atmosphere.
///
/// With it, p1^2 - p2^2 = 2 p_atm dp(q), the flow of a gas of constant temperature without the term of its
/// acceleration.
/// \param from, to    gauge pressures at the ends [Pa]
/// \param atmospheric absolute [Pa], > 0
/// \return factor [1], 1 at the atmosphere.
/// \pre losses far below the absolute pressure: within 10 % of it the acceleration is below 1 % of the loss in pipes
///      longer than some hundred diameters.
/// \error that of the law, and the acceleration left out.
/// \source law of nature (ideal gas at one temperature)
[[nodiscard]] constexpr double density_factor(double from, double to, double atmospheric) {
  return 1.0 + 0.5 * (from + to) / atmospheric;
}

/// Pressure of a gas behind parts that it passes: p1^2 - p2^2 = 2 p_atm dp(q), as with `density_factor`.
/// \param from        gauge pressure before them [Pa]
/// \param loss        theirs by a law of a liquid of the gas's density at the atmosphere [Pa]; below 0: it flows
/// backward \param atmospheric absolute [Pa], > 0 \return gauge pressure [Pa]; where they would take all of it, that of
/// a vacuum \pre, \error as of `density_factor` \source law of nature (ideal gas at one temperature)
[[nodiscard]] inline double pressure_after(double from, double loss, double atmospheric) {
  const double absolute = from + atmospheric;
  return std::sqrt(std::max(0.0, absolute * absolute - 2.0 * atmospheric * loss)) - atmospheric;
}

}  // namespace forecourse::parts
