#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "forecourse/network/tanks/tank_inside.h"

namespace forecourse::studies::delivering {

/// A tank as a delivery asks for it: volumes against the level of the liquid, and depths at a place along it.
/// A level is a height above the lowest point of the inside [m].
class TankBody {
 public:
  TankBody() = default;
  explicit TankBody(network::TankInside inside) : inside_(std::move(inside)) {}

  [[nodiscard]] double capacity() const { return inside_->volume.capacity(); }
  [[nodiscard]] double full_level() const { return inside_->volume.full_level(); }
  [[nodiscard]] double volume(double level) const { return inside_->volume.volume(level); }
  [[nodiscard]] double level(double volume) const { return inside_->volume.level(volume); }
  /// \param place along the tank from its low end [m]; empty: at the low end
  [[nodiscard]] double level_at(std::optional<double> place, double depth) const {
    return inside_->volume.level_at(inside_->place(place), depth);
  }
  [[nodiscard]] double depth_at(std::optional<double> place, double level) const {
    return inside_->volume.depth_at(inside_->place(place), level);
  }
  [[nodiscard]] const network::TankInside& inside() const { return *inside_; }

 private:
  std::optional<network::TankInside> inside_;
};

/// The body of a tank; in words what is missing.
[[nodiscard]] std::variant<TankBody, std::string> body_of(const site::Tank& tank);

}  // namespace forecourse::studies::delivering
