#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::studies {

/// How low and how high the liquid of a tank or compartment may stand.
struct TankLevels {
  std::string tank;
  std::optional<double> low;   ///< [m] elevation of the surface
  std::optional<double> high;  ///< [m]
  std::string low_means;       ///< "at the inlet of pump P1"
  std::string high_means;      ///< "its crown, an upper bound"
  std::string reason;          ///< why an end is missing, and what to enter
};

/// Ends of the level in a tank that a pump draws from: full is the depth at which its overfill valve closes or its
/// overfill alarm sounds, the higher of those entered; without one, its crown, which is an upper bound. Low is the
/// pump's inlet; without one, the bottom. Tanks joined by a siphon share the lower full and the higher low.
[[nodiscard]] TankLevels tank_levels(const site::Site& site, const std::string& tank);

/// Elevation of a pump's inlet [m]; empty where its height above the bottom, or the bottom, is not known.
[[nodiscard]] std::optional<double> inlet_elevation(const site::Site& site, const site::Pump& pump);

}  // namespace forecourse::studies
