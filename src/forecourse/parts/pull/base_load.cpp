#include "forecourse/parts/pull/base_load.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace forecourse::parts {

BaseLoad base_load(double pull, double elevation, const DispenserBase& base) {
  const double horizontal = pull * std::cos(elevation);
  return {.horizontal = horizontal,
          .vertical = pull * std::sin(elevation),
          .moment = horizontal * base.outlet_height - base.weight * base.half_width};
}

double anchor_tension(double moment, double lever) { return std::max(0.0, moment / lever); }

double pull_for_moment(double moment, double elevation, const DispenserBase& base) {
  const double arm = std::cos(elevation) * base.outlet_height;
  const double least = std::numeric_limits<double>::epsilon() * base.outlet_height;  // cos(pi/2) is not quite 0
  if (arm <= least) return std::numeric_limits<double>::infinity();
  return (moment + base.weight * base.half_width) / arm;
}

}  // namespace forecourse::parts
