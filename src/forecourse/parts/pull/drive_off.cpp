#include "forecourse/parts/pull/drive_off.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace forecourse::parts {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

}  // namespace

VehicleMotion after_travel(double speed, double acceleration, double travel) {
  if (travel <= 0.0) return {.time = 0.0, .speed = speed};
  const double square = speed * speed + 2.0 * acceleration * travel;
  if (!(square > 0.0)) return {.time = never, .speed = 0.0};
  const double end = std::sqrt(square);
  return {.time = 2.0 * travel / (speed + end), .speed = end};
}

double stiffness_in_series(double hose, std::optional<double> whip) {
  return whip ? hose * *whip / (hose + *whip) : hose;
}

double tension(double stiffness, double travel) { return stiffness * std::max(0.0, travel); }

PullEnd pull_until(const VehicleMotion& tight, double acceleration, double stiffness, double gives_at,
                   double opening_time) {
  const double stretch = gives_at / stiffness;
  const VehicleMotion at = after_travel(tight.speed, acceleration, stretch);
  if (!std::isfinite(stretch) || !std::isfinite(at.time)) return {.pull = never, .time = never, .travel = never};
  const double further = at.speed * opening_time + 0.5 * acceleration * opening_time * opening_time;
  return {.pull = gives_at + tension(stiffness, further),
          .time = tight.time + at.time + opening_time,
          .travel = stretch + std::max(0.0, further)};
}

}  // namespace forecourse::parts
