#pragma once

#include <vector>

#include "forecourse/parts/tank/profile.h"

namespace forecourse::parts {

/// The inside of a round tank as its sections square to the axis: circles cut by the surface of the liquid.
/// Levels are vertical heights above the lowest point of the inside. See docs/theory/tank-volume.md.
class RoundBody {
 public:
  /// \pre diameter above 0, heads that fit (`head_sizes`), incline 0 to pi/2
  explicit RoundBody(const RoundTank& tank);

  /// Level of the highest point.
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double full_level() const { return highest_ - lowest_; }

  /// Whole inside.
  /// \return [m3]
  /// \error 1e-13 of itself
  /// \source closed form
  [[nodiscard]] double capacity() const { return capacity_; }

  /// Volume to a level, by quadrature of the sections between all kinks.
  /// \param level [m]
  /// \return [m3]
  /// \error 1e-12 of the capacity
  /// \source closed form: the area of a segment of a circle, summed along the axis
  [[nodiscard]] double volume(double level) const;

  /// Surface of the liquid: the change of volume with level.
  /// \param level [m]
  /// \return [m2]
  /// \error 1e-10 of the largest
  /// \source closed form: the chord of a circle, summed along the axis
  [[nodiscard]] double surface_area(double level) const;

  /// Inside surface that the liquid touches, flat heads included.
  /// \param level [m]
  /// \return [m2]
  /// \error 1e-10 of the whole
  /// \source closed form: the arc of a circle, summed along the outline
  [[nodiscard]] double wetted_area(double level) const;

  /// Levels at which the surface passes a joint of the outline, its lowest and its highest point.
  /// \return [m], rising
  /// \error rounding
  /// \source closed form
  [[nodiscard]] std::vector<double> kinks() const;

  /// Inside radius at a place along the axis.
  /// \param x [m]; beyond the ends that of the end
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double radius(double x) const;

  /// How far the surface lies above the axis at a place, square to the axis.
  /// \param x [m]
  /// \param level [m]
  /// \return [m]; of an upright tank, infinite below and above the surface
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double surface_above_axis(double x, double level) const;

  /// The level at which the surface lies so far above the axis at a place.
  /// \param x [m]
  /// \param above [m]
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double level_at(double x, double above) const { return x * sine_ + above * cosine_ - lowest_; }

  /// Where the surface meets the axis.
  /// \param level [m]
  /// \return along the axis [m]
  /// \pre the axis is not level
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double axis_at(double level) const { return (level + lowest_) / sine_; }

  /// Whether the axis leans more than 45 degrees.
  /// \return [1]
  /// \error none
  /// \source closed form
  [[nodiscard]] bool steep() const { return sine_ > cosine_; }

  /// Where the inside begins and ends along the axis.
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double begin() const { return begin_of(pieces_.front()); }
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double end() const { return end_of(pieces_.back()); }

  /// The pieces of the outline.
  /// \return [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] const std::vector<ProfilePiece>& pieces() const { return pieces_; }

  /// Whether the axis is taken as upright: sections are then full or empty.
  /// \return [1]
  /// \error none
  /// \source closed form
  [[nodiscard]] bool upright() const { return cosine_ == 0.0; }

 private:
  template <class Section>
  double sum(double level, double close, const Section& section) const;
  template <class Section>
  double sum_of_piece(const ProfilePiece& piece, double level, double close, const Section& section) const;
  [[nodiscard]] double end_faces(double level) const;

  std::vector<ProfilePiece> pieces_;
  double sine_ = 0.0;
  double cosine_ = 1.0;
  double lowest_ = 0.0;   ///< above the axis at x = 0
  double highest_ = 0.0;  ///< above the axis at x = 0
  double capacity_ = 0.0;
};

}  // namespace forecourse::parts
