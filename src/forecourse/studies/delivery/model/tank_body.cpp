#include "forecourse/studies/delivery/model/tank_body.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "forecourse/parts/monotone_cubic.h"

namespace forecourse::studies::delivering {
namespace {

parts::HeadKind kind_of(const std::string& heads) {
  if (heads == "dished") return parts::HeadKind::dished;
  if (heads == "elliptical") return parts::HeadKind::elliptical;
  if (heads == "hemispherical") return parts::HeadKind::hemispherical;
  return heads == "conical" ? parts::HeadKind::conical : parts::HeadKind::flat;
}

double si_or_zero(const site::Maybe<Length>& entered) { return entered ? entered->likely.si() : 0.0; }

parts::Head head_of(const site::TankShape& shape) {
  return {kind_of(shape.heads.text), si_or_zero(shape.head_depth), si_or_zero(shape.dish_radius), 0.0};
}

std::optional<parts::TankShape> shape_of(const site::TankShape& shape) {
  const double incline = shape.pitch ? std::atan(shape.pitch->likely.si()) : 0.0;
  if (shape.kind.text == "horizontal-cylinder" && shape.inside_diameter && shape.length) {
    return parts::RoundTank{shape.inside_diameter->likely.si(), shape.length->likely.si(), head_of(shape),
                            head_of(shape), incline};
  }
  if (shape.kind.text == "vertical-cylinder" && shape.inside_diameter && shape.height) {
    return parts::RoundTank{.diameter = shape.inside_diameter->likely.si(),
                            .length = shape.height->likely.si(),
                            .incline = 0.5 * std::numbers::pi};
  }
  if (shape.kind.text == "rectangular" && shape.length && shape.width && shape.height) {
    return parts::BoxTank{.length = shape.length->likely.si(),
                          .width = shape.width->likely.si(),
                          .height = shape.height->likely.si(),
                          .pitch = incline};
  }
  return std::nullopt;
}

}  // namespace

std::variant<TankBody, std::string> body_of(const site::Tank& tank) {
  const std::string name = "tank '" + tank.id.text + "'";
  if (!tank.chart.empty()) {
    parts::DipChart chart;
    for (const site::ChartPoint& p : tank.chart) chart.points.push_back({p.depth.si(), p.volume.si()});
    return TankBody(parts::TankVolume(chart), 0.0);
  }
  if (!tank.compartments.empty()) return name + " is divided by inner heads: enter the chart of its compartment";
  const auto shape = tank.shape ? shape_of(*tank.shape) : std::nullopt;
  if (!shape) return "the shape of " + name + " is not entered with its sizes, nor a chart";
  if (const auto why = parts::tank_problem(*shape)) return name + ": " + *why;
  const bool upright = tank.shape->kind.text == "vertical-cylinder";
  return TankBody(parts::TankVolume(*shape), upright ? 0.0 : si_or_zero(tank.shape->length));
}

LevelCurve::LevelCurve(const TankBody& body) {
  constexpr int count = 192;
  std::vector<parts::CurvePoint> points;
  for (int k = 0; k <= count; ++k) {
    const double share = 0.5 * (1.0 - std::cos(std::numbers::pi * k / count));
    const double level = share * body.full_level();
    points.push_back({level, body.volume(level)});
  }
  const parts::MonotoneCubic curve(points);
  for (const parts::CurvePoint& point : points) {
    level_.push_back(point.flow);
    volume_.push_back(point.value);
    slope_.push_back(curve.at(point.flow).slope);
  }
}

double LevelCurve::level(double volume) const {
  if (!(volume > volume_.front())) return level_.front();
  if (volume >= volume_.back()) return level_.back();
  const auto right =
      static_cast<std::size_t>(std::upper_bound(volume_.begin(), volume_.end(), volume) - volume_.begin());
  const std::size_t left = right - 1;
  const double width = level_[right] - level_[left], rise = volume_[right] - volume_[left];
  const double u = slope_[left] * width, w = slope_[right] * width;
  const double cubic = u + w - 2.0 * rise, square = 3.0 * rise - 2.0 * u - w;
  const double wanted = volume - volume_[left];
  double low = 0.0, high = 1.0, t = wanted / rise;
  for (int step = 0; step < 60; ++step) {
    const double miss = t * (u + t * (square + t * cubic)) - wanted;
    if (std::abs(miss) <= 1e-15 * volume_.back()) break;
    (miss > 0.0 ? high : low) = t;
    const double slope = u + t * (2.0 * square + 3.0 * t * cubic);
    double next = t - miss / slope;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    t = next;
  }
  return level_[left] + t * width;
}

}  // namespace forecourse::studies::delivering
