#pragma once

namespace forecourse::fuel {

// Density of ethanol-water mixtures by OIML R 22 at 101.325 kPa. Theory: docs/theory/ethanol-density.md.

/// Gives the density of a mixture of ethanol and water at atmospheric pressure.
///
/// \param ethanol_mass_fraction [1], 0 .. 1
/// \param temperature [K], 253.15 .. 313.15
/// \return density [kg/m3]; NaN outside the ranges.
/// \pre no denaturant and no gasoline: pure ethanol and water; liquid (not checked: water freezes at 0 degC).
/// \source [oiml_r22, general formula] 54 coefficients.
/// \error rounding only against the formula; the formula itself is stated far below 0.1 kg/m3.
[[nodiscard]] double ethanol_water_density(double ethanol_mass_fraction, double temperature);

/// Gives the thermal expansion of a mixture of ethanol and water.
///
/// \param ethanol_mass_fraction [1], 0 .. 1
/// \param temperature [K], 253.15 .. 313.15
/// \return -d ln(density)/dT [1/K]; NaN outside the ranges.
/// \source [oiml_r22, general formula] derivative of it.
/// \error rounding only against the formula.
[[nodiscard]] double ethanol_water_expansion(double ethanol_mass_fraction, double temperature);

/// Gives the volume fraction of ethanol (its own volume at 20 degC over that of the mixture).
///
/// \param ethanol_mass_fraction [1], 0 .. 1
/// \return volume fraction at 20 degC [1]; NaN outside the range.
/// \source [oiml_r22, definition] p rho(p)/rho(1).
/// \error rounding only.
[[nodiscard]] double ethanol_volume_fraction(double ethanol_mass_fraction);

}  // namespace forecourse::fuel
