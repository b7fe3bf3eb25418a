#pragma once

#include "forecourse/studies/tank/calibration.h"

namespace forecourse::studies {

/// Least squares over cross-section area and volume at the start, for a tank whose sections along its height are the
/// same or nearly so: upright or rectangular. Diameter or length and width are told through the area alone.
///
/// \pre three readings at least
/// \error rounding; standard errors are those of linear least squares
/// \fails where the readings lie at one depth a problem is told
[[nodiscard]] CalibrationTold fit_area(const site::Calibration& calibration, const network::TankInside& inside);

}  // namespace forecourse::studies
