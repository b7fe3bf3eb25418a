#include "forecourse/fuel/volume_correction_1980.h"

#include <cmath>

#include "forecourse/base/api_units.h"

namespace forecourse::fuel {
namespace {

// [api_11_1_1980, Tables 6B and 54B]
constexpr double water_density_60_of_1980 = 999.012;  // [kg/m3]

double expansion_54b(double density) {
  if (density <= 770.0) return (346.4228 / density + 0.4388) / density;
  if (density < 787.5) return -0.00336312 + 2680.3206 / density / density;
  if (density < 838.5) return 594.5418 / density / density;
  return (186.9696 / density + 0.4862) / density;
}

double expansion_6b(double density) {
  if (density <= 770.0) return (192.4571 / density + 0.2438) / density;
  if (density < 787.5) return -0.00186840 + 1489.0670 / density / density;
  if (density < 838.5) return 330.3010 / density / density;
  return (103.8720 / density + 0.2701) / density;
}

double correction(double expansion, double difference) {
  const double x = expansion * difference;
  return std::exp(-x - 0.8 * x * x);
}

}  // namespace

double correction_54b_1980(double density_15, double temperature) {
  return correction(expansion_54b(density_15), celsius_from_kelvin(temperature) - 15.0);
}

double correction_6b_1980(double api_gravity, double temperature) {
  const double density = 141.5 / (api_gravity + 131.5) * water_density_60_of_1980;
  return correction(expansion_6b(density), fahrenheit_from_kelvin(temperature) - 60.0);
}

}  // namespace forecourse::fuel
