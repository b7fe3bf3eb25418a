#pragma once

#include <variant>
#include <vector>

namespace forecourse::parts {

/// How the end of a round tank bulges. `dished` is a crown that is part of a ball, with a knuckle to the shell.
enum class HeadKind { flat, dished, elliptical, hemispherical, conical };

/// The end of a round tank. What is 0 follows from the kind and the diameter: see `head_sizes`.
struct Head {
  HeadKind kind = HeadKind::flat;
  double depth = 0.0;           ///< how far it bulges beyond the joint with the shell [m]
  double dish_radius = 0.0;     ///< of the crown of a dished head [m]
  double knuckle_radius = 0.0;  ///< of the knuckle of a dished head [m]
};

/// A body of revolution: a shell between two heads, its axis in a vertical plane. An upright tank is one with its
/// axis at pi/2. The axis is counted from the joint of shell and low head.
struct RoundTank {
  double diameter = 0.0;  ///< inside [m], > 0
  double length = 0.0;    ///< of the straight shell [m], >= 0
  Head low{};             ///< at the low end
  Head high{};
  double incline = 0.0;  ///< of the axis from the horizontal [rad], 0 to pi/2
};

/// A rectangular tank on its floor, that may lean along and across.
struct BoxTank {
  double length = 0.0;  ///< inside [m], > 0
  double width = 0.0;   ///< inside [m], > 0
  double height = 0.0;  ///< inside [m], > 0
  double pitch = 0.0;   ///< incline of the length from the horizontal [rad], 0 to below pi/2
  double roll = 0.0;    ///< incline of the width [rad], -pi/2 to pi/2
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

using TankShape = std::variant<RoundTank, BoxTank, DipChart>;

/// What stands inside a tank and takes room, evenly between two levels.
struct Displacement {
  double volume = 0.0;  ///< [m3]
  double from = 0.0;    ///< level [m]
  double to = 0.0;      ///< level [m], > from
};

}  // namespace forecourse::parts
