#pragma once

#include <limits>
#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "forecourse/parts/loss.h"
#include "forecourse/parts/monotone_cubic.h"

namespace forecourse::parts {

/// Pressure a pump adds and its derivative to flow.
struct Rise {
  double pressure_rise = 0.0;  ///< [Pa]
  double slope = 0.0;          ///< d(pressure_rise)/d(flow) [Pa s/m3], <= 0 on a falling curve
};

/// rise = c0 + c1 q + c2 q2 + ...; beyond `largest_flow` the curve goes on straight.
struct PolynomialCurve {
  std::vector<double> coefficients;                               ///< c_i [Pa (s/m3)^i], any count
  double largest_flow = std::numeric_limits<double>::infinity();  ///< end of the curve as given [m3/s]
};

/// rise = shutoff - factor q^exponent.
struct PowerCurve {
  double shutoff = 0.0;   ///< rise at no flow [Pa]
  double factor = 0.0;    ///< [Pa (s/m3)^exponent], >= 0
  double exponent = 2.0;  ///< [1], >= 1
};

/// rise through points, straight beyond the last one; the first flow is 0.
struct PointCurve {
  MonotoneCubic curve;
};

/// A pump at one speed: curve of the reference speed, speed ratio, and efficiency where it is known.
struct PumpLaw {
  std::variant<PowerCurve, PolynomialCurve, PointCurve> curve;
  double speed_ratio = 1.0;                 ///< running speed / speed of the curve [1], > 0
  std::optional<MonotoneCubic> efficiency;  ///< overall efficiency [1] over flow [m3/s], at the curve's speed
};

/// Curve of a pump that loses in proportion to flow squared.
///
/// \param shutoff          rise at no flow [Pa], > 0
/// \param per_flow_squared loss of rise [Pa s2/m6], >= 0
/// \return power curve with exponent 2 [Pa].
/// \error rounding only.
/// \source common practice, no source
PowerCurve pump_from_shutoff(double shutoff, double per_flow_squared);

/// Curve of a pump from its shut-off rise and its flow at no rise: rise = shutoff (1 - (q/runout)^2).
///
/// \param shutoff rise at no flow [Pa], > 0
/// \param runout  flow at no rise [m3/s], > 0
/// \return power curve with exponent 2 [Pa].
/// \error unknown between the two points; give more points where it matters.
/// \source common practice, no source
PowerCurve pump_from_runout(double shutoff, double runout);

/// Power law H0 - a q^N through three points, N in closed form.
///
/// \param points exactly three: the first at flow 0; flow [m3/s] rising, rise [Pa] falling
/// \return power curve [Pa], or the fault; `exponent_below_one` when N would be under 1 (slope infinite at no flow).
/// \error exact at the points.
/// \source common practice, no source
std::variant<PowerCurve, CurveFault> pump_from_three_points(std::span<const CurvePoint> points);

/// Curve through points, monotone cubic between them.
///
/// \param points two or more; the first at flow 0; flow [m3/s] strictly rising, rise [Pa] strictly falling
/// \return point curve [Pa], or the first fault found.
/// \error exact at the points, between neighbors elsewhere.
/// \source [fritsch_carlson_1980, the monotone region] [fritsch_butland_1984, the slope formula]
std::variant<PointCurve, CurveFault> pump_from_points(std::span<const CurvePoint> points);

/// Pressure rise and slope of a pump.
///
/// Against the flow (q < 0) the curve is turned about its shut-off point, so the rise keeps growing: shutoff +
/// (shutoff - rise(-q)). That keeps the law monotone; a pump with a check valve is never asked there.
/// \param law  curve [Pa] at `speed_ratio`: rise = s2 rise1(q/s)
/// \param flow [m3/s], either sign
/// \return rise [Pa] and slope [Pa s/m3].
/// \pre speed ratio between about 0.5 and 1.2, where the affinity laws are trusted (from memory, not verified).
/// \error of the affinity laws: not known here.
/// \source [tp410, example 7.33] affinity laws.
Rise rise(const PumpLaw& law, double flow);

/// The pump as a loss: minus its rise.
///
/// \param law  curve [Pa]
/// \param flow [m3/s], either sign
/// \return loss [Pa] = -rise, slope [Pa s/m3] >= 0 on a falling curve.
/// \error see `rise`.
/// \source [tp410, example 7.33] affinity laws.
Loss loss(const PumpLaw& law, double flow);

/// First flow at which a pump's rise no longer falls, if there is one.
///
/// \param law          curve [Pa]
/// \param largest_flow end of the range looked at [m3/s], > 0
/// \return flow [m3/s] where the rise first grows, empty when it falls or stays all the way.
/// \error 1e-9 of the range; a hump narrower than 1/1000 of the range may be missed.
/// \source common practice, no source
std::optional<double> first_rise_of(const PumpLaw& law, double largest_flow);

/// Power the pump gives to the liquid.
///
/// \param law  curve [Pa]
/// \param flow [m3/s]
/// \return flow times rise [W].
/// \error rounding only.
/// \source [tp410, example 7.34]
double hydraulic_power(const PumpLaw& law, double flow);

/// Power the pump takes, where its efficiency is known.
///
/// \param law  curve [Pa], efficiency [1] of the same flow/speed
/// \param flow [m3/s]
/// \return hydraulic power over efficiency [W]; empty without an efficiency, or where it is not above 0.
/// \error that of the efficiency points.
/// \source [tp410, example 7.34]
std::optional<double> shaft_power(const PumpLaw& law, double flow);

}  // namespace forecourse::parts
