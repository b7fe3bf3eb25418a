#pragma once

#include "forecourse/report/drawing/section.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::drawing {

/// Where things stand across the section, in pixels. Only the line is to length.
namespace across {
inline constexpr double left = 40.0;
inline constexpr double right = svg::wide - 1.0;
inline constexpr double cell = (right - left) / 11.0;
inline constexpr double tanker = 88.0;
inline constexpr double fill = 182.0;
inline constexpr double tank_left = 160.0;
inline constexpr double tank_right = 318.0;
inline constexpr double pump = 294.0;
inline constexpr double vent = 338.0;
inline constexpr double line_left = 346.0;
inline constexpr double line_right = 536.0;
inline constexpr double sump_left = 544.0;
inline constexpr double sump_right = 622.0;
inline constexpr double riser = 574.0;
inline constexpr double housing_left = 556.0;
inline constexpr double housing_right = 618.0;
inline constexpr double nozzle = 776.0;
inline constexpr double vehicle_right = 902.0;
}  // namespace across

/// Turns heights and lengths of one section into places of its drawing.
class Frame {
 public:
  explicit Frame(const Section& section);

  [[nodiscard]] double y(double elevation) const { return sky + (top_ - elevation) * scale_; }
  [[nodiscard]] double x(double along) const {
    return across::line_left + along / length_ * (across::line_right - across::line_left);
  }
  [[nodiscard]] double pixels(double meters) const { return meters * scale_; }
  [[nodiscard]] double ground() const { return y(0.0); }
  [[nodiscard]] double foot() const { return y(bottom_); }        ///< lower edge of the soil
  [[nodiscard]] double band() const { return foot() + 24.0; }     ///< upper edge of the band
  [[nodiscard]] double height() const { return band() + 112.0; }  ///< of the whole drawing
  /// Middle of a stop's cell, counted from 0.
  [[nodiscard]] static double cell(std::size_t stop) {
    return across::left + across::cell * (static_cast<double>(stop) + 0.5);
  }

 private:
  static constexpr double sky = 54.0;  ///< above it stand the dimensions

  double top_;
  double bottom_;
  double scale_;
  double length_;
};

}  // namespace forecourse::report::drawing
