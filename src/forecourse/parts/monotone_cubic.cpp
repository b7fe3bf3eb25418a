#include "forecourse/parts/monotone_cubic.h"

#include <algorithm>
#include <cmath>

namespace forecourse::parts {
namespace {

using Points = std::span<const CurvePoint>;

// Width of interval i and the slope of the chord across it.
double width(Points p, std::size_t i) { return p[i + 1].flow - p[i].flow; }
double chord(Points p, std::size_t i) { return (p[i + 1].value - p[i].value) / width(p, i); }

// Slope at an inner point: a weighted harmonic mean of the chords, 0 at a peak or a flat.
// SOURCE: [fritsch_butland_1984, the weighted harmonic mean]
double inner_slope(Points p, std::size_t i) {
  const double before = chord(p, i - 1), after = chord(p, i);
  if (before * after <= 0.0) return 0.0;
  const double w1 = 2.0 * width(p, i) + width(p, i - 1);
  const double w2 = width(p, i) + 2.0 * width(p, i - 1);
  return (w1 + w2) / (w1 / before + w2 / after);
}

// Slope at an end: that of the parabola through three points, kept in the monotone region.
// SOURCE: [fritsch_carlson_1980, slope between 0 and 3 chords]
double end_slope(double near_width, double near_chord, double next_width, double next_chord) {
  const double parabola =
      ((2.0 * near_width + next_width) * near_chord - near_width * next_chord) / (near_width + next_width);
  if (parabola * near_chord <= 0.0) return 0.0;
  return std::abs(parabola) > 3.0 * std::abs(near_chord) ? 3.0 * near_chord : parabola;
}

double first_slope(Points p) {
  return p.size() == 2 ? chord(p, 0) : end_slope(width(p, 0), chord(p, 0), width(p, 1), chord(p, 1));
}

// The last slope also carries the straight line beyond the points: never flatter than half the last chord.
double last_slope(Points p) {
  if (p.size() == 2) return chord(p, 0);
  const std::size_t i = p.size() - 2;
  const double slope = end_slope(width(p, i), chord(p, i), width(p, i - 1), chord(p, i - 1));
  const double flattest = 0.5 * chord(p, i);
  return std::abs(slope) < std::abs(flattest) ? flattest : slope;
}

bool is_finite(const CurvePoint& point) { return std::isfinite(point.flow) && std::isfinite(point.value); }

}  // namespace

std::string_view text(CurveFault::Kind kind) {
  switch (kind) {
    case CurveFault::Kind::too_few_points:
      return "too few points";
    case CurveFault::Kind::not_finite:
      return "a value is not a finite number";
    case CurveFault::Kind::negative_flow:
      return "flow is negative";
    case CurveFault::Kind::flow_not_rising:
      return "flow does not rise from point to point";
    case CurveFault::Kind::first_flow_not_zero:
      return "the first point is not at zero flow";
    case CurveFault::Kind::loss_at_no_flow:
      return "loss at zero flow is not zero";
    case CurveFault::Kind::loss_falls:
      return "loss falls while flow rises";
    case CurveFault::Kind::rise_not_falling:
      return "pressure rise does not fall while flow rises";
    case CurveFault::Kind::exponent_below_one:
      return "the power through the three points is below one";
  }
  return "";
}

MonotoneCubic::MonotoneCubic(std::span<const CurvePoint> points) {
  knots_.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double slope = i == 0                   ? first_slope(points)
                         : i + 1 == points.size() ? last_slope(points)
                                                  : inner_slope(points, i);
    knots_.push_back({points[i].flow, points[i].value, slope});
  }
}

CurveValue MonotoneCubic::at(double flow) const {
  const auto straight = [flow](const Knot& k) { return CurveValue{k.value + k.slope * (flow - k.flow), k.slope}; };
  if (flow <= first_flow()) return straight(knots_.front());
  if (flow >= last_flow()) return straight(knots_.back());
  const auto right =
      std::upper_bound(knots_.begin(), knots_.end(), flow, [](double q, const Knot& k) { return q < k.flow; });
  if (right == knots_.end()) return {flow, flow};  // only a NaN gets here
  const Knot &a = *(right - 1), &b = *right;
  const double h = b.flow - a.flow, t = (flow - a.flow) / h, rise = b.value - a.value;
  const double k2 = 3.0 * rise - h * (2.0 * a.slope + b.slope), k3 = h * (a.slope + b.slope) - 2.0 * rise;
  return {a.value + t * (h * a.slope + t * (k2 + t * k3)), a.slope + t * (2.0 * k2 + t * 3.0 * k3) / h};
}

std::optional<CurveFault> fault_of_flows(std::span<const CurvePoint> points) {
  using Kind = CurveFault::Kind;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!is_finite(points[i])) return CurveFault{Kind::not_finite, i};
    if (points[i].flow < 0.0) return CurveFault{Kind::negative_flow, i};
    if (i > 0 && points[i].flow <= points[i - 1].flow) return CurveFault{Kind::flow_not_rising, i};
  }
  if (points.size() < 2) return CurveFault{Kind::too_few_points, points.size()};
  return {};
}

}  // namespace forecourse::parts
