#pragma once

#include "forecourse/base/api_units.h"

namespace forecourse::parts {

// Limits on the pressure of vapor, written in inches of water column. They are held here in pascals.

/// Highest gauge pressure in a tank truck while it unloads through a vapor hose: 18 in of water [Pa].
/// \source [cfr_63_cccccc, table 1 (1)(c)]
inline constexpr double truck_pressure_limit = pascal_from_inches_of_water(18.0);
/// Largest vacuum in it: 5.9 in of water [Pa].
/// \source [cfr_63_cccccc, table 1 (1)(c)]
inline constexpr double truck_vacuum_limit = pascal_from_inches_of_water(5.9);

}  // namespace forecourse::parts
