#include "forecourse/parts/pull/breakaway.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace forecourse::parts {

double needed_length(double bend_radius, double angle) { return bend_radius * angle; }

AngleRange misalignment(double outlet_to_pull, const std::optional<WhipHose>& whip) {
  if (!whip) return {outlet_to_pull, outlet_to_pull, outlet_to_pull};
  const double residual = std::min(whip->residual_angle, outlet_to_pull);
  if (whip->needed_length && whip->free_length >= *whip->needed_length) return {0.0, residual, residual};
  return {0.0, outlet_to_pull, outlet_to_pull};
}

double separation_pull(double separation_force, double angle, double friction) {
  const double share = std::cos(angle) - friction * std::sin(angle);
  return share > 0.0 ? separation_force / share : std::numeric_limits<double>::infinity();
}

PullRange separation_pull(const PullRange& separation_force, const AngleRange& angle, double friction) {
  return {.low = separation_pull(separation_force.low, angle.low, friction),
          .likely = separation_pull(separation_force.likely, angle.likely, friction),
          .high = separation_pull(separation_force.high, angle.high, friction)};
}

}  // namespace forecourse::parts
