#pragma once

#include <algorithm>
#include <numbers>

namespace forecourse::parts {

// Limits against static charge while a tank or truck is filled through a pipe. They do not make a filling free of
// risk. See docs/theory/static-limit.md.

/// Highest velocity until the inlet is covered by two fill-pipe diameters [m/s].
/// \source [nfpa_77_2000, table 7.6]
inline constexpr double start_of_fill_velocity = 1.0;

/// Time that the liquid needs between a filter and the tank [s].
/// \source [nfpa_77_2000, table 7.6]
inline constexpr double relaxation_time = 30.0;

/// Highest velocity in a fill pipe once its inlet is covered: the lesser of 7 m/s and 0.5 m2/s by the bore.
/// \param bore inside diameter [m], > 0
/// \return velocity [m/s].
/// \pre liquids of low conductivity; not written for the fueling of vehicles.
/// \error exact by the text.
/// \source [nfpa_77_2000, table 7.6]
[[nodiscard]] constexpr double fill_velocity_limit(double bore) { return std::min(7.0, 0.5 / bore); }

/// Flow at a velocity in a fill pipe.
/// \param velocity [m/s], >= 0
/// \param bore     inside diameter [m], > 0
/// \return flow [m3/s].
/// \error rounding only.
/// \source closed form
[[nodiscard]] constexpr double fill_flow(double velocity, double bore) {
  return std::numbers::pi / 4.0 * bore * bore * velocity;
}

}  // namespace forecourse::parts
