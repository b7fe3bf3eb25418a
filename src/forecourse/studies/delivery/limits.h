#pragma once

#include <optional>

#include "forecourse/site/site.h"

namespace forecourse::studies {

/// Published limits that a delivery is held against, for those who may not ask the laws of the parts.
struct DeliveryLimits {
  double truck_pressure = 0.0;  ///< [Pa] gauge
  double truck_vacuum = 0.0;    ///< [Pa]
  double start_velocity = 0.0;  ///< [m/s]
  double vent_height = 0.0;     ///< [m] above grade
};

/// \source [cfr_63_cccccc, table 1 (1)(c)]
/// \source [nfpa_77_2000, table 7.6]
/// \source [osha_1910_106, (b)(3)(iv)(a)]
[[nodiscard]] DeliveryLimits delivery_limits();

/// Nominal size of a vent by the published table [m]; empty beyond it.
[[nodiscard]] std::optional<double> vent_size(double flow, double length);

/// Whether a station sells so much gasoline that the limits of a truck's vapor bind it; empty: that is not known.
/// \source [cfr_63_cccccc, 63.11111]
[[nodiscard]] std::optional<bool> is_in_top_tier(const site::Site& site);

}  // namespace forecourse::studies
