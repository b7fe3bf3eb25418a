#include "forecourse/parts/fire/pool_fire.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace forecourse::parts {
namespace {

// As the source rounds them.
constexpr double air_density = 1.2;
constexpr double gravity = 9.81;

}  // namespace

double equivalent_diameter(double area) { return std::sqrt(4.0 * area / std::numbers::pi); }

double deep_pool_rate(const BurningFuel& fuel, double diameter) {
  return fuel.rate_of_large_pool * -std::expm1(-fuel.absorption * diameter);
}

BurningRate thin_layer_rate(const BurningFuel& fuel, double diameter) {
  const double deep = deep_pool_rate(fuel, diameter);
  return {.low = thin_layer_share * deep, .high = deep};
}

double heat_release(const BurningFuel& fuel, double rate, double area) { return rate * fuel.heat_of_combustion * area; }

double flame_height_heskestad(double heat_release, double diameter) {
  const double kilowatt = heat_release / 1000.0;
  return std::max(0.0, 0.235 * std::pow(kilowatt, 0.4) - 1.02 * diameter);
}

double flame_height_thomas(double rate, double diameter) {
  return 42.0 * diameter * std::pow(rate / (air_density * std::sqrt(gravity * diameter)), 0.61);
}

}  // namespace forecourse::parts
