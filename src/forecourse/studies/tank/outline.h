#pragma once

#include <vector>

#include "forecourse/network/tanks/tank_inside.h"
#include "forecourse/studies/tank/overfill_routes.h"

namespace forecourse::studies {

/// A place of the inside in its long section.
/// \param x     along the axis, or the floor, from the low end of the room [m]
/// \param above the axis of a round tank, or the floor of a box [m], square to it
[[nodiscard]] TankPoint long_section_point(const network::TankInside& inside, double x, double above);

/// The long section around: bottom from the low end to the high, back along the crown. Empty for a dip chart.
[[nodiscard]] std::vector<TankPoint> long_section(const network::TankInside& inside);

/// Foot and head of a stick.
struct Stick {
  TankPoint foot;
  TankPoint head;
  double length = 0.0;  ///< [m]
};
[[nodiscard]] Stick stick_at(const network::TankInside& inside, double along);

}  // namespace forecourse::studies
