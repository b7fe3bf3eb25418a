#include "forecourse/parts/escape/draining.h"

#include <cmath>

#include "forecourse/base/constants.h"

namespace forecourse::parts {
namespace {

// Flow per root of the level.
double flow_per_root(const Orifice& opening) {
  return opening.discharge_coefficient * opening.area * std::sqrt(2.0 * standard_gravity);
}

}  // namespace

double draining_time_upright(double surface, const Orifice& opening, LevelFall levels) {
  return 2.0 * surface * (std::sqrt(levels.from) - std::sqrt(levels.to)) / flow_per_root(opening);
}

// The chord at level h is 2 sqrt(h (D - h)); over sqrt(h) it leaves 2 L sqrt(D - h) dh.
double draining_time_lying(const LyingCylinder& tank, const Orifice& opening, LevelFall levels) {
  const double rise = std::pow(tank.diameter - levels.to, 1.5) - std::pow(tank.diameter - levels.from, 1.5);
  return 4.0 / 3.0 * tank.length * rise / flow_per_root(opening);
}

}  // namespace forecourse::parts
