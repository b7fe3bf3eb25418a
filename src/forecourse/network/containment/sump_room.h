#pragma once

#include <optional>

#include "forecourse/parts/escape/sump_volume.h"
#include "forecourse/site/sump.h"

namespace forecourse::network {

/// The room in a sump; empty if its sizes are not all entered.
[[nodiscard]] std::optional<parts::SumpRoom> sump_room(const site::Sump& sump);

/// Height above the floor where the sensor trips [m], by the sensor's own entry first; empty: none, or not entered.
[[nodiscard]] std::optional<double> sensor_height(const site::Sump& sump);

/// Height above the floor of the lowest entry seal [m], of those listed and the one entered as the lowest.
[[nodiscard]] std::optional<double> lowest_seal(const site::Sump& sump);

}  // namespace forecourse::network
