#pragma once

#include <string>
#include <variant>

#include "forecourse/parts/pump_curve.h"
#include "forecourse/site/pump.h"

namespace forecourse::network {

/// The law of a pump from its entered curve, or in words why the curve cannot be one.
/// \param speed_ratio  running speed / speed of the curve [1]
[[nodiscard]] std::variant<parts::PumpLaw, std::string> pump_law(const site::PumpCurve& curve, double speed_ratio);

}  // namespace forecourse::network
