#pragma once

#include <optional>

#include "forecourse/parts/tank/tank_shape.h"

namespace forecourse::parts {

/// A level round tank whose volume is known in closed form: heads flat, elliptical, hemispherical or conical.
class LevelRound {
 public:
  /// \param tank [m], [rad], its heads fit
  /// \return [m]; nothing for one that is pitched or has a dished head
  /// \error none
  /// \source closed form
  [[nodiscard]] static std::optional<LevelRound> of(const RoundTank& tank);

  /// \param level above the bottom [m]
  /// \return [m3]
  /// \error rounding
  /// \source closed form: length times segment; cap of an ellipsoid; segments of a cone, summed
  [[nodiscard]] double volume(double level) const;

  /// The inverse.
  /// \param volume [m3]
  /// \return [m]
  /// \error rounding
  /// \source closed form: Newton's method on the angle of the chord, kept between bounds
  [[nodiscard]] double level(double volume) const;

  /// \param level [m]
  /// \return surface of the liquid [m2]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double surface_area(double level) const;

  /// \return inside diameter [m]
  /// \error none
  /// \source closed form
  [[nodiscard]] double full_level() const { return 2.0 * radius_; }

 private:
  [[nodiscard]] double cone_volume(double half_angle) const;

  double radius_ = 0.0;
  double length_ = 0.0;
  double elliptical_ = 0.0;  ///< depth of both elliptical heads [m]
  double conical_ = 0.0;     ///< depth of both conical heads [m]
};

}  // namespace forecourse::parts
