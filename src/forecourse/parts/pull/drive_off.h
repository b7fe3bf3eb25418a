#pragma once

#include <optional>

namespace forecourse::parts {

// A vehicle leaves with the nozzle in its tank: docs/theory/drive-off.md.

/// A vehicle at some moment of leaving.
struct VehicleMotion {
  double time = 0.0;   ///< [s] since it set off, infinite when it never gets there
  double speed = 0.0;  ///< [m/s]

  friend bool operator==(const VehicleMotion&, const VehicleMotion&) = default;
};

/// Time and speed after a travel at steady acceleration, as when the slack of the hose is used up.
///
/// \param speed        at the start [m/s], 0 from rest, >= 0 when it rolls already
/// \param acceleration [m/s2], 0 for steady rolling, below zero for braking
/// \param travel       [m], >= 0
/// \return time [s], infinite when it stops before, and speed [m/s].
/// \error rounding only of the closed form; the hose does not hold the vehicle back.
/// \source closed form of steady acceleration, law of nature
VehicleMotion after_travel(double speed, double acceleration, double travel);

/// Stiffness of the curb hose and a whip hose behind each other.
///
/// \param hose along its length [N/m], > 0
/// \param whip [N/m], > 0; none without one
/// \return stiffness of both [N/m].
/// \error hoses stiffen as they stretch; a single figure is the user's choice.
/// \source closed form: the travels of both add
double stiffness_in_series(double hose, std::optional<double> whip);

/// Tension of a hose that was pulled on after it had become tight.
///
/// \param stiffness [N/m]
/// \param travel    since it became tight [m]
/// \return tension [N], 0 while slack.
/// \error without inertia of hose and fittings: the true tension swings about it.
/// \source closed form of a linear spring
double tension(double stiffness, double travel);

/// The end of a pull: what the hose last held, and when.
struct PullEnd {
  double pull = 0.0;    ///< [N]
  double time = 0.0;    ///< [s] on the clock of the motion that was given
  double travel = 0.0;  ///< [m] since the hose became tight
};

/// Greatest tension of a pull that ends when something gives way.
///
/// From tight on the tension grows with the travel; once it has reached the pull at which something gives way, the
/// vehicle still travels on for the time that the part takes to open.
/// \param tight        time [s] and speed [m/s] when the hose became tight
/// \param acceleration of the vehicle [m/s2], not held back by the hose
/// \param stiffness    of the hoses [N/m], > 0
/// \param gives_at     tension at which something gives way [N]
/// \param opening_time from then until the part is open [s], >= 0; the user's figure
/// \return pull [N], time [s] and travel [m]; pull and time infinite when the tension is never reached.
/// \error without inertia of hose and fittings, which counts at several m/s; by how much is not known here.
/// \source closed form of a linear spring and steady acceleration
PullEnd pull_until(const VehicleMotion& tight, double acceleration, double stiffness, double gives_at,
                   double opening_time);

}  // namespace forecourse::parts
