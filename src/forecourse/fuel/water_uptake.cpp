#include "forecourse/fuel/water_uptake.h"

#include "forecourse/base/api_units.h"

namespace forecourse::fuel {
namespace {

constexpr double teaspoon = 4.929e-6;  // [m3], as the source's figures are turned into shares
constexpr double share(double teaspoons) { return teaspoons * teaspoon / cubic_meters_from_gallons(1.0); }

constexpr double cold = kelvin_from_fahrenheit(20.0), warm = kelvin_from_fahrenheit(60.0);
constexpr double cold_share = share(2.8), warm_share = share(3.8);
constexpr double rounding = 1e-9;  // relative, of temperatures turned from other units

}  // namespace

double water_uptake_e10_slope() { return (warm_share - cold_share) / (warm - cold); }

double water_uptake_e10(double temperature) {
  if (temperature < cold * (1.0 - rounding) || temperature > warm * (1.0 + rounding)) return undetermined;
  return cold_share + water_uptake_e10_slope() * (temperature - cold);
}

double separation_temperature_e10(double water) {
  if (!(water >= cold_share && water <= warm_share)) return undetermined;
  return cold + (water - cold_share) / water_uptake_e10_slope();
}

}  // namespace forecourse::fuel
