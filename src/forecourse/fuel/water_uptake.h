#pragma once

#include "forecourse/fuel/undetermined.h"

namespace forecourse::fuel {

/// Water that gasoline with 10 % ethanol holds before it separates into two phases. See docs/theory/water-uptake.md.
///
/// \param temperature [K]
/// \return share of water by volume [1]; NaN outside 20 to 60 degF, where nothing is published that could be read
/// \error 0.0005 absolute: the source rounds, and names no measurement
/// \source [e10_water_text, two points] 3.8 and 2.8 teaspoons of 4.929 mL in a gallon at 60 and 20 degF, straight
///         between
[[nodiscard]] double water_uptake_e10(double temperature);

/// Change of it with temperature [1/K].
/// \return [1/K]
/// \error 20 %
/// \source [e10_water_text, two points]
[[nodiscard]] double water_uptake_e10_slope();

/// Temperature at which gasoline with 10 % ethanol that holds this much water begins to separate.
/// \param water share by volume [1]
/// \return [K]; NaN outside the two points
/// \error 8 K, from that of the uptake
/// \source [e10_water_text, two points]
[[nodiscard]] double separation_temperature_e10(double water);

}  // namespace forecourse::fuel
