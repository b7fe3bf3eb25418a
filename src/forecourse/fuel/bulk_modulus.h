#pragma once

namespace forecourse::fuel {

// The two bulk moduli of a liquid are kept apart by type: a slow change of pressure (line pack, trapped liquid,
// meter correction) goes by the isothermal one, a pressure wave by the isentropic one, which is larger by the
// ratio of specific heats. Theory: docs/theory/bulk-modulus.md.

/// Stiffness at constant temperature. Not for surge.
struct IsothermalBulkModulus {
  double pascal;  ///< [Pa]
};

/// Stiffness at constant entropy: the one that sets the speed of a pressure wave.
struct IsentropicBulkModulus {
  double pascal;  ///< [Pa]
};

/// Gives the isothermal bulk modulus near atmospheric pressure out of a volume correction.
///
/// \param scaled_compressibility `VolumeCorrection::scaled_compressibility` [1/Pa], > 0
/// \return isothermal bulk modulus [Pa], the secant one as pressure goes to zero gauge; NaN in, NaN out.
/// \source [api_11_1_2004, 11.1.6.1] reciprocal of Fp.
/// \error 6.5 % of the compressibility at 95 % confidence (from memory, not verified); more for oxygenated blends.
[[nodiscard]] IsothermalBulkModulus isothermal_bulk_modulus(double scaled_compressibility);

/// Gives the isentropic bulk modulus, which surge needs, from the isothermal one.
///
/// \param isothermal isothermal bulk modulus [Pa]
/// \param specific_heat_ratio cp/cv of the liquid [1], >= 1; an input: see the theory page for published liquids
/// \return isentropic bulk modulus [Pa].
/// \source [schroeder_2014, thermodynamic identity] K_S = K_T cp/cv.
/// \error exact; the ratio carries the uncertainty (1.19 ethanol .. 1.35 toluene at 15 degC).
[[nodiscard]] IsentropicBulkModulus isentropic_bulk_modulus(IsothermalBulkModulus isothermal,
                                                            double specific_heat_ratio);

/// Gives the speed of sound in unconfined liquid.
///
/// \param isentropic isentropic bulk modulus [Pa], > 0
/// \param density [kg/m3], > 0
/// \return speed of sound [m/s]; a pipe wall that gives way makes the wave in it slower.
/// \source [schroeder_2014, thermodynamic identity] c = sqrt(K_S/rho).
/// \error exact.
[[nodiscard]] double sound_speed(IsentropicBulkModulus isentropic, double density);

}  // namespace forecourse::fuel
