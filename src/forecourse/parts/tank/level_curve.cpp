#include "forecourse/parts/tank/level_curve.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/parts/monotone_cubic.h"

namespace forecourse::parts {

LevelCurve::LevelCurve(const TankVolume& tank) {
  constexpr int count = 192;
  std::vector<CurvePoint> points;
  for (int k = 0; k <= count; ++k) {
    const double share = 0.5 * (1.0 - std::cos(std::numbers::pi * k / count));
    const double level = share * tank.full_level();
    points.push_back({level, tank.volume(level)});
  }
  const MonotoneCubic curve(points);
  for (const CurvePoint& point : points) {
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

}  // namespace forecourse::parts
