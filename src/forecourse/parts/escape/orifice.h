#pragma once

#include "forecourse/parts/escape/estimate.h"

namespace forecourse::parts {

/// An opening through which liquid escapes. Both figures are the user's: the project holds none.
///
/// See docs/theory/jet.md.
struct Orifice {
  double area = 0.0;                   ///< [m2], > 0
  double discharge_coefficient = 0.0;  ///< [1], > 0; the jet's share of the area times its loss of velocity
};

/// Flow through an opening and its derivative to the pressure difference.
struct OrificeFlow {
  double flow = 0.0;   ///< [m3/s]
  double slope = 0.0;  ///< d(flow)/d(pressure difference) [m3/(s Pa)]
};

/// Flow of a liquid through a sharp opening: q = Cd A sqrt(2 dp / density).
///
/// \param pressure_difference inside minus outside [Pa], either sign
/// \param density             of the liquid [kg/m3], > 0
/// \return flow [m3/s], odd in the difference; slope [m3/(s Pa)], infinite at no difference.
/// \pre turbulent: in a narrow crack the flow goes toward the pressure itself (leak_rate.h).
/// \error that of the discharge coefficient.
/// \source common practice, no source
[[nodiscard]] OrificeFlow flow_through(const Orifice& opening, double pressure_difference, double density);

/// Area of the sharp opening that passes a flow.
///
/// \param flow                  [m3/s], > 0
/// \param pressure_difference   [Pa], > 0
/// \param discharge_coefficient [1], > 0
/// \param density               [kg/m3], > 0
/// \return area [m2].
/// \error that of the discharge coefficient.
/// \source common practice, no source
[[nodiscard]] double orifice_area(double flow, double pressure_difference, double discharge_coefficient,
                                  double density);

/// Diameter of the round hole of an area: what a leak would be if it were one hole.
/// \param area [m2], >= 0
/// \return diameter [m].
/// \error rounding only.
/// \source closed form
[[nodiscard]] double hole_diameter(double area);

/// Velocity of a jet that loses nothing on its way out.
///
/// \param pressure_difference inside minus outside [Pa], >= 0
/// \param density             [kg/m3], > 0
/// \return velocity [m/s].
/// \error a few percent high for a sharp hole; not known for a jagged gap.
/// \source common practice, no source
[[nodiscard]] double jet_velocity(double pressure_difference, double density);

/// Height a jet straight up would reach above its opening without air: v2 / 2g.
/// \param velocity [m/s], >= 0
/// \return height [m].
/// \error an upper end for the solid jet: air takes from it.
/// \source law of nature
[[nodiscard]] double drag_free_height(double velocity);

/// Range of a jet on its own level without air: v2 sin(2 angle) / g.
/// \param velocity [m/s], >= 0
/// \param angle    above the horizontal [rad], 0 to pi/2
/// \return range [m].
/// \error an upper end for the solid jet: air takes from it.
/// \source law of nature
[[nodiscard]] double drag_free_range(double velocity, double angle);

/// Least and greatest measured range of a water jet at 35 degrees, as a share of the drag-free range [1].
///
/// 30 throws of jets of 13 to 25.4 mm at 2.1 to 6.2 bar; the shares were computed here with water of 998.2 kg/m3. The
/// share falls with velocity and rises with diameter: the small hole of a crack lies outside of what was measured.
/// \source [theobald_1981, maximum range at 35 degrees, all nozzles]
inline constexpr Estimate measured_range_share{.low = 0.294, .high = 0.794};

/// Height of a jet straight up, between what air was seen to take and no air at all.
///
/// Low is the drag-free height times the least measured share. That share is of range, at 35 degrees, of water, of
/// holes of 13 mm and more: fuel from a smaller hole breaks up sooner, and may stay below `low`.
/// `high` is no bound for spray: at 35 degrees the highest spray was measured up to 1.37 times the drag-free height.
/// \param velocity [m/s], >= 0
/// \return height above the opening [m].
/// \error an order of magnitude; see docs/theory/jet.md.
/// \source [theobald_1981, maximum range at 35 degrees]
[[nodiscard]] Estimate jet_height(double velocity);

/// Range of a jet on its own level, between what air was seen to take and no air at all; warnings as for the height.
/// \param velocity [m/s], >= 0
/// \param angle    above the horizontal [rad], 0 to pi/2
/// \return range [m].
/// \error an order of magnitude away from the measured angle and diameters.
/// \source [theobald_1981, maximum range at 35 degrees]
[[nodiscard]] Estimate jet_range(double velocity, double angle);

}  // namespace forecourse::parts
