#pragma once

namespace forecourse::fuel {

// ASTM D341: log10 log10(nu + 0.7) = a - b log10 T, nu in mm2/s, T in K. Theory: docs/theory/viscosity.md.

/// Whether a viscosity may be used.
enum class ViscosityStatus {
  ok,
  low_viscosity,   ///< below 0.7 mm2/s the simple form is off by up to about 1 %; the value is given
  not_determined,  ///< points that carry no law, or a temperature where it gives no positive viscosity; value NaN
};

/// The straight line of D341 through two measured points.
struct ViscosityLaw {
  double a;  ///< [1]
  double b;  ///< [1], > 0: viscosity falls with temperature
  ViscosityStatus status = ViscosityStatus::ok;
};

/// A viscosity with its standing.
struct KinematicViscosity {
  double value;  ///< [m2/s]
  ViscosityStatus status = ViscosityStatus::ok;
};

/// Fits the law of ASTM D341 to viscosities at two temperatures.
///
/// \param temperature_1 [K], > 0
/// \param viscosity_1 kinematic, at temperature 1 [m2/s], > 0.3e-6 so that both logarithms exist
/// \param temperature_2 [K], > 0, differs from temperature 1
/// \param viscosity_2 kinematic, at temperature 2 [m2/s], > 0.3e-6
/// \return the line through both points [1].
/// \source [astm_d341, simple form] recalled form, held against measured viscosities in the tests.
/// \error rounding only at the two points.
/// \fails `not_determined` for equal temperatures, too low viscosities or viscosity rising with temperature.
[[nodiscard]] ViscosityLaw fit_viscosity_law(double temperature_1, double viscosity_1, double temperature_2,
                                             double viscosity_2);

/// Gives the kinematic viscosity by a fitted law.
///
/// \param law as fitted [1]
/// \param temperature [K], > 0; best between the two fitted points
/// \return kinematic viscosity [m2/s] with status.
/// \source [astm_d341, simple form].
/// \error between the points: 0.1 % above 2 mm2/s, 1 % below 1.5 mm2/s (measured oils, see theory page);
///     outside them it grows with the distance.
/// \fails `low_viscosity` below 0.7 mm2/s (value given), `not_determined` where the law has no positive value.
[[nodiscard]] KinematicViscosity kinematic_viscosity(const ViscosityLaw& law, double temperature);

}  // namespace forecourse::fuel
