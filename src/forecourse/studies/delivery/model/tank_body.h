#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "forecourse/parts/tank/tank_volume.h"
#include "forecourse/site/tank.h"

namespace forecourse::studies::delivering {

/// A tank as a delivery asks for it: volumes against the level of the liquid, and depths at a place along it.
/// A level is a height above the lowest point of the inside [m].
class TankBody {
 public:
  TankBody() = default;
  /// \param length of the shell, whose middle stands in for a place that is not entered [m]
  TankBody(parts::TankVolume inside, double length) : inside_(std::move(inside)), length_(length) {}

  [[nodiscard]] double capacity() const { return inside_->capacity(); }
  [[nodiscard]] double full_level() const { return inside_->full_level(); }
  [[nodiscard]] double volume(double level) const { return inside_->volume(level); }
  [[nodiscard]] double level(double volume) const { return inside_->level(volume); }
  /// \param place along the tank from its low end [m]; empty: the middle
  [[nodiscard]] double level_at(std::optional<double> place, double depth) const {
    return inside_->level_at({place.value_or(0.5 * length_)}, depth);
  }
  [[nodiscard]] double depth_at(std::optional<double> place, double level) const {
    return inside_->depth_at({place.value_or(0.5 * length_)}, level);
  }

 private:
  std::optional<parts::TankVolume> inside_;
  double length_ = 0.0;
};

/// The body of a tank; in words what is missing.
[[nodiscard]] std::variant<TankBody, std::string> body_of(const site::Tank& tank);

/// Level against volume of a body, read fast: the inverse of a smooth curve through volumes at levels that lie closer
/// at both ends.
/// \error 1e-5 of the full level
class LevelCurve {
 public:
  LevelCurve() = default;
  explicit LevelCurve(const TankBody& body);
  [[nodiscard]] double level(double volume) const;

 private:
  std::vector<double> level_, volume_, slope_;
};

}  // namespace forecourse::studies::delivering
