#pragma once

#include <optional>
#include <string>

#include "forecourse/site/site.h"

namespace forecourse::site {

/// Elevation of the liquid's surface in a tank [m] from its own entries: the surface as entered, or the reading
/// above the bottom where it was taken. Empty if neither is there.
[[nodiscard]] std::optional<double> liquid_level(const Tank& tank);

/// The same for a tank or compartment by its id. A tank without a reading of its own takes the level of a tank
/// it is siphoned with; a compartment has its own reading.
[[nodiscard]] std::optional<double> liquid_level(const Site& site, const std::string& id);

}  // namespace forecourse::site
