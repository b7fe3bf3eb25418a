#pragma once

#include <array>

namespace forecourse::parts {

// Vapor that leaves a station, by published factors and equations. Each says how well its source was seen. See
// docs/theory/vapor-losses.md.

/// How well a published figure is known here.
enum class FigureStatus {
  read,        ///< in the source itself or in a public program that carries it under its name
  unverified,  ///< from memory, not verified
};

/// How a tank is loaded, which sets the saturation factor of the loading equation.
enum class Loading {
  clean_submerged,      ///< a clean cargo tank, from below
  dedicated_submerged,  ///< one that carries the same fuel, from below
  balanced_submerged,   ///< one that took vapor back from a station
  clean_splash,
  dedicated_splash,
  balanced_splash,
};

/// Saturation factor S of the loading equation [1].
/// \return [1]
/// \error not stated by the source
/// \source [ap42_5_2, table 5.2-1], the six values read in a public program that carries them under its row names
[[nodiscard]] double saturation_factor(Loading loading);

/// What is to be known of a vapor to say how much leaves.
struct SaturatedVapor {
  double pressure = 0.0;     ///< true vapor pressure of the liquid, absolute [Pa], > 0
  double molar_mass = 0.0;   ///< of the vapor [kg/mol], > 0
  double temperature = 0.0;  ///< of the liquid [K], > 0
};

/// Vapor lost while a tank is loaded: L = 12.46 S P M / T.
/// \param saturation factor S [1]
/// \return mass of vapor for each volume loaded [kg/m3]
/// \error 30 % by the source (from memory, not verified); the constant is rounded, the gas law gives 12.457
/// \source [ap42_5_2, equation 1] equation and units read in an agency memo that cites it
[[nodiscard]] double loading_loss(const SaturatedVapor& vapor, double saturation);

/// Molar mass of gasoline vapor by Reid vapor pressure: 62, 66 and 68 g/mol at 13, 10 and 7 psi, straight between.
/// \param reid_vapor_pressure absolute [Pa]
/// \return [kg/mol]; NaN outside 7 to 13 psi
/// \error 1 g/mol of rounding
/// \source [ap42_7_1, table 7.1-2 as carried in public code]
[[nodiscard]] double gasoline_vapor_molar_mass(double reid_vapor_pressure);

/// A published factor of a gasoline station.
struct StationFactor {
  const char* what;              ///< "filling the tank, splash"
  double mass_per_volume = 0.0;  ///< [kg/m3] of fuel that passes
  FigureStatus status = FigureStatus::unverified;
};

enum class StationLoss {
  filling_submerged,
  filling_splash,
  filling_balanced,
  breathing,  ///< and emptying of the tank
  refueling,
  refueling_controlled,
  spillage,
};

/// Factor of one source of loss at a gasoline station.
/// \return [kg/m3]
/// \error that of a national mean
/// \source [ap42_5_2, table 5.2-7] from memory, not verified; the pairs of units agree with each other
[[nodiscard]] const StationFactor& station_factor(StationLoss loss);

/// Temperatures and volatility on which refueling of vehicles depends.
struct Refueling {
  double dispensed = 0.0;            ///< temperature of the fuel dispensed [K]
  double vehicle_excess = 0.0;       ///< vehicle's tank less fuel dispensed [K], difference
  double reid_vapor_pressure = 0.0;  ///< absolute [Pa]
};

/// Vapor displaced from vehicles without vapor control, older equation.
/// \return [kg/m3] of fuel dispensed
/// \error not stated
/// \source [ap42_5_2, equation 6] bracket read in [nonroad_source, clcevems.f] as its superseded form
[[nodiscard]] double refueling_loss_older(const Refueling& refueling);

/// The same by the equation that replaced it. Programs that carry it differ in the sign of the excess, which is
/// unsettled; here it counts as in the older one. Without an excess it does not matter.
/// \return [kg/m3] of fuel dispensed
/// \error not stated
/// \source [nonroad_source, clcevems.f]
[[nodiscard]] double refueling_loss(const Refueling& refueling);

}  // namespace forecourse::parts
