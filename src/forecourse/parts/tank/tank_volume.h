#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/parts/tank/tank_shape.h"

namespace forecourse::parts {

/// Where a stick, a gauge or a device stands in a tank. It is square to the tank's axis (a rectangular tank: to its
/// floor) and passes through the axis; where the axis leans more than 45 degrees it stands along the axis.
struct DipPlace {
  double along = 0.0;  ///< from the joint of shell and low end [m]
  double roll = 0.0;   ///< of the stick about the axis from upright [rad], within pi/2; round tanks only
};

/// Levels between which the surface crosses a stick: below, it stands dry; above, it is covered.
struct StickRange {
  double bottom = 0.0;  ///< level at its foot [m]
  double top = 0.0;     ///< level at its head [m]
};

/// Why there is no such tank; empty if there is one.
/// \param shape [m], [rad]
/// \param fittings [m], [m3]
/// \return [1] in words
/// \error none
/// \source closed form
[[nodiscard]] std::optional<std::string> tank_problem(const TankShape& shape,
                                                      const std::vector<Displacement>& fittings = {});

/// What is made ready for volumes that have no closed form.
enum class Ready {
  table,  ///< a table of the integral, once, some milliseconds: for thousands of volumes
  none,   ///< each volume is the integral itself, some microseconds: for a few
};

/// How much stands in a tank to a level, there and back. Built once; copies share what was built.
///
/// A level is the vertical height of the liquid's surface above the lowest point of the inside; of a dip chart it is
/// its depth. A depth is measured along a stick, from the inside at its foot. See docs/theory/tank-volume.md.
class TankVolume {
 public:
  /// \pre `tank_problem` finds none
  explicit TankVolume(TankShape shape, std::vector<Displacement> fittings = {}, Ready ready = Ready::table);

  /// \return what it holds to the very top [m3]
  /// \error 1e-12 of itself
  /// \source closed form
  [[nodiscard]] double capacity() const;

  /// \return level of the highest point of the inside [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double full_level() const;

  /// \param level [m]; below the bottom 0, above the top the capacity
  /// \return [m3]
  /// \error 1e-11 of the capacity; of a chart, that of its lines
  /// \source closed form: sections square to the axis, summed; see the theory page
  [[nodiscard]] double volume(double level) const;

  /// The inverse.
  /// \param volume [m3]; below 0 the bottom, above the capacity the top
  /// \return [m]
  /// \error 1e-12 of the full level, against `volume`
  /// \source closed form, inverted by Newton's method between bounds
  [[nodiscard]] double level(double volume) const;

  /// \param level [m]
  /// \return surface of the liquid [m2]: change of volume with level
  /// \error 1e-9 of the largest; of a chart, that of its lines
  /// \source closed form
  [[nodiscard]] double surface_area(double level) const;

  /// \param level [m]
  /// \return inside surface that the liquid touches, heads included [m2]; nothing for a chart
  /// \error 1e-9 of the whole
  /// \source closed form
  [[nodiscard]] std::optional<double> wetted_area(double level) const;

  /// Depth on a stick; of a chart the level.
  /// \param place [m], [rad]
  /// \param level [m]
  /// \return [m], at least 0 and at most the stick
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double depth_at(const DipPlace& place, double level) const;

  /// Level of which a stick shows a depth.
  /// \param place [m], [rad]
  /// \param depth [m]
  /// \return [m]; outside 0 to the full level where no liquid reaches the depth
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double level_at(const DipPlace& place, double depth) const;

  /// Where the surface crosses a stick.
  /// \param place [m], [rad]
  /// \return levels [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] StickRange range_of(const DipPlace& place) const;

  /// Volume by the integral itself, not from the table: what the table is made of.
  /// \param level [m]
  /// \return [m3]
  /// \error 1e-12 of the capacity
  /// \source closed form
  [[nodiscard]] double exact_volume(double level) const;

  [[nodiscard]] const TankShape& shape() const;
  [[nodiscard]] const std::vector<Displacement>& fittings() const;

 private:
  struct Inside;
  std::shared_ptr<const Inside> inside_;
};

}  // namespace forecourse::parts
