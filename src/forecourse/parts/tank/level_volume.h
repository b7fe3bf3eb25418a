#pragma once

#include <span>
#include <variant>
#include <vector>

namespace forecourse::parts {

/// A level horizontal cylinder with flat heads. See docs/theory/tank-volume.md.
struct LevelCylinder {
  double diameter = 0.0;  ///< inside [m], > 0
  double length = 0.0;    ///< inside [m], > 0
};

/// A tank with upright walls.
struct UprightTank {
  double area = 0.0;    ///< inside, seen from above [m2], > 0
  double height = 0.0;  ///< inside [m], > 0
};

/// One line of a dip chart.
struct DipPoint {
  double depth = 0.0;   ///< [m]
  double volume = 0.0;  ///< [m3]
};

/// A dip chart, straight between its lines; it begins at its first line.
struct DipChart {
  std::vector<DipPoint> points;  ///< rising in both, two at least
};

using TankShape = std::variant<LevelCylinder, UprightTank, DipChart>;

/// Depth of the liquid when the tank is full.
/// \return [m]
/// \error none
/// \source closed form
[[nodiscard]] double full_depth(const TankShape& shape);

/// Volume of liquid that stands to a depth.
/// \param depth [m]; below the bottom 0, above the top that of the full tank
/// \return [m3]
/// \error rounding; of a chart, that of its lines
/// \source closed form: length times the area of a segment of a circle
[[nodiscard]] double volume_at_depth(const TankShape& shape, double depth);

/// Depth at which a volume stands: the inverse.
/// \param volume [m3]
/// \return [m]
/// \error 1e-12 of the full depth
/// \source closed form, inverted by halving
[[nodiscard]] double depth_of_volume(const TankShape& shape, double volume);

}  // namespace forecourse::parts
