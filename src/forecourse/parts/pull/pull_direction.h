#pragma once

namespace forecourse::parts {

/// A direction in space.
struct Direction {
  double azimuth = 0.0;    ///< [rad] in plan, from any fixed line, counted one way
  double elevation = 0.0;  ///< [rad] above level, -pi/2 .. pi/2

  friend bool operator==(const Direction&, const Direction&) = default;
};

/// Where a tight hose runs from and to.
struct PullPath {
  double outlet_height = 0.0;  ///< [m] above the ground, where the hose leaves the dispenser
  double nozzle_height = 0.0;  ///< [m] above the ground, at the vehicle
  double reach = 0.0;          ///< [m] between both in plan, > 0
  double azimuth = 0.0;        ///< [rad] in plan, from outlet to nozzle
};

/// Direction in which a tight hose pulls at its outlet.
///
/// \param path heights [m], reach [m] and azimuth [rad]
/// \return direction [rad]; elevation below zero where the vehicle pulls down.
/// \error the sag of a tight hose is left out.
/// \source closed form
Direction pull_direction(const PullPath& path);

/// Angle between two directions.
///
/// \param a, b directions [rad]
/// \return angle [rad], 0 .. pi.
/// \error rounding only, small angles too.
/// \source closed form
double angle_between(const Direction& a, const Direction& b);

}  // namespace forecourse::parts
