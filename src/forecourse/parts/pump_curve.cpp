#include "forecourse/parts/pump_curve.h"

#include <algorithm>
#include <cmath>

namespace forecourse::parts {
namespace {

// Rise and slope of the curve itself, for flows >= 0 at its own speed.
Rise at(const PowerCurve& curve, double flow) {
  if (curve.exponent == 2.0) return {curve.shutoff - curve.factor * flow * flow, -2.0 * curve.factor * flow};
  const double power = std::pow(flow, curve.exponent - 1.0);
  return {curve.shutoff - curve.factor * power * flow, -curve.factor * curve.exponent * power};
}

Rise at(const PolynomialCurve& curve, double flow) {
  const double inside = flow > curve.largest_flow ? curve.largest_flow : flow;
  double value = 0.0, slope = 0.0;
  for (auto c = curve.coefficients.rbegin(); c != curve.coefficients.rend(); ++c) {
    slope = slope * inside + value;
    value = value * inside + *c;
  }
  return {value + slope * (flow - inside), slope};
}

Rise at(const PointCurve& curve, double flow) {
  const CurveValue here = curve.curve.at(flow);
  return {here.value, here.slope};
}

template <class Curve>
Rise both_ways(const Curve& curve, double flow) {
  if (!(flow < 0.0)) return at(curve, flow);
  const Rise mirrored = at(curve, -flow);
  return {2.0 * at(curve, 0.0).pressure_rise - mirrored.pressure_rise, mirrored.slope};
}

std::optional<CurveFault> fault_of_rises(std::span<const CurvePoint> points) {
  if (const auto fault = fault_of_flows(points)) return fault;
  if (points.front().flow != 0.0) return CurveFault{CurveFault::Kind::first_flow_not_zero, 0};
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (!(points[i].value < points[i - 1].value)) return CurveFault{CurveFault::Kind::rise_not_falling, i};
  }
  return {};
}

// Halves [falling, rising] until the flow where the slope turns positive is known to rounding.
double turning_flow(const PumpLaw& law, double falling, double rising) {
  for (int step = 0; step < 60; ++step) {
    const double middle = 0.5 * (falling + rising);
    (rise(law, middle).slope > 0.0 ? rising : falling) = middle;
  }
  return rising;
}

}  // namespace

PowerCurve pump_from_shutoff(double shutoff, double per_flow_squared) {
  return {.shutoff = shutoff, .factor = per_flow_squared, .exponent = 2.0};
}

PowerCurve pump_from_runout(double shutoff, double runout) {
  return {.shutoff = shutoff, .factor = shutoff / (runout * runout), .exponent = 2.0};
}

std::variant<PowerCurve, CurveFault> pump_from_three_points(std::span<const CurvePoint> points) {
  if (points.size() != 3) return CurveFault{CurveFault::Kind::too_few_points, points.size()};
  if (const auto fault = fault_of_rises(points)) return *fault;
  const double shutoff = points[0].value;
  const double drop1 = shutoff - points[1].value, drop2 = shutoff - points[2].value;
  const double exponent = std::log(drop2 / drop1) / std::log(points[2].flow / points[1].flow);
  if (!(exponent >= 1.0)) return CurveFault{CurveFault::Kind::exponent_below_one, 2};
  return PowerCurve{shutoff, drop1 / std::pow(points[1].flow, exponent), exponent};
}

std::variant<PointCurve, CurveFault> pump_from_points(std::span<const CurvePoint> points) {
  if (const auto fault = fault_of_rises(points)) return *fault;
  return PointCurve{MonotoneCubic(points)};
}

Rise rise(const PumpLaw& law, double flow) {
  const double s = law.speed_ratio;
  const Rise one = std::visit([q = flow / s](const auto& curve) { return both_ways(curve, q); }, law.curve);
  return {s * s * one.pressure_rise, s * one.slope};
}

Loss loss(const PumpLaw& law, double flow) {
  const Rise pump = rise(law, flow);
  return {-pump.pressure_rise, -pump.slope};
}

std::optional<double> first_rise_of(const PumpLaw& law, double largest_flow) {
  constexpr int steps = 1000;
  double last = 0.0;
  for (int i = 0; i <= steps; ++i) {
    const double flow = largest_flow * i / steps;
    if (rise(law, flow).slope > 0.0) return turning_flow(law, last, flow);
    last = flow;
  }
  return {};
}

double hydraulic_power(const PumpLaw& law, double flow) { return flow * rise(law, flow).pressure_rise; }

std::optional<double> shaft_power(const PumpLaw& law, double flow) {
  if (!law.efficiency) return {};
  const double efficiency = law.efficiency->at(flow / law.speed_ratio).value;
  if (!(efficiency > 0.0)) return {};
  return hydraulic_power(law, flow) / efficiency;
}

}  // namespace forecourse::parts
