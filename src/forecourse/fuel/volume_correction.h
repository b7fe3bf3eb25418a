#pragma once

#include "forecourse/fuel/undetermined.h"

namespace forecourse::fuel {

// API MPMS 11.1-2004 (ASTM D1250): density of petroleum liquids at temperature and pressure.
// Theory, limits and checks: docs/theory/volume-correction.md.

/// Commodity group: picks the coefficients of thermal expansion.
enum class ProductGroup { crude, gasoline, transition, jet, fuel_oil };

/// Whether a result may be used. Every state but `ok` leaves the numbers NaN: nothing is extrapolated.
enum class VolumeCorrectionStatus {
  ok,
  density_out_of_range,      ///< base density outside the group (or 610.6 .. 1163.5 kg/m3)
  temperature_out_of_range,  ///< outside -58 .. 302 degF
  pressure_out_of_range,     ///< above 1500 psi gauge
  not_converged,             ///< no base density gives the observed one
};

/// One evaluation of the procedure with its intermediates.
struct VolumeCorrection {
  VolumeCorrectionStatus status = VolumeCorrectionStatus::ok;
  ProductGroup group = ProductGroup::gasoline;
  double temperature_68 = undetermined;          ///< flowing temperature on the ITPS-68 scale [K]
  double shifted_density = undetermined;         ///< rho*, base density on the ITPS-68 scale [kg/m3]
  double expansion_60 = undetermined;            ///< alpha60, thermal expansion at 60 degF [1/K]
  double scaled_compressibility = undetermined;  ///< Fp, secant compressibility from 0 gauge [1/Pa]
  double for_temperature = undetermined;         ///< CTL [1]
  double for_pressure = undetermined;            ///< CPL [1]
  double for_both = undetermined;                ///< CTPL, not rounded [1]
  double expansion = undetermined;               ///< -d ln(density)/dT at the flowing state [1/K]
};

/// Density at 60 degF found from an observed one.
struct BaseDensity {
  VolumeCorrectionStatus status = VolumeCorrectionStatus::ok;
  ProductGroup group = ProductGroup::gasoline;
  double density_60 = undetermined;  ///< [kg/m3]
  int iterations = 0;                ///< of the search
};

/// Gives the ITPS-68 temperature of an ITS-90 temperature.
///
/// \param temperature on ITS-90 [K]
/// \return on ITPS-68 [K]; differs by under 0.1 K from -58 to 302 degF.
/// \source [api_11_1_2004, 11.1.5.3] polynomial in t/630 degC.
/// \error rounding only against the published examples.
[[nodiscard]] double itps68_temperature(double temperature);

/// Gives the density at 60 degF of an API gravity.
///
/// \param api_gravity at 60 degF [degAPI], > -131.5
/// \return density at 60 degF [kg/m3], with water at 999.016 kg/m3.
/// \source [api_11_1_2004, 11.1.3] definition.
/// \error exact by definition.
[[nodiscard]] double density_from_api_gravity(double api_gravity);

/// Gives the API gravity of a density at 60 degF.
///
/// \param density_60 at 60 degF [kg/m3], > 0
/// \return API gravity at 60 degF [degAPI].
/// \source [api_11_1_2004, 11.1.3] definition.
/// \error exact by definition.
[[nodiscard]] double api_gravity_from_density(double density_60);

/// Gives the density at 60 degF of a relative density at 60/60 degF.
///
/// \param relative_density 60/60 degF [1], > 0
/// \return density at 60 degF [kg/m3], with water at 999.016 kg/m3.
/// \source [api_11_1_2004, 11.1.3] definition.
/// \error exact by definition.
[[nodiscard]] double density_from_relative_density(double relative_density);

/// Gives the group of a refined product by its base density.
///
/// \param density_60 at 60 degF [kg/m3], 610.6 .. 1163.5
/// \return gasoline, transition, jet or fuel oil [1]; outside the range the nearest of them.
/// \source [api_11_1_2004, 11.1.6] table of groups.
/// \error exact by definition.
[[nodiscard]] ProductGroup refined_group(double density_60);

/// Corrects the volume of a petroleum liquid from a flowing state to 60 degF and 0 gauge.
///
/// \param group commodity group [1]
/// \param density_60 base density at 60 degF and 0 gauge [kg/m3]
/// \param temperature flowing temperature on ITS-90 [K], 223.15 .. 423.15
/// \param gauge_pressure [Pa], up to 1500 psi; below zero counts as zero
/// \return factors with their intermediates [1]; density at the state is `density_60 * for_both`.
/// \pre hydrocarbons; for blends with up to 10 % ethanol or 20 % biodiesel an approximation.
/// \source [api_11_1_2004, 11.1.6.1] with the six examples given there.
/// \error rounding only against the examples; against measured diesel, 0 .. 15 degC, under 0.1 %.
/// \fails status as in VolumeCorrectionStatus, numbers NaN.
[[nodiscard]] VolumeCorrection volume_correction(ProductGroup group, double density_60, double temperature,
                                                 double gauge_pressure);

/// Rounds a correction factor as the procedure reports it.
///
/// \param factor correction factor [1]
/// \return factor at five decimals [1].
/// \source [api_11_1_2004, 11.1.5.4] rounding.
/// \error half of 1e-5.
[[nodiscard]] double rounded_correction(double factor);

/// Gives the density of a petroleum liquid at temperature and pressure.
///
/// \param group commodity group [1]
/// \param density_60 base density [kg/m3]
/// \param temperature [K]
/// \param gauge_pressure [Pa]
/// \return density [kg/m3]; NaN outside the limits of `volume_correction`.
/// \source [api_11_1_2004, 11.1.6.1] density times CTPL.
/// \error as `volume_correction`.
[[nodiscard]] double density_at(ProductGroup group, double density_60, double temperature, double gauge_pressure);

/// Finds the density at 60 degF that gives an observed density, in a known group.
///
/// \param group commodity group [1]
/// \param observed_density at the state below [kg/m3]
/// \param temperature [K]
/// \param gauge_pressure [Pa]
/// \return base density [kg/m3] with status and number of iterations.
/// \source [api_11_1_2004, 11.1.6.2]; where it divides by CTPL again and again, a bracketed search finds the
///     same density and does not swing in the transition group when hot.
/// \error stops when the observed density is met to 1e-13.
/// \fails `not_converged`, or the limit that was left; density NaN.
[[nodiscard]] BaseDensity base_density(ProductGroup group, double observed_density, double temperature,
                                       double gauge_pressure);

/// Finds the density at 60 degF of a refined product and, by it, its group.
///
/// \param observed_density at the state below [kg/m3]
/// \param temperature [K]
/// \param gauge_pressure [Pa]
/// \return base density [kg/m3] whose own group is the one it was worked out with.
/// \source [api_11_1_2004, 11.1.6.2]; the choice of group is solved by trying each.
/// \error as `base_density`; where two groups meet their densities differ by under 2e-7, which is let pass.
/// \fails the limit that was left, or `not_converged`; density NaN.
[[nodiscard]] BaseDensity refined_base_density(double observed_density, double temperature, double gauge_pressure);

/// Gives the density at 15 degC and 0 gauge of a density at 60 degF.
///
/// \param group commodity group [1]
/// \param density_60 [kg/m3]
/// \return density at 15 degC [kg/m3]; NaN outside the limits.
/// \source [api_11_1_2004, 11.1.6.1] CTL at 15 degC.
/// \error as `volume_correction`.
[[nodiscard]] double density_15_from_60(ProductGroup group, double density_60);

/// Gives the density at 60 degF of a refined product from that at 15 degC.
///
/// \param density_15 at 15 degC and 0 gauge [kg/m3]
/// \return base density at 60 degF [kg/m3] with its group.
/// \source [api_11_1_2004, 11.1.6.2] at 15 degC.
/// \error as `base_density`.
/// \fails as `refined_base_density`.
[[nodiscard]] BaseDensity density_60_from_15(double density_15);

/// Corrects the volume of a refined product from a flowing state to 15 degC and 0 gauge.
///
/// \param density_15 at 15 degC and 0 gauge [kg/m3]
/// \param temperature [K]
/// \param gauge_pressure [Pa]
/// \return volume at 15 degC over volume at the state [1]; NaN outside the limits.
/// \source [api_11_1_2004, 11.1.6] ratio of two corrections to 60 degF.
/// \error as `volume_correction`.
[[nodiscard]] double correction_to_15(double density_15, double temperature, double gauge_pressure);

}  // namespace forecourse::fuel
