#include "solvers/library_laws.h"

#include <cmath>
#include <numbers>

namespace forecourse::test {
namespace {

/// 5.74 / Re^0.9 and its derivative to Re.
struct ReynoldsTerm {
  double value, slope;
};

ReynoldsTerm reynolds_term(double reynolds) {
  const double value = 5.74 / std::pow(reynolds, 0.9);
  return {value, -0.9 * value / reynolds};
}

// SOURCE: [swamee_jain_1976, explicit equation for the friction factor]
parts::Friction swamee_jain(double relative_roughness, double reynolds) {
  const ReynoldsTerm term = reynolds_term(reynolds);
  const double inside = relative_roughness / 3.7 + term.value;
  const double root = -2.0 * std::log10(inside);  // 1/sqrt(f)
  const double factor = 1.0 / (root * root);
  return {factor, 4.0 * std::numbers::log10e * factor * term.slope / (root * inside)};
}

// The cubic between Re 2000 and 4000 in r = Re/2000, with the letters of its source.
// SOURCE: [epanet_manual, appendix D, cubic interpolation from the Moody diagram]
parts::Friction transition(double relative_roughness, double reynolds) {
  const double y2 = relative_roughness / 3.7 + 5.74 / std::pow(4000.0, 0.9);
  const double y3 = -2.0 * std::log10(y2);
  const double fa = 1.0 / (y3 * y3);
  // The slope at Re 4000, from the derivative of the formula rather than its rounded constant 0.00514215.
  const double fb = fa * (2.0 - 2.0 * 0.9 * 2.0 * std::numbers::log10e * 5.74 / std::pow(4000.0, 0.9) / (y2 * y3));
  const double x1 = 7.0 * fa - fb, x2 = 0.128 - 17.0 * fa + 2.5 * fb;
  const double x3 = -0.128 + 13.0 * fa - 2.0 * fb, x4 = 0.032 - 3.0 * fa + 0.5 * fb;
  const double r = reynolds / 2000.0;
  return {x1 + r * (x2 + r * (x3 + r * x4)), (x2 + r * (2.0 * x3 + r * 3.0 * x4)) / 2000.0};
}

}  // namespace

parts::Friction library_friction(double relative_roughness, double reynolds) {
  if (reynolds <= 2000.0) return {64.0 / reynolds, -64.0 / (reynolds * reynolds)};
  if (reynolds < 4000.0) return transition(relative_roughness, reynolds);
  return swamee_jain(relative_roughness, reynolds);
}

LibraryPipe library_pipe(const PipeData& pipe, const LibraryConstants& constants, double pascal_per_meter) {
  const double bore = pipe.bore / constants.meter_per_foot;  // from here in feet
  const double length = pipe.length / constants.meter_per_foot;
  const double area = std::numbers::pi / 4.0 * bore * bore;
  const double unit = constants.flow_unit();
  const double pressure = pascal_per_meter * constants.meter_per_foot / (unit * unit);  // of ft per (ft3/s)2
  return {.reynolds_per_flow = bore / (constants.viscosity * area * unit),
          .relative_roughness = pipe.roughness / pipe.bore,
          .friction = pressure * length / (2.0 * constants.gravity * bore * area * area),
          .minor = pressure * constants.minor_loss_factor * pipe.minor_loss / std::pow(bore, 4)};
}

parts::Loss loss(const LibraryPipe& pipe, double flow) {
  const double size = std::abs(flow);
  const parts::Loss minor{pipe.minor * flow * size, 2.0 * pipe.minor * size};
  const double reynolds = pipe.reynolds_per_flow * size;
  if (reynolds <= 2000.0) {
    const double laminar = 64.0 * pipe.friction / pipe.reynolds_per_flow;
    return minor + parts::Loss{laminar * flow, laminar};
  }
  const parts::Friction wall = library_friction(pipe.relative_roughness, reynolds);
  return minor + parts::Loss{wall.factor * pipe.friction * flow * size,
                             pipe.friction * size * (2.0 * wall.factor + reynolds * wall.slope)};
}

parts::Loss loss(const LibraryClosed& link, double flow) { return {link.resistance * flow, link.resistance}; }

parts::Loss loss(const LibraryLimiter& valve, double flow) {
  if (flow <= valve.limit) return {};
  return {valve.resistance * (flow - valve.limit), valve.resistance};
}

}  // namespace forecourse::test
