#pragma once

#include <span>

#include "forecourse/fuel/bulk_modulus.h"
#include "forecourse/fuel/undetermined.h"

namespace forecourse::fuel {

// Liquid properties of a pure fluid by its published Helmholtz equation of state. These fluids stand in for fuels
// where no fuel data exist: they are not commercial fuels. Theory: docs/theory/bulk-modulus.md.

/// n delta^d tau^t exp(-delta^l), without the exponential where l = 0.
struct PowerTerm {
  double n, t;
  int d, l;
};

/// n delta^d tau^t exp(-eta (delta - epsilon)^2 - beta (tau - gamma)^2).
struct GaussianTerm {
  double n, t;
  int d;
  double eta, beta, gamma, epsilon;
};

/// A term of the ideal-gas heat capacity over R: weight times a function of `parameter`.
struct HeatTerm {
  enum class Form {
    power,     ///< T^parameter
    einstein,  ///< (x/2)^2/sinh^2(x/2), x = parameter/T, parameter [K]
    cosh,      ///< x^2/cosh^2 x, x = parameter/T, parameter [K]
  };
  Form form;
  double weight, parameter;
};

/// A published equation of state.
struct HelmholtzFluid {
  double gas_constant;             ///< [J/(mol K)], as the publication used it
  double molar_mass;               ///< [kg/mol]
  double reducing_temperature;     ///< [K]
  double reducing_density;         ///< [mol/m3]
  double lowest_temperature;       ///< [K], triple point
  double highest_pressure;         ///< [Pa]
  double densest;                  ///< liquid at the triple point [mol/m3]: where the search for density starts
  double heat_at_constant_volume;  ///< constant part of the ideal-gas cv/R [1]
  std::span<const HeatTerm> heat;  ///< rest of it
  std::span<const PowerTerm> power;
  std::span<const GaussianTerm> gaussian;
};

/// The fluids at hand.
enum class PureFluid { ethanol, n_heptane, n_octane, toluene, methyl_oleate };

/// Gives the published equation of a fluid; see helmholtz_fluids.cpp for the numbers.
[[nodiscard]] const HelmholtzFluid& helmholtz_fluid(PureFluid fluid);

/// Whether a state may be used; but for `ok` its numbers are NaN.
enum class LiquidStatus {
  ok,
  out_of_range,   ///< below the triple point, above 350 K, no positive pressure or above the highest one
  not_converged,  ///< no liquid density found
};

/// A liquid at temperature and pressure.
struct LiquidState {
  LiquidStatus status = LiquidStatus::ok;
  double density = undetermined;                   ///< [kg/m3]
  double expansion = undetermined;                 ///< [1/K]
  double specific_heat_ratio = undetermined;       ///< cp/cv [1]
  IsothermalBulkModulus isothermal{undetermined};  ///< [Pa]
  IsentropicBulkModulus isentropic{undetermined};  ///< [Pa]
  double speed_of_sound = undetermined;            ///< [m/s]
};

/// Works out a liquid state of a pure fluid.
///
/// \param fluid its equation of state [1]
/// \param temperature [K], triple point .. 350 K
/// \param absolute_pressure [Pa], above the vapor pressure (not checked)
/// \return density, expansion, bulk moduli and speed of sound [kg/m3, 1/K, Pa, m/s].
/// \source [span_2000, equations of state as Helmholtz energy] relations of thermodynamics.
/// \error rounding only against the equations, which their authors state to 0.05 .. 0.6 % in liquid density.
/// \fails `out_of_range` or `not_converged`.
[[nodiscard]] LiquidState liquid_state(const HelmholtzFluid& fluid, double temperature, double absolute_pressure);

/// Gives the pressure of a pure fluid at temperature and density.
///
/// \param fluid its equation of state [1]
/// \param temperature [K]
/// \param density [kg/m3]
/// \return absolute pressure [Pa]; negative in a stretched liquid.
/// \source [span_2000, equations of state as Helmholtz energy] p = rho R T (1 + delta alpha_delta).
/// \error rounding only.
[[nodiscard]] double helmholtz_pressure(const HelmholtzFluid& fluid, double temperature, double density);

}  // namespace forecourse::fuel
