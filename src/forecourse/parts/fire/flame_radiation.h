#pragma once

#include <optional>

namespace forecourse::parts {

// Heat that a pool fire radiates to a thing beside it: docs/theory/pool-fire.md. No safe distance follows from it.

/// Share of its heat that a flame radiates, at least and at most [1].
struct RadiativeFraction {
  double low = 0.0;
  double high = 0.0;
};

/// Measured on burners of 0.3 and 1 m: 0.26, 0.22 and 0.21, each within 0.07 [1].
/// \source [nist_pool_fires, ethanol and methanol]
inline constexpr RadiativeFraction alcohol_radiative_fraction{0.14, 0.33};

/// Used in worked examples for gasoline, heptane and diesel: 0.30, 0.35 and 0.40 [1]; not measurements.
/// \source [nist_correlation_guide, chapters on heat flux and plume temperature; nureg_1805_sheets, point source sheet]
inline constexpr RadiativeFraction hydrocarbon_radiative_fraction{0.30, 0.40};

/// Heat flux from a fire taken as a point, on a surface that faces it.
///
/// \param heat_release       [W]
/// \param radiative_fraction share of it that is radiated [1]
/// \param distance           from the axis of the flame [m], > 0
/// \return flux [W/m2].
/// \pre some pool diameters away; no wind, nothing between.
/// \error near the flame too high or too low by a factor of two; not bounded.
/// \source [nureg_1805_sheets, point source sheet]
double point_source_flux(double heat_release, double radiative_fraction, double distance);

/// Power that each square meter of the flame's side radiates, averaged over its height.
///
/// \param diameter of the pool [m]
/// \return [W/m2]
/// \pre a pool of a sooty fuel in still air, 1 to 50 m; extrapolated below.
/// \error for small fires it gives more heat than the fire radiates: see the limited one below.
/// \source [nureg_1805_sheets, solid flame sheet]
double emissive_power(double diameter);

/// A flame taken as an upright cylinder.
struct FlameCylinder {
  double diameter = 0.0;  ///< [m], > 0
  double height = 0.0;    ///< [m], > 0
};

/// The same, but no more than the radiated heat of the fire spread over the flame's side.
///
/// \param flame         diameter and height [m]
/// \param radiated_heat of the whole fire [W]: heat release times radiative fraction
/// \return [W/m2]
/// \error as `emissive_power`; the fraction is taken as sure.
/// \source [nist_correlation_guide, solid flame radiation heat flux]
double limited_emissive_power(const FlameCylinder& flame, double radiated_heat);

/// Share of a small surface's view, turned to where it sees most, that the flame fills; surface level with the pool.
///
/// \param flame    diameter and height [m]
/// \param distance from the axis of the flame [m]
/// \return [1]; none inside or touching the flame.
/// \error rounding only; the geometry itself is the approximation.
/// \source [nist_correlation_guide, solid flame, ground-level target; nureg_1805_sheets, solid flame sheet]
std::optional<double> view_factor(const FlameCylinder& flame, double distance);

}  // namespace forecourse::parts
