#include "forecourse/parts/pipe_friction.h"

#include <cmath>
#include <numbers>

#include "forecourse/parts/inverse.h"

namespace forecourse::parts {
namespace {

// Pressure loss of wall friction alone for a flow >= 0.
Loss wall_loss(const PipeLaw& law, double flow) {
  const double reynolds = law.reynolds_per_flow * flow;
  if (reynolds <= laminar_limit) return {law.laminar * flow, law.laminar};
  const Friction wall = friction(law.friction, reynolds);
  const double per_flow = law.quadratic * flow;
  return {per_flow * flow * wall.factor, per_flow * (2.0 * wall.factor + reynolds * wall.slope)};
}

// Flow >= 0 that loses a pressure > 0 by wall friction alone.
double wall_flow(const PipeLaw& law, double pressure_loss) {
  const double last_laminar = laminar_limit / law.reynolds_per_flow;
  const double first_turbulent = turbulent_limit / law.reynolds_per_flow;
  if (pressure_loss <= law.laminar * last_laminar) return pressure_loss / law.laminar;
  if (pressure_loss >= wall_loss(law, first_turbulent).pressure_loss) {
    const double root = std::sqrt(pressure_loss / law.quadratic);  // flow * sqrt(f)
    return root * inverse_root_friction(law.friction, law.reynolds_per_flow * root);
  }
  return flow_in_range([&law](double flow) { return wall_loss(law, flow); }, pressure_loss,
                       {last_laminar, first_turbulent});
}

bool has_loss(const QuadraticLaw& law) { return law.linear != 0.0 || law.quadratic != 0.0; }

}  // namespace

PipeLaw pipe_law(const Pipe& pipe, const QuadraticLaw& fittings) {
  const double d = pipe.inside_diameter;
  const double area = std::numbers::pi / 4.0 * d * d;
  const double reynolds_per_flow = pipe.density * d / (pipe.dynamic_viscosity * area);
  const double quadratic = pipe.density * pipe.length / (2.0 * d * area * area);
  return {.reynolds_per_flow = reynolds_per_flow,
          .quadratic = quadratic,
          .laminar = 64.0 / reynolds_per_flow * quadratic,
          .friction = friction_law(pipe.roughness / d),
          .fittings = fittings};
}

Loss loss(const PipeLaw& law, double flow) {
  const Loss wall = wall_loss(law, std::abs(flow));
  return Loss{std::copysign(wall.pressure_loss, flow), wall.slope} + loss(law.fittings, flow);
}

double flow_at(const PipeLaw& law, double pressure_loss) {
  if (pressure_loss == 0.0) return 0.0;
  if (law.quadratic == 0.0) return flow_at(law.fittings, pressure_loss);  // no length
  const double size = std::abs(pressure_loss);
  const double most = wall_flow(law, size);  // fittings can only make it less
  if (!has_loss(law.fittings)) return std::copysign(most, pressure_loss);
  const auto whole = [&law](double flow) { return loss(law, flow); };
  return std::copysign(flow_in_range(whole, size, {0.0, most}), pressure_loss);
}

Loss pipe_loss(const Pipe& pipe, double flow) { return loss(pipe_law(pipe), flow); }

double pipe_flow(const Pipe& pipe, double pressure_loss) { return flow_at(pipe_law(pipe), pressure_loss); }

}  // namespace forecourse::parts
