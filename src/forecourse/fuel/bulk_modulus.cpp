#include "forecourse/fuel/bulk_modulus.h"

#include <cmath>

namespace forecourse::fuel {

IsothermalBulkModulus isothermal_bulk_modulus(double scaled_compressibility) { return {1.0 / scaled_compressibility}; }

IsentropicBulkModulus isentropic_bulk_modulus(IsothermalBulkModulus isothermal, double specific_heat_ratio) {
  return {isothermal.pascal * specific_heat_ratio};
}

double sound_speed(IsentropicBulkModulus isentropic, double density) { return std::sqrt(isentropic.pascal / density); }

}  // namespace forecourse::fuel
