#include "forecourse/parts/escape/orifice.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/base/constants.h"

namespace forecourse::parts {

OrificeFlow flow_through(const Orifice& opening, double pressure_difference, double density) {
  if (pressure_difference == 0.0) return {0.0, std::numeric_limits<double>::infinity()};
  const double velocity = std::sqrt(2.0 * std::abs(pressure_difference) / density);
  const double size = opening.discharge_coefficient * opening.area * velocity;
  return {std::copysign(size, pressure_difference), 0.5 * size / std::abs(pressure_difference)};
}

double orifice_area(double flow, double pressure_difference, double discharge_coefficient, double density) {
  return flow / (discharge_coefficient * jet_velocity(pressure_difference, density));
}

double hole_diameter(double area) { return 2.0 * std::sqrt(area / std::numbers::pi); }

double jet_velocity(double pressure_difference, double density) {
  return std::sqrt(2.0 * pressure_difference / density);
}

double drag_free_height(double velocity) { return velocity * velocity / (2.0 * standard_gravity); }

double drag_free_range(double velocity, double angle) {
  return velocity * velocity * std::sin(2.0 * angle) / standard_gravity;
}

Estimate jet_height(double velocity) {
  const double height = drag_free_height(velocity);
  return {.low = measured_range_share.low * height, .high = height};
}

Estimate jet_range(double velocity, double angle) {
  const double range = drag_free_range(velocity, angle);
  return {.low = measured_range_share.low * range, .high = range};
}

}  // namespace forecourse::parts
