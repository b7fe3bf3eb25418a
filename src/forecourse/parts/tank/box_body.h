#pragma once

#include "forecourse/parts/tank/tank_shape.h"

namespace forecourse::parts {

/// The inside of a rectangular tank that leans along and across. Levels are vertical heights above its lowest corner.
class BoxBody {
 public:
  /// \pre sizes above 0, pitch from 0 to below pi/2, roll within pi/2
  explicit BoxBody(const BoxTank& tank);

  /// Level of the highest corner.
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double full_level() const;

  /// Volume to a level.
  /// \param level [m]
  /// \return [m3]
  /// \error rounding: the section's area is of second degree between kinks, and so summed exactly
  /// \source closed form
  [[nodiscard]] double volume(double level) const;

  /// Surface of the liquid.
  /// \param level [m]
  /// \return [m2]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double surface_area(double level) const;

  /// Inside surface that the liquid touches.
  /// \param level [m]
  /// \return [m2]
  /// \error 1e-9 of the whole
  /// \source closed form: the six sides
  [[nodiscard]] double wetted_area(double level) const;

  /// Depth along a stick that stands square to the floor, at the middle of the width; below 0 it stands dry.
  /// \param x along the floor from the low end [m]
  /// \param level [m]
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double depth_at(double x, double level) const;

  /// The inverse.
  /// \param x [m]
  /// \param depth [m]
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double level_at(double x, double depth) const;

  /// The sizes.
  /// \return [m], [rad]
  /// \error none
  /// \source closed form
  [[nodiscard]] const BoxTank& tank() const { return tank_; }

 private:
  template <class Section>
  double sum(double level, const Section& section) const;
  [[nodiscard]] double section_area(double deep) const;
  [[nodiscard]] double section_width(double deep) const;

  BoxTank tank_;
  double sine_ = 0.0, cosine_ = 1.0;               ///< of the pitch
  double roll_sine_ = 0.0, roll_cosine_ = 1.0;     ///< of the roll, both at least 0
  double first_ = 0.0, second_ = 0.0, top_ = 0.0;  ///< heights of a section's corners above its lowest [m]
  double chord_ = 0.0;                             ///< widest line across a section [m]
};

}  // namespace forecourse::parts
