#pragma once

namespace forecourse::parts {

/// Molar gas constant [J/(mol K)], exact by definition.
/// \source [nist_sp811, appendix B.8] as redefined by the 2019 values of k and N_A
inline constexpr double molar_gas_constant = 8.31446261815324;

/// Molar mass of dry air [kg/mol].
/// \source [us_standard_atmosphere_1976, constants]
inline constexpr double molar_mass_of_air = 0.0289644;

/// Air with the vapor of a fuel in it.
struct VaporMixture {
  double mole_fraction = 0.0;     ///< of the fuel's vapor [1], the same as its share of the volume
  double molar_mass = 0.0;        ///< of the mixture [kg/mol]
  double density = 0.0;           ///< [kg/m3]
  double relative_density = 0.0;  ///< to air at the same temperature and pressure [1]
  double fuel_density = 0.0;      ///< mass of fuel vapor in a volume of mixture [kg/m3]
};

/// An ideal mixture of air and the vapor of a fuel.
///
/// \param molar_mass       of the fuel's vapor [kg/mol], > 0
/// \param partial_pressure of it, at most the fuel's true vapor pressure, absolute [Pa], 0 .. pressure
/// \param temperature      [K], > 0
/// \param pressure         absolute [Pa], > 0
/// \return the mixture [SI, see the struct].
/// \pre near the atmosphere, where gases are as good as ideal; a saturated ullage is the upper end of what is met.
/// \error some parts in a thousand against real gases; the molar mass counts for more.
/// \source law of nature (Dalton, ideal gas)
[[nodiscard]] constexpr VaporMixture vapor_mixture(double molar_mass, double partial_pressure, double temperature,
                                                   double pressure) {
  VaporMixture out;
  const double per_mole = molar_gas_constant * temperature / pressure;
  out.mole_fraction = partial_pressure / pressure;
  out.molar_mass = out.mole_fraction * molar_mass + (1.0 - out.mole_fraction) * molar_mass_of_air;
  out.density = out.molar_mass / per_mole;
  out.relative_density = out.molar_mass / molar_mass_of_air;
  out.fuel_density = out.mole_fraction * molar_mass / per_mole;
  return out;
}

}  // namespace forecourse::parts
