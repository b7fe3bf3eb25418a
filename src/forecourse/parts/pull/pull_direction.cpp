#include "forecourse/parts/pull/pull_direction.h"

#include <cmath>

namespace forecourse::parts {

Direction pull_direction(const PullPath& path) {
  return {.azimuth = path.azimuth, .elevation = std::atan2(path.nozzle_height - path.outlet_height, path.reach)};
}

double angle_between(const Direction& a, const Direction& b) {
  // Haversine form: it keeps its digits for small angles.
  const double up = std::sin(0.5 * (a.elevation - b.elevation));
  const double around = std::sin(0.5 * (a.azimuth - b.azimuth));
  const double half = up * up + std::cos(a.elevation) * std::cos(b.elevation) * around * around;
  return 2.0 * std::atan2(std::sqrt(half), std::sqrt(std::fmax(0.0, 1.0 - half)));
}

}  // namespace forecourse::parts
