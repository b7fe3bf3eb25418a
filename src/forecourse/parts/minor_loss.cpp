#include "forecourse/parts/minor_loss.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/parts/loss.h"

namespace forecourse::parts {
namespace {

// Pressure of one velocity head per flow squared.
double head_per_flow_squared(double bore, double density) {
  const double area = std::numbers::pi / 4.0 * bore * bore;
  return density / (2.0 * area * area);
}

}  // namespace

Loss loss(const QuadraticLaw& law, double flow) {
  const double quadratic = law.quadratic * std::abs(flow);
  return {flow * (law.linear + quadratic), law.linear + 2.0 * quadratic};
}

double flow_at(const QuadraticLaw& law, double pressure_loss) {
  if (pressure_loss == 0.0) return 0.0;
  // The root of b q2 + a q = p written so that it holds for b = 0 and loses no digits for a small.
  const double root = std::sqrt(law.linear * law.linear + 4.0 * law.quadratic * std::abs(pressure_loss));
  return 2.0 * pressure_loss / (law.linear + root);
}

QuadraticLaw from_loss_coefficient(double loss_coefficient, double bore, double density) {
  return {.quadratic = loss_coefficient * head_per_flow_squared(bore, density)};
}

QuadraticLaw from_flow_area(double flow_area, double density) {
  return {.quadratic = density / (flow_area * flow_area)};
}

QuadraticLaw from_loss_at_flow(double pressure_loss, double flow) {
  return {.quadratic = pressure_loss / (flow * flow)};
}

double loss_coefficient(const QuadraticLaw& law, double bore, double density) {
  return law.quadratic / head_per_flow_squared(bore, density);
}

}  // namespace forecourse::parts
