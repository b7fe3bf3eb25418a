#pragma once

#include <optional>

#include "forecourse/parts/fire/hot_gas.h"

namespace forecourse::parts {

// The gas above a fire in still air: docs/theory/pool-fire.md.

/// Gas on the axis above a fire, in the flame, where it flickers, and above it, after McCaffrey.
///
/// Of the three laws the least holds at each height; so rise and speed have no jumps, and differ from the published
/// pieces by less than 2 % at the joints.
/// \param heat_release [W], > 0
/// \param height       above the surface that burns [m], >= 0
/// \return rise [K] and speed [m/s]; speed 0 at the surface.
/// \pre open air, round or square fire; measured with 14 to 57 kW of natural gas from a burner of 0.3 m.
/// \error measured rises lie 22 % below to 24 % above, speeds 13 % below to 3 % above; within 0.018 Q^(2/5) of the
/// surface (Q in kW) speeds are lower yet. A draft, a pit or a cabinet around the fire is not in it.
/// \source [macfp_mccaffrey, correlation after NBSIR 79-1910; nist_correlation_guide, plume temperature, McCaffrey]
HotGas axis_gas(double heat_release, double height);

/// A fire as the plume law wants it.
struct PlumeSource {
  double heat_release = 0.0;        ///< [W], > 0
  double diameter = 0.0;            ///< [m], > 0
  double radiative_fraction = 0.0;  ///< [1], 0 .. 1
};

/// Height above the pool from which the plume seems to spread.
///
/// \param source heat release [W], diameter [m]
/// \return height [m]; below zero for wide weak fires.
/// \error not stated by the source.
/// \source [nureg_1805_sheets, plume temperature sheet; nist_correlation_guide, plume temperature, Heskestad]
double virtual_origin(const PlumeSource& source);

/// Rise of temperature on the axis above the flame, after Heskestad.
///
/// \param source  heat release [W], diameter [m], radiative fraction [1]
/// \param height  above the pool [m]
/// \param ambient temperature of the air [K], > 0
/// \return rise [K]; none at or below the mean flame height, where the law does not hold.
/// \error of the order of 20 %.
/// \source [nureg_1805_sheets, plume temperature sheet; nist_correlation_guide, plume temperature, Heskestad]
std::optional<double> plume_rise(const PlumeSource& source, double height, double ambient);

/// Gas that spreads under a wide flat ceiling or canopy, after Alpert.
///
/// \param heat_release [W], > 0
/// \param radius       from the axis of the fire [m], >= 0
/// \param ceiling      height above the fire [m], > 0
/// \return rise [K] and speed [m/s].
/// \pre smooth ceiling without walls, steady fire, flame below the ceiling; no hot layer has gathered.
/// \error a later handbook prints 0.197 for 0.195 in the speed; at the joints (0.15 and 0.18 of the height) the laws
/// jump by up to 2 %.
/// \source [nureg_1805_sheets, sprinkler activation sheet]
HotGas ceiling_jet(double heat_release, double radius, double ceiling);

}  // namespace forecourse::parts
