#include "forecourse/parts/vapor/emissions.h"

#include <cmath>
#include <cstddef>
#include <limits>

#include "forecourse/base/api_units.h"

namespace forecourse::parts {
namespace {

constexpr double loading_constant = 12.46;  // [lb degR / (1000 gal psi lb/lbmol)]

struct MolarMassPoint {
  double reid_psi;
  double grams_per_mole;
};
constexpr std::array<MolarMassPoint, 3> gasoline_molar_mass{{{7.0, 68.0}, {10.0, 66.0}, {13.0, 62.0}}};

double excess_fahrenheit(const Refueling& refueling) {
  return per_kelvin_from_per_fahrenheit(refueling.vehicle_excess);  // a difference: 1.8 degF each kelvin
}

}  // namespace

double saturation_factor(Loading loading) {
  constexpr std::array<double, 6> factors{0.50, 0.60, 1.00, 1.45, 1.45, 1.00};
  return factors[static_cast<std::size_t>(loading)];
}

double loading_loss(const SaturatedVapor& vapor, double saturation) {
  const double grams_per_mole = grams_from_kilograms(vapor.molar_mass);
  const double rankine = rankine_from_kelvin(vapor.temperature);
  return kilograms_per_cubic_meter_from_pounds_per_thousand_gallons(
      loading_constant * saturation * psi_from_pascal(vapor.pressure) * grams_per_mole / rankine);
}

double gasoline_vapor_molar_mass(double reid_vapor_pressure) {
  const double reid = psi_from_pascal(reid_vapor_pressure);
  constexpr double rounding = 1e-9;
  for (std::size_t i = 1; i < gasoline_molar_mass.size(); ++i) {
    const MolarMassPoint &low = gasoline_molar_mass[i - 1], &high = gasoline_molar_mass[i];
    if (reid < low.reid_psi - rounding || reid > high.reid_psi + rounding) continue;
    const double share = (reid - low.reid_psi) / (high.reid_psi - low.reid_psi);
    return kilograms_from_grams(std::lerp(low.grams_per_mole, high.grams_per_mole, share));
  }
  return std::numeric_limits<double>::quiet_NaN();
}

const StationFactor& station_factor(StationLoss loss) {
  constexpr double milligrams_per_liter = 1e-3;  // [kg/m3] of one, exact
  static constexpr std::array<StationFactor, 7> factors{
      {{"filling the tank, submerged", 880.0 * milligrams_per_liter},
       {"filling the tank, splash", 1380.0 * milligrams_per_liter},
       {"filling the tank, submerged, vapor balanced", 40.0 * milligrams_per_liter},
       {"breathing and emptying of the tank", 120.0 * milligrams_per_liter},
       {"refueling of vehicles, without control", 1320.0 * milligrams_per_liter},
       {"refueling of vehicles, controlled", 132.0 * milligrams_per_liter},
       {"spillage", 80.0 * milligrams_per_liter}}};
  return factors[static_cast<std::size_t>(loss)];
}

double refueling_loss_older(const Refueling& refueling) {
  const double dispensed = fahrenheit_from_kelvin(refueling.dispensed);
  const double grams_per_gallon = -5.909 - 0.0949 * excess_fahrenheit(refueling) + 0.0884 * dispensed +
                                  0.485 * psi_from_pascal(refueling.reid_vapor_pressure);
  return kilograms_from_grams(grams_per_gallon) / cubic_meters_from_gallons(1.0);
}

double refueling_loss(const Refueling& refueling) {
  const double dispensed = fahrenheit_from_kelvin(refueling.dispensed);
  const double grams_per_gallon = std::exp(-1.2798 - 0.0049 * excess_fahrenheit(refueling) + 0.0203 * dispensed +
                                           0.1315 * psi_from_pascal(refueling.reid_vapor_pressure));
  return kilograms_from_grams(grams_per_gallon) / cubic_meters_from_gallons(1.0);
}

}  // namespace forecourse::parts
