#include "forecourse/fuel/standard_atmosphere.h"

#include <cmath>

#include "forecourse/base/constants.h"
#include "forecourse/fuel/undetermined.h"

namespace forecourse::fuel {

double standard_atmosphere_at(double altitude) {
  // SOURCE: [us_standard_atmosphere_1976, tables 2 to 4] constants of the lowest layer
  constexpr double sea_level_temperature = 288.15;  // [K]
  constexpr double lapse = 0.0065;                  // [K/m]
  constexpr double molar_mass = 0.0289644;          // [kg/mol]
  constexpr double gas_constant = 8.31432;          // [J/(mol K)], as that standard has it
  constexpr double top = 11000.0;                   // [m]
  if (!(altitude <= top)) return undetermined;
  const double exponent = standard_gravity * molar_mass / (gas_constant * lapse);
  return standard_atmosphere * std::pow(1.0 - lapse * altitude / sea_level_temperature, exponent);
}

}  // namespace forecourse::fuel
