#include "forecourse/network/gathered_run.h"

#include <algorithm>

namespace forecourse::network {
namespace {

parts::QuadraticLaw per_run_flow(const parts::QuadraticLaw& law, double factor) {
  return {law.linear * factor, law.quadratic * factor * factor};
}

/// The wall of a pipe passed by `factor` times the flow, as a law of that flow.
parts::PipeLaw wall_per_run_flow(parts::PipeLaw pipe, double factor) {
  pipe.reynolds_per_flow *= factor;
  pipe.quadratic *= factor * factor;
  pipe.laminar *= factor;
  pipe.fittings = {};
  return pipe;
}

void add_pipe(const parts::PipeLaw& pipe, double factor, GatheredRun& out) {
  out.quadratic = out.quadratic + per_run_flow(pipe.fittings, factor);
  if (pipe.quadratic == 0.0) return;  // no length
  const parts::PipeLaw wall = wall_per_run_flow(pipe, factor);
  const auto same = std::find_if(out.pipes.begin(), out.pipes.end(), [&](const parts::PipeLaw& other) {
    return other.reynolds_per_flow == wall.reynolds_per_flow &&
           other.friction.roughness_term == wall.friction.roughness_term;
  });
  if (same == out.pipes.end()) return out.pipes.push_back(wall);
  same->quadratic += wall.quadratic;
  same->laminar += wall.laminar;
}

/// A parabola is a constant and a quadratic loss, against the flow too; the speed cancels from the latter.
bool add_parabola(const parts::PumpLaw& pump, double factor, GatheredRun& out) {
  const auto* curve = std::get_if<parts::PowerCurve>(&pump.curve);
  if (curve == nullptr || curve->exponent != 2.0) return false;
  out.constant -= pump.speed_ratio * pump.speed_ratio * curve->shutoff;
  out.quadratic = out.quadratic + parts::QuadraticLaw{0.0, curve->factor * factor * factor};
  return true;
}

void add_other(const parts::Law& law, double factor, GatheredRun& out) {
  GatheredRun::Other& other = out.others.emplace_back();
  other.law = law;
  other.factor = factor;
}

void add_pump(parts::PumpLaw pump, double speed, double factor, GatheredRun& out) {
  pump.speed_ratio *= speed;
  if (!add_parabola(pump, factor, out)) add_other(pump, factor, out);
}

}  // namespace

void gather_into(GatheredRun& out, const Element& element, double pump_speed) {
  const double factor = element.flow_factor;
  if (const auto* quadratic = std::get_if<parts::QuadraticLaw>(&element.law)) {
    out.quadratic = out.quadratic + per_run_flow(*quadratic, factor);
  } else if (const auto* pipe = std::get_if<parts::PipeLaw>(&element.law)) {
    add_pipe(*pipe, factor, out);
  } else if (const auto* pump = std::get_if<parts::PumpLaw>(&element.law)) {
    add_pump(*pump, pump_speed, factor, out);
  } else {
    add_other(element.law, factor, out);
  }
}

solvers::EdgeLoss GatheredRun::loss(double flow) const {
  parts::Loss sum = parts::Loss{constant, 0.0} + parts::loss(quadratic, flow);
  for (const parts::PipeLaw& pipe : pipes) sum = sum + parts::loss(pipe, flow);
  if (!others.empty()) sum = sum + loss_of_others(flow);
  return {sum.pressure_loss, sum.slope};
}

parts::Loss GatheredRun::loss_of_others(double flow) const {
  parts::Loss sum;
  for (const Other& other : others) {
    const parts::Loss own = parts::loss(other.law, other.factor * flow);
    sum = sum + parts::Loss{own.pressure_loss, own.slope * other.factor};
  }
  return sum;
}

GatheredRun gather(const Run& run, double pump_speed) {
  GatheredRun out;
  for (const Element& element : run.elements) gather_into(out, element, pump_speed);
  return out;
}

}  // namespace forecourse::network
