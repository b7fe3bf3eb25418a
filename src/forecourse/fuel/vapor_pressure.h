#pragma once

namespace forecourse::fuel {

// True vapor pressure by AP-42 chapter 7.1, and the vapor pressure that ethanol adds to gasoline.
// Theory: docs/theory/vapor-pressure.md.

/// Slope S of the ASTM D86 distillation curve at 10 % evaporated for motor gasoline [degF per %].
/// SOURCE: [ap42_7_1, table 7.1-2 as carried in public code]
inline constexpr double motor_gasoline_slope = 3.0;

/// Constants of `exp(a - b/T)`, pressure in psi absolute and T in the degrees Rankine of AP-42.
struct VaporPressureLaw {
  double a;  ///< [1]
  double b;  ///< [degR]
};

/// AP-42's law for No. 2 fuel oil (diesel).
/// SOURCE: [ap42_7_1, table 7.1-2 as carried in public code]
inline constexpr VaporPressureLaw number_2_fuel_oil{12.101, 8907.0};

/// Gives the true vapor pressure of a refined petroleum stock, such as gasoline, from its Reid vapor pressure.
///
/// \param reid_vapor_pressure absolute [Pa], > 0
/// \param slope of the ASTM D86 curve at 10 % evaporated [degF/%], 3 for motor gasoline
/// \param temperature [K]
/// \return true vapor pressure, absolute [Pa].
/// \pre made for gasolines of Reid 1 .. 20 psi between 0 and 120 degF (from memory, not verified).
/// \source [ap42_7_1, figure 7.1-14b] equation read in two public copies.
/// \error against the printed table: 0.1 psi for Reid 7 .. 13 psi at 60 degF.
[[nodiscard]] double true_vapor_pressure_refined(double reid_vapor_pressure, double slope, double temperature);

/// Gives the true vapor pressure of a crude oil stock from its Reid vapor pressure.
///
/// \param reid_vapor_pressure absolute [Pa], > 0
/// \param temperature [K]
/// \return true vapor pressure, absolute [Pa].
/// \source [ap42_7_1, figure 7.1-13b] equation read in public copies.
/// \error not stated by the source.
[[nodiscard]] double true_vapor_pressure_crude(double reid_vapor_pressure, double temperature);

/// Gives the constants A and B of a refined stock from its Reid vapor pressure.
///
/// \param reid_vapor_pressure absolute [Pa], > 0
/// \param slope of the ASTM D86 curve at 10 % evaporated [degF/%]
/// \return A and B [1, degR].
/// \source [ap42_7_1, figure 7.1-15] equation read in public copies.
/// \error 0.001 in A, 0.1 degR in B against the printed table.
[[nodiscard]] VaporPressureLaw vapor_pressure_law(double reid_vapor_pressure, double slope);

/// Gives the true vapor pressure by a law with known constants.
///
/// \param law constants A and B [1, degR]
/// \param temperature [K]
/// \return true vapor pressure, absolute [Pa].
/// \source [ap42_7_1, figure 7.1-15].
/// \error 10 % for No. 2 fuel oil, whose table value has one digit.
[[nodiscard]] double true_vapor_pressure(const VaporPressureLaw& law, double temperature);

/// Gives the vapor pressure by which ethanol blends may exceed the limit: a measure of what blending adds.
///
/// \param ethanol_volume_fraction of the blend [1], 0 .. 0.10
/// \return permitted excess of Reid vapor pressure [Pa]; NaN outside the table.
/// \source [directive_98_70, Annex III] table, linear between its points.
/// \error printed to 0.1 kPa.
[[nodiscard]] double ethanol_vapor_pressure_waiver(double ethanol_volume_fraction);

}  // namespace forecourse::fuel
