#include "forecourse/parts/vapor/vent_valve.h"

#include <vector>

namespace forecourse::parts {
namespace {

std::optional<CurveFault> fault_of(std::span<const CurvePoint> points) {
  if (auto fault = fault_of_flows(points)) return fault;
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (points[i].value < points[i - 1].value) return CurveFault{CurveFault::Kind::loss_falls, i};
  }
  return std::nullopt;
}

}  // namespace

std::variant<VentValveSide, CurveFault> vent_valve_side(std::optional<double> opens_at,
                                                        std::span<const CurvePoint> points) {
  VentValveSide side;
  side.opens_at = opens_at.value_or(0.0);
  if (points.empty()) return side;
  std::vector<CurvePoint> all(points.begin(), points.end());
  const bool from_rest = all.front().flow == 0.0;
  if (!opens_at && !from_rest) return CurveFault{CurveFault::Kind::first_flow_not_zero, 0};
  if (!opens_at) side.opens_at = all.front().value;
  if (!from_rest) all.insert(all.begin(), {0.0, side.opens_at});
  if (all.front().value != side.opens_at) return CurveFault{CurveFault::Kind::loss_falls, 0};
  if (auto fault = fault_of(all)) return *fault;
  side.curve.emplace(all);
  return side;
}

Loss loss(const VentValveSide& side, double flow) {
  if (!side.curve) return {side.opens_at, 0.0};
  const CurveValue at = side.curve->at(flow);
  return {at.value, at.slope};
}

}  // namespace forecourse::parts
