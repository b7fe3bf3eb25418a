#include "forecourse/parts/fire/flame_radiation.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace forecourse::parts {
namespace {

using std::numbers::pi;

// Symbols of the source: s distance and h height over the radius of the flame, a and b built of them.
double upright_factor(double s, double h) {
  const double a = (h * h + s * s + 1.0) / (2.0 * s);
  const double near = std::atan(h / std::sqrt(s * s - 1.0)) / (pi * s);
  const double side = h / (pi * s) * std::atan(std::sqrt((s - 1.0) / (s + 1.0)));
  const double top =
      a * h / (pi * s * std::sqrt(a * a - 1.0)) * std::atan(std::sqrt((a + 1.0) * (s - 1.0) / ((a - 1.0) * (s + 1.0))));
  return near - side + top;
}

double level_part(double x, double s) {
  return (x - 1.0 / s) / (pi * std::sqrt(x * x - 1.0)) *
         std::atan(std::sqrt((x + 1.0) * (s - 1.0) / ((x - 1.0) * (s + 1.0))));
}

double level_factor(double s, double h) {
  const double a = (h * h + s * s + 1.0) / (2.0 * s);
  const double b = (1.0 + s * s) / (2.0 * s);
  return level_part(b, s) - level_part(a, s);
}

}  // namespace

double point_source_flux(double heat_release, double radiative_fraction, double distance) {
  return radiative_fraction * heat_release / (4.0 * pi * distance * distance);
}

double emissive_power(double diameter) { return 58e3 * std::pow(10.0, -0.00823 * diameter); }

double limited_emissive_power(const FlameCylinder& flame, double radiated_heat) {
  return std::min(emissive_power(flame.diameter), radiated_heat / (pi * flame.diameter * flame.height));
}

std::optional<double> view_factor(const FlameCylinder& flame, double distance) {
  const double s = 2.0 * distance / flame.diameter;
  const double h = 2.0 * flame.height / flame.diameter;
  if (!(s > 1.0)) return std::nullopt;
  return std::hypot(upright_factor(s, h), level_factor(s, h));
}

}  // namespace forecourse::parts
