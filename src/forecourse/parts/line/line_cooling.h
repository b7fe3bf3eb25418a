#pragma once

#include <variant>

namespace forecourse::parts {

/// A line that comes to the temperature of the ground with one time constant.
struct SteadyCooling {
  double time_constant = 0.0;  ///< [s], > 0
};

/// A line of fuel, mixed through and without a wall of its own, in ground that reaches far and was all of one
/// temperature when the fuel came.
struct SoilCooling {
  double radius = 0.0;        ///< of the bore [m], > 0
  double conductivity = 0.0;  ///< of the ground [W/(m K)], > 0
  double ground_heat = 0.0;   ///< heat that the ground takes up per volume [J/(m3 K)], > 0
  double fuel_heat = 0.0;     ///< the same of the fuel [J/(m3 K)], > 0
};

/// How the temperature of the fuel in a line fades to that of the ground.
///
/// See docs/theory/line-test.md.
using CoolingLaw = std::variant<SteadyCooling, SoilCooling>;

/// Share of the first temperature difference that is left after a time.
/// \param time [s], >= 0
/// \return [1], 1 at the beginning, falling to 0
/// \error of SoilCooling 1e-6; a pipe wall, an interstice, fuel that is not mixed and ground that the line has warmed
///        before make it slower, so that it is a lower bound
/// \source closed form of one time constant; [carslaw_jaeger, well-stirred cylinder in a medium that reaches far]
[[nodiscard]] double remaining(const CoolingLaw& law, double time);

/// How fast the share falls.
/// \param time [s], >= 0
/// \return [1/s], positive, falling; infinite at the beginning of SoilCooling
/// \error as `remaining`
/// \source closed form (the derivative of `remaining`)
[[nodiscard]] double fading(const CoolingLaw& law, double time);

/// Time at which the share falls no faster than a rate.
/// \param rate [1/s], > 0
/// \return [s]; 0 where it is never faster
/// \error 1e-6 of the time
/// \source closed form; of SoilCooling a search
[[nodiscard]] double time_until_fading(const CoolingLaw& law, double rate);

/// Time at which a share is left.
/// \param share [1], above 0 and below 1
/// \return [s]
/// \error 1e-6 of the time
/// \source closed form; of SoilCooling a search
[[nodiscard]] double time_until_remaining(const CoolingLaw& law, double share);

}  // namespace forecourse::parts
