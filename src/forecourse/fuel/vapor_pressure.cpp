#include "forecourse/fuel/vapor_pressure.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/undetermined.h"

namespace forecourse::fuel {

double true_vapor_pressure_refined(double reid_vapor_pressure, double slope, double temperature) {
  // [ap42_7_1, figure 7.1-14b]; some public copies print 413 and 8742 as 1.042 and 8.742.
  const double t = ap42_rankine_from_kelvin(temperature);
  const double log_reid = std::log10(psi_from_pascal(reid_vapor_pressure));
  const double root = std::sqrt(slope);
  return pascal_from_psi(std::exp((0.7553 - 413.0 / t) * root * log_reid - (1.854 - 1042.0 / t) * root +
                                  (2416.0 / t - 2.013) * log_reid - 8742.0 / t + 15.64));
}

double true_vapor_pressure_crude(double reid_vapor_pressure, double temperature) {
  const double t = ap42_rankine_from_kelvin(temperature);
  const double log_reid = std::log10(psi_from_pascal(reid_vapor_pressure));
  return pascal_from_psi(std::exp((2799.0 / t - 2.227) * log_reid - 7261.0 / t + 12.82));
}

VaporPressureLaw vapor_pressure_law(double reid_vapor_pressure, double slope) {
  const double ln_reid = std::log(psi_from_pascal(reid_vapor_pressure));
  const double root = std::sqrt(slope);
  return {15.64 - 1.854 * root - (0.8742 - 0.3280 * root) * ln_reid,
          8742.0 - 1042.0 * root - (1049.0 - 179.4 * root) * ln_reid};
}

double true_vapor_pressure(const VaporPressureLaw& law, double temperature) {
  return pascal_from_psi(std::exp(law.a - law.b / ap42_rankine_from_kelvin(temperature)));
}

double ethanol_vapor_pressure_waiver(double ethanol_volume_fraction) {
  // [directive_98_70, Annex III] Pa at 0, 1, .. 10 % ethanol by volume
  constexpr std::array<double, 11> table = {0.0,    3700.0, 6000.0, 7200.0, 7800.0, 8000.0,
                                            8000.0, 7900.0, 7900.0, 7800.0, 7800.0};
  const double percent = 100.0 * ethanol_volume_fraction;
  const double last = static_cast<double>(table.size() - 1);
  if (!(percent >= 0.0 && percent <= last * (1.0 + 1e-12))) return undetermined;
  const auto below = static_cast<std::size_t>(std::min(percent, last - 1.0));
  const double share = percent - static_cast<double>(below);
  return table[below] + share * (table[below + 1] - table[below]);
}

}  // namespace forecourse::fuel
