#pragma once

#include <vector>

#include "forecourse/parts/tank/tank_volume.h"

namespace forecourse::parts {

/// Level against volume of a tank, read fast: the inverse of a smooth curve through volumes at levels that lie closer
/// at both ends.
class LevelCurve {
 public:
  LevelCurve() = default;
  explicit LevelCurve(const TankVolume& tank);

  /// \param volume [m3]; below 0 the bottom, above the capacity the top
  /// \return level [m]
  /// \error 1e-5 of the full level
  /// \source closed form of a cubic through volumes of the tank
  [[nodiscard]] double level(double volume) const;

 private:
  std::vector<double> level_, volume_, slope_;
};

}  // namespace forecourse::parts
