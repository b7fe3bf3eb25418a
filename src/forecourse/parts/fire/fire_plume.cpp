#include "forecourse/parts/fire/fire_plume.h"

#include <algorithm>
#include <cmath>

#include "forecourse/parts/fire/pool_fire.h"

namespace forecourse::parts {
namespace {

double kilowatt(double watt) { return watt / 1000.0; }

}  // namespace

HotGas axis_gas(double heat_release, double height) {
  const double q = kilowatt(heat_release);
  const double x = height / std::pow(q, 0.4);
  if (x <= 0.0) return {.rise = 800.0, .speed = 0.0};
  const double speed = std::min({6.84 * std::sqrt(x), 1.93, 1.12 / std::cbrt(x)});
  return {.rise = std::min({800.0, 63.0 / x, 21.6 * std::pow(x, -5.0 / 3.0)}), .speed = speed * std::pow(q, 0.2)};
}

double virtual_origin(const PlumeSource& source) {
  return 0.083 * std::pow(kilowatt(source.heat_release), 0.4) - 1.02 * source.diameter;
}

std::optional<double> plume_rise(const PlumeSource& source, double height, double ambient) {
  if (height <= flame_height_heskestad(source.heat_release, source.diameter)) return std::nullopt;
  const double above = height - virtual_origin(source);
  if (!(above > 0.0)) return std::nullopt;
  // Constants of the source: 9.81 m/s2, air of 353/T kg/m3 and 1 kJ/(kg K).
  const double air_density = 353.0 / ambient;
  const double convected = kilowatt(source.heat_release) * (1.0 - source.radiative_fraction);
  return 9.1 * std::cbrt(ambient / (9.81 * air_density * air_density)) * std::pow(convected, 2.0 / 3.0) *
         std::pow(above, -5.0 / 3.0);
}

HotGas ceiling_jet(double heat_release, double radius, double ceiling) {
  const double q = kilowatt(heat_release);
  const double slope = radius / ceiling;
  const double rise = slope <= 0.18 ? 16.9 * std::pow(q, 2.0 / 3.0) / std::pow(ceiling, 5.0 / 3.0)
                                    : 5.38 * std::pow(q / radius, 2.0 / 3.0) / ceiling;
  const double speed = slope <= 0.15 ? 0.96 * std::cbrt(q / ceiling)
                                     : 0.195 * std::cbrt(q) * std::sqrt(ceiling) / std::pow(radius, 5.0 / 6.0);
  return {.rise = rise, .speed = speed};
}

}  // namespace forecourse::parts
