#pragma once

#include <optional>
#include <span>
#include <variant>

#include "forecourse/parts/loss.h"
#include "forecourse/parts/monotone_cubic.h"

namespace forecourse::parts {

/// One side of a pressure/vacuum valve: shut below its setting, and above it the pressure that it holds at a flow.
/// The vacuum side is the same with flow and pressure the other way. See docs/theory/vapor-path.md.
struct VentValveSide {
  double opens_at = 0.0;               ///< [Pa] across it, >= 0
  std::optional<MonotoneCubic> curve;  ///< [Pa] against [m3/s]; empty: not known, so that only a least is
};

/// A side from what was entered: a setting, points of its curve, or both.
///
/// \param opens_at setting [Pa], >= 0; empty: the pressure of the first point, which is then at no flow
/// \param points   flow [m3/s] and pressure across the valve [Pa], rising in both; may be empty
/// \return the side [Pa], [m3/s], or the fault of the points.
/// \pre with both, the first point is at a flow above zero and at or above the setting, or at no flow and at it.
/// \error that of the figures entered.
/// \source common practice, no source: valves are listed with a setting and a flow test
[[nodiscard]] std::variant<VentValveSide, CurveFault> vent_valve_side(std::optional<double> opens_at,
                                                                      std::span<const CurvePoint> points);

/// Pressure across an open side at a flow.
///
/// \param side of the valve [SI]
/// \param flow [m3/s], >= 0
/// \return pressure [Pa] and slope [Pa s/m3]; without a curve the setting, which is the least that it can be.
/// \error that of the curve.
/// \source common practice, no source
[[nodiscard]] Loss loss(const VentValveSide& side, double flow);

}  // namespace forecourse::parts
