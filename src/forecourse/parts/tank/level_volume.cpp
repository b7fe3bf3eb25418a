#include "forecourse/parts/tank/level_volume.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace forecourse::parts {
namespace {

struct Full {
  double operator()(const LevelCylinder& c) const { return c.diameter; }
  double operator()(const UprightTank& u) const { return u.height; }
  double operator()(const DipChart& chart) const { return chart.points.back().depth; }
};

double chart_volume(const DipChart& chart, double depth) {
  const auto above =
      std::find_if(chart.points.begin(), chart.points.end(), [&](const DipPoint& p) { return p.depth >= depth; });
  if (above == chart.points.end()) return chart.points.back().volume;
  if (above == chart.points.begin()) return depth < above->depth ? 0.0 : above->volume;
  const DipPoint& below = *(above - 1);
  return below.volume + (above->volume - below.volume) * (depth - below.depth) / (above->depth - below.depth);
}

struct Volume {
  double depth;
  double operator()(const LevelCylinder& c) const {
    const double r = 0.5 * c.diameter, h = std::clamp(depth, 0.0, c.diameter);
    return c.length * (r * r * std::acos(std::clamp((r - h) / r, -1.0, 1.0)) -
                       (r - h) * std::sqrt(std::max(0.0, h * (2.0 * r - h))));
  }
  double operator()(const UprightTank& u) const { return u.area * std::clamp(depth, 0.0, u.height); }
  double operator()(const DipChart& chart) const { return chart_volume(chart, depth); }
};

}  // namespace

double full_depth(const TankShape& shape) { return std::visit(Full{}, shape); }

double volume_at_depth(const TankShape& shape, double depth) { return std::visit(Volume{depth}, shape); }

double depth_of_volume(const TankShape& shape, double volume) {
  double low = 0.0, high = full_depth(shape);
  const double close = 1e-13 * high;
  if (volume >= volume_at_depth(shape, high)) return high;
  for (int i = 0; i < 100 && high - low > close; ++i) {
    const double middle = 0.5 * (low + high);
    (volume_at_depth(shape, middle) < volume ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace forecourse::parts
