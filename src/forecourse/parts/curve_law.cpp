#include "forecourse/parts/curve_law.h"

#include <cmath>
#include <optional>
#include <vector>

namespace forecourse::parts {
namespace {

std::optional<CurveFault> fault_of_losses(std::span<const CurvePoint> points) {
  if (points.front().value != 0.0) return CurveFault{CurveFault::Kind::loss_at_no_flow, 0};
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (points[i].value < points[i - 1].value) return CurveFault{CurveFault::Kind::loss_falls, i};
  }
  return {};
}

std::variant<CurveLaw, CurveFault> through_zero(std::span<const CurvePoint> points) {
  if (const auto fault = fault_of_flows(points)) return *fault;
  if (const auto fault = fault_of_losses(points)) return *fault;
  return CurveLaw{MonotoneCubic(points)};
}

}  // namespace

std::variant<CurveLaw, CurveFault> curve_law(std::span<const CurvePoint> points) {
  if (points.empty()) return CurveFault{CurveFault::Kind::too_few_points, 0};
  if (!(points.front().flow > 0.0)) return through_zero(points);
  std::vector<CurvePoint> with_zero{{0.0, 0.0}};
  with_zero.insert(with_zero.end(), points.begin(), points.end());
  auto made = through_zero(with_zero);
  if (auto* fault = std::get_if<CurveFault>(&made)) fault->point -= 1;  // count the user's points, not ours
  return made;
}

Loss loss(const CurveLaw& law, double flow) {
  const CurveValue here = law.curve.at(std::abs(flow));
  return {std::copysign(1.0, flow) * here.value, here.slope};
}

}  // namespace forecourse::parts
