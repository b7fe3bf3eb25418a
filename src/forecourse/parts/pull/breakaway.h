#pragma once

#include <optional>

#include "forecourse/parts/pull/pull_range.h"

namespace forecourse::parts {

// A breakaway coupling that is pulled on, straight or askew: docs/theory/drive-off.md.

/// Force along its axis within which a listed breakaway of a petroleum dispenser separates [N]: 100 to 350 lbf.
///
/// An excerpt of the standard was seen, not the whole clause. The breakaway at hand has its own figure, which is the
/// user's; this band does not stand for it.
/// \source [ul_567, clause 6.3, excerpt]
struct PublishedSeparation {
  double low = 444.8221615;
  double high = 1556.877565;
};
inline constexpr PublishedSeparation published_separation{};

/// An angle as far as it is known [rad].
struct AngleRange {
  double low = 0.0;
  double likely = 0.0;
  double high = 0.0;

  friend bool operator==(const AngleRange&, const AngleRange&) = default;
};

/// A short hose between the dispenser's outlet and the breakaway that lets the breakaway turn into the pull.
struct WhipHose {
  double free_length = 0.0;             ///< [m] that can bend
  std::optional<double> needed_length;  ///< [m] to bend into the pull, none when not known; `needed_length`
  double residual_angle = 0.0;          ///< [rad] that stays between breakaway and pull when it is long enough
};

/// Length of a hose that a bend takes up.
///
/// \param bend_radius least radius the hose bends to [m]; the user's figure
/// \param angle       of the bend [rad]
/// \return length [m].
/// \error straight ends of fittings not counted.
/// \source closed form of an arc
double needed_length(double bend_radius, double angle);

/// Angle between the axis of the breakaway and the pull.
///
/// Without a whip hose it is the whole angle between the outlet's axis and the pull. With one that is long enough,
/// the breakaway turns until no more than the residual angle is left. With one that is too short, or when it is not
/// known what length is needed, anything between; the whole angle is then taken as likely, to be on the cautious side.
/// \param outlet_to_pull angle between the outlet's axis and the pull [rad], 0 .. pi
/// \param whip           lengths [m] and residual angle [rad]; none without one
/// \return range [rad].
/// \error of a plain picture: friction of swivels and stiffness of the whip are in the residual angle.
/// \source common practice, no source
AngleRange misalignment(double outlet_to_pull, const std::optional<WhipHose>& whip);

/// Pull at which a breakaway separates when it is pulled askew.
///
/// Its halves slide on each other: the part of the pull along the axis must overcome the separation force and the
/// friction of the part across.
/// \param separation_force along the axis [N]; the user's figure
/// \param angle            between axis and pull [rad], 0 .. pi
/// \param friction         of the halves on each other [1], >= 0; the user's figure
/// \return pull [N]; infinite where it locks (cos angle <= friction sin angle).
/// \error of a plain picture; bending that jams or breaks the halves is not in it.
/// \source closed form of forces on a sliding fit, common practice, no source
double separation_pull(double separation_force, double angle, double friction);

/// The same for what is known within ranges.
///
/// \param separation_force range along the axis [N]
/// \param angle            range [rad], 0 .. pi
/// \param friction         [1], >= 0
/// \return range of the pull [N], infinite where it locks.
/// \error as above; low goes with low and high with high, as the pull grows with force and angle.
/// \source closed form of forces on a sliding fit, common practice, no source
PullRange separation_pull(const PullRange& separation_force, const AngleRange& angle, double friction);

}  // namespace forecourse::parts
