#include "forecourse/network/pump_laws.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace forecourse::network {
namespace {

using Made = std::variant<parts::PumpLaw, std::string>;

std::vector<parts::CurvePoint> as_points(const site::PumpCurve& curve) {
  std::vector<parts::CurvePoint> points;
  for (const site::RisePoint& p : curve.points) points.push_back({p.flow.si(), p.rise.si()});
  return points;
}

template <class Curve>
Made from(std::variant<Curve, parts::CurveFault> made, double speed_ratio) {
  if (const auto* fault = std::get_if<parts::CurveFault>(&made)) return std::string(parts::text(fault->kind));
  return parts::PumpLaw{std::get<Curve>(std::move(made)), speed_ratio, {}};
}

/// Beyond the flow of no rise a polynomial may turn up again: it goes on straight from there.
double no_rise_flow(const std::vector<double>& coefficients) {
  const parts::PumpLaw law{parts::PolynomialCurve{coefficients, INFINITY}, 1.0, {}};
  double high = 1e-3;
  while (parts::rise(law, high).pressure_rise > 0.0 && high < 1.0) high *= 2.0;
  double low = 0.0;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (parts::rise(law, middle).pressure_rise > 0.0 ? low : high) = middle;
  }
  return high;
}

Made from_coefficients(const site::PumpCurve& curve, double speed_ratio) {
  std::vector<double> coefficients;
  for (const auto& c : curve.coefficients) coefficients.push_back(c.likely);
  const double largest = no_rise_flow(coefficients);
  parts::PumpLaw law{parts::PolynomialCurve{coefficients, largest}, speed_ratio, {}};
  if (const auto rises = parts::first_rise_of(law, largest)) return "it rises with flow";
  return law;
}

}  // namespace

Made pump_law(const site::PumpCurve& curve, double speed_ratio) {
  if (!curve.points.empty()) {
    const std::vector<parts::CurvePoint> points = as_points(curve);
    return curve.fit == site::CurveFit::power ? from(parts::pump_from_three_points(points), speed_ratio)
                                              : from(parts::pump_from_points(points), speed_ratio);
  }
  if (!curve.coefficients.empty()) return from_coefficients(curve, speed_ratio);
  if (curve.shutoff && curve.per_flow_squared) {
    return parts::PumpLaw{
        parts::pump_from_shutoff(curve.shutoff->likely.si(), curve.per_flow_squared->likely.si()), speed_ratio, {}};
  }
  if (curve.shutoff && curve.run_out) {
    return parts::PumpLaw{
        parts::pump_from_runout(curve.shutoff->likely.si(), curve.run_out->likely.si()), speed_ratio, {}};
  }
  return "it needs points, coefficients, shutoff with per_flow_squared, or shutoff with run_out";
}

}  // namespace forecourse::network
