#pragma once

#include "forecourse/studies/meter/meter.h"

namespace forecourse::studies {

/// A straight line through the errors of provings, and when it reaches a limit. Nothing is told of fewer than three,
/// nor of what lies further ahead than the provings reach back.
///
/// \param x     of each proving, rising
/// \param error [1]
/// \param share [1] limit on either side that it is followed to; empty: it is not
/// \source closed form (least squares, Student's t)
[[nodiscard]] MeterDrift drift_of(const std::vector<double>& x, const std::vector<double>& error,
                                  const std::optional<double>& share);

}  // namespace forecourse::studies
