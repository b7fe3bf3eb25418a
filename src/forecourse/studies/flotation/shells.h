#pragma once

#include <optional>

#include "forecourse/parts/tank/tank_volume.h"
#include "forecourse/site/tank.h"

namespace forecourse::studies {

/// Outside and inside of a level horizontal cylinder. Its pitch is left out.
struct Shells {
  double diameter = 0.0;    ///< outside [m]
  double length = 0.0;      ///< outside, of the shell without the bulge of its heads [m]
  double head_depth = 0.0;  ///< outside bulge of each head [m]; 0: flat
  double wall = 0.0;        ///< [m]; 0 where the inside diameter is not entered
  parts::TankVolume outside;
  std::optional<parts::TankVolume> inside;  ///< empty: the inside diameter is not entered
};

/// The shells of a tank; empty if it is no horizontal cylinder, or sizes are missing or do not fit together.
[[nodiscard]] std::optional<Shells> shells_of(const site::Tank& tank);

}  // namespace forecourse::studies
