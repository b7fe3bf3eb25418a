#include "forecourse/parts/escape/closing_law.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace forecourse::parts {
namespace {

// Mean flow, as a share of the full one, while the opening goes evenly from a to b: the integral of
// s / sqrt((1 - r) s2 + r) over s, divided by b - a in a way that holds for a = b and for r = 1.
double mean_flow(double a, double b, double r) {
  const double roots = std::sqrt((1.0 - r) * a * a + r) + std::sqrt((1.0 - r) * b * b + r);
  return roots > 0.0 ? (a + b) / roots : 0.0;
}

std::optional<ClosingFault> fault_of_point(const ClosingPoint& before, const ClosingPoint& p) {
  if (!std::isfinite(p.time) || !std::isfinite(p.open)) return ClosingFault::not_finite;
  if (p.time < 0.0) return ClosingFault::negative_time;
  if (p.time < before.time) return ClosingFault::time_falls;
  if (p.open > before.open || p.open < 0.0) return ClosingFault::opens_again;
  return std::nullopt;
}

std::optional<ClosingFault> fault_of_curve(double stroke, std::span<const StrokePoint> curve) {
  if (!std::isfinite(stroke)) return ClosingFault::not_finite;
  if (stroke < 0.0) return ClosingFault::negative_time;
  if (curve.size() < 2) return ClosingFault::too_few_points;
  if (curve.front().stroke != 0.0 || !(curve.front().flow_coefficient > 0.0)) return ClosingFault::not_from_open;
  const bool inside = std::all_of(curve.begin(), curve.end(), [](const StrokePoint& p) { return p.stroke <= 1.0; });
  if (!inside) return ClosingFault::beyond_stroke;
  return std::nullopt;
}

}  // namespace

ClosingLaw full_flow_for(double time) { return {time, {}}; }

ClosingLaw steady_stroke(double delay, double stroke) {
  if (!(stroke > 0.0)) return full_flow_for(delay);
  return {delay, {{0.0, 1.0}, {stroke, 0.0}}};
}

std::variant<ClosingLaw, ClosingFault> stroke_with_curve(double delay, double stroke,
                                                         std::span<const StrokePoint> curve) {
  if (const auto fault = fault_of_curve(stroke, curve)) return *fault;
  ClosingLaw law{delay, {}};
  for (const StrokePoint& p : curve) {
    law.points.push_back({p.stroke * stroke, p.flow_coefficient / curve.front().flow_coefficient});
  }
  if (const auto fault = fault_of(law)) return *fault;
  return law;
}

std::optional<ClosingFault> fault_of(const ClosingLaw& law) {
  if (!std::isfinite(law.delay)) return ClosingFault::not_finite;
  if (law.delay < 0.0) return ClosingFault::negative_time;
  ClosingPoint before{0.0, 1.0};
  for (const ClosingPoint& p : law.points) {
    if (const auto fault = fault_of_point(before, p)) return fault;
    before = p;
  }
  if (!law.points.empty() && before.open > 0.0) return ClosingFault::stays_open;
  return std::nullopt;
}

double opening(const ClosingLaw& law, double since) {
  const double t = since - law.delay;
  if (t < 0.0) return 1.0;
  if (law.points.empty() || t >= law.points.back().time) return 0.0;
  const auto after =
      std::find_if(law.points.begin(), law.points.end(), [&](const ClosingPoint& p) { return p.time > t; });
  const ClosingPoint before = after == law.points.begin() ? ClosingPoint{0.0, 1.0} : *(after - 1);
  return before.open + (after->open - before.open) * (t - before.time) / (after->time - before.time);
}

double shut_time(const ClosingLaw& law) { return law.delay + (law.points.empty() ? 0.0 : law.points.back().time); }

double equivalent_time(const ClosingLaw& law, double share_of_loss) {
  double sum = law.delay;
  ClosingPoint before{0.0, 1.0};
  for (const ClosingPoint& p : law.points) {
    sum += mean_flow(before.open, p.open, share_of_loss) * (p.time - before.time);
    before = p;
  }
  return sum;
}

double throttled_loss(double open_loss, double open) {
  return open > 0.0 ? open_loss / (open * open) : std::numeric_limits<double>::infinity();
}

}  // namespace forecourse::parts
