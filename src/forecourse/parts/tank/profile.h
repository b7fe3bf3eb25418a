#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "forecourse/parts/tank/tank_shape.h"

namespace forecourse::parts {

/// A stretch of a round tank whose radius changes evenly: the shell, or a cone.
struct ConePiece {
  double from = 0.0;  ///< along the axis [m]
  double to = 0.0;
  double radius_from = 0.0;  ///< [m]
  double radius_to = 0.0;
};

/// A stretch whose outline is part of an ellipse: offset + height sqrt(1 - ((x - center) / reach)^2).
struct ArcPiece {
  double from = 0.0;  ///< along the axis [m]
  double to = 0.0;
  double center = 0.0;  ///< along the axis [m]
  double reach = 0.0;   ///< half axis along [m], > 0
  double height = 0.0;  ///< half axis across [m], > 0
  double offset = 0.0;  ///< of the ellipse's center from the axis [m]; of a knuckle
};

using ProfilePiece = std::variant<ConePiece, ArcPiece>;

/// A head with every size known.
/// \param head [m] what was entered; what is 0 follows: elliptical a depth of a quarter of the diameter, hemispherical
/// half
///   of it; dished from a crown of radius 1 diameter and a knuckle of 0.06 diameters, but where a depth is entered and
///   no knuckle, the depth with the crown's radius, and where no radius either, a crown without a knuckle
/// \param diameter of the shell [m]
/// \return the head with its depth and radii [m]; in words why there is no such head
/// \error rounding
/// \source common practice, no source: the default sizes; closed form: their geometry
[[nodiscard]] std::variant<Head, std::string> head_sizes(const Head& head, double diameter);

/// The outline of a round tank from its low end to its high end.
/// \param tank [m], its heads fit its diameter
/// \return the pieces [m], in order, each beginning where the last ends
/// \error rounding
/// \source closed form
[[nodiscard]] std::vector<ProfilePiece> profile_of(const RoundTank& tank);

/// Inside radius of a piece.
/// \param piece [m]
/// \param x along the axis [m], within the piece
/// \return [m], >= 0
/// \error rounding
/// \source closed form
[[nodiscard]] double radius_at(const ProfilePiece& piece, double x);

/// Length of the outline per length of the axis, times the radius: what a wetted area is summed of.
/// \param piece [m]
/// \param x along the axis [m], within the piece
/// \return [m]
/// \error rounding
/// \source closed form
[[nodiscard]] double surface_radius(const ProfilePiece& piece, double x);

/// Where a piece begins and ends.
/// \param piece [m]
/// \return along the axis [m]
/// \error none
/// \source closed form
[[nodiscard]] double begin_of(const ProfilePiece& piece);
/// \param piece [m]
/// \return along the axis [m]
/// \error none
/// \source closed form
[[nodiscard]] double end_of(const ProfilePiece& piece);

/// Where the outline of a piece lies farthest down: where x sin + r cos is least, r counted downward.
/// \param piece [m]
/// \param sine of the axis's incline [1]
/// \param cosine of it [1]
/// \return the least x sine - r cosine [m]
/// \error rounding
/// \source closed form
[[nodiscard]] double lowest_of(const ProfilePiece& piece, double sine, double cosine);

/// Where the straight line above = at_zero - x slope meets the outline, at the crown or at the bottom.
/// \param piece [m]
/// \param at_zero height of the line above the axis at x = 0 [m]
/// \param slope fall of the line along the axis [1]
/// \param out takes the places along the axis [m] that lie within the piece
/// \return nothing [1]
/// \error rounding; half its digits where the line only touches
/// \source closed form: a line and an ellipse
void add_crossings(const ProfilePiece& piece, double at_zero, double slope, std::vector<double>& out);

}  // namespace forecourse::parts
