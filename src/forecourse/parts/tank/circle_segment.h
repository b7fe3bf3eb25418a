#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

namespace forecourse::parts {

/// Half the angle under which the chord of a filled circle is seen from its center.
/// \param radius [m], > 0
/// \param above how far the surface lies above the center [m]; beyond the circle it is empty or full
/// \return [rad], 0 to pi
/// \error rounding
/// \source closed form
[[nodiscard]] inline double filled_half_angle(double radius, double above) {
  const double share = std::clamp(0.5 * (radius + above) / radius, 0.0, 1.0);
  return 2.0 * std::asin(std::sqrt(share));
}

/// Area of a circle below a chord.
/// \param radius [m], > 0
/// \param half_angle of the chord [rad], 0 to pi
/// \param sine of the whole angle [1], where it is known
/// \return [m2]
/// \error rounding, also of a thin segment
/// \source closed form
[[nodiscard]] inline double segment_of_angle(double radius, double half_angle, double sine) {
  const double angle = 2.0 * half_angle;
  const double square = angle * angle;
  const double beyond =
      angle < 0.05 ? angle * square / 6.0 * (1.0 - square / 20.0 * (1.0 - square / 42.0)) : angle - sine;
  return 0.5 * radius * radius * beyond;
}
[[nodiscard]] inline double segment_of_angle(double radius, double half_angle) {
  return segment_of_angle(radius, half_angle, std::sin(2.0 * half_angle));
}

/// The same from how far the surface lies above the center.
/// \param radius [m], >= 0
/// \param above [m]
/// \return [m2]
/// \error rounding
/// \source closed form
[[nodiscard]] inline double segment_area(double radius, double above) {
  if (above <= -radius) return 0.0;
  if (above >= radius) return std::numbers::pi * radius * radius;
  const double share = std::clamp(0.5 * (radius + above) / radius, 0.0, 1.0);
  const double half_chord = std::sqrt(share * (1.0 - share));  // of the radius, twice
  return segment_of_angle(radius, 2.0 * std::asin(std::sqrt(share)), 4.0 * half_chord * (1.0 - 2.0 * share));
}

/// Width of a circle's chord.
/// \param radius [m], >= 0
/// \param above how far the chord lies above the center [m]
/// \return [m]; 0 outside the circle
/// \error rounding
/// \source closed form
[[nodiscard]] inline double chord_width(double radius, double above) {
  return 2.0 * std::sqrt(std::max(0.0, (radius - above) * (radius + above)));
}

}  // namespace forecourse::parts
