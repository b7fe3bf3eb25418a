#pragma once

#include <span>
#include <variant>

#include "forecourse/parts/loss.h"
#include "forecourse/parts/monotone_cubic.h"

namespace forecourse::parts {

/// Loss of a device from points (flow, loss): C1, odd in flow, straight beyond the last point.
struct CurveLaw {
  MonotoneCubic curve;  ///< over flows >= 0, starting at (0, 0)

  friend bool operator==(const CurveLaw&, const CurveLaw&) = default;
};

/// Makes a loss curve from measured points; (0, 0) is added when the first flow is above zero.
///
/// \param points flow [m3/s] >= 0 strictly rising, loss [Pa] not falling
/// \return the law [Pa], or the first fault found.
/// \pre the points were taken with this liquid, or one close to it in density and viscosity.
/// \error exact at the points; between them no more is promised than staying between neighbors.
/// \source [fritsch_carlson_1980, the monotone region] [fritsch_butland_1984, the slope formula]
std::variant<CurveLaw, CurveFault> curve_law(std::span<const CurvePoint> points);

/// Pressure loss and slope of a curve law.
///
/// \param law  from `curve_law` [Pa]
/// \param flow [m3/s], either sign
/// \return loss [Pa], slope [Pa s/m3].
/// \error see `curve_law`.
/// \source [fritsch_carlson_1980, the monotone region]
Loss loss(const CurveLaw& law, double flow);

}  // namespace forecourse::parts
