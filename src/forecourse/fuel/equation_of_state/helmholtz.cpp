#include "forecourse/fuel/equation_of_state/helmholtz.h"

#include <cmath>

namespace forecourse::fuel {
namespace {

constexpr double highest_temperature = 350.0;  // [K]; ethanol boils at 351 K under one atmosphere

// Residual Helmholtz energy over RT; a letter stands for one derivative times its own variable.
struct Residual {
  double d = 0.0, dd = 0.0, tt = 0.0, dt = 0.0;

  // f the term, g and h its logarithmic derivatives, gd and ht the corrections of the second ones
  void add(double f, double g, double gd, double h, double ht) {
    d += f * g;
    dd += f * (g * g + gd);
    tt += f * (h * h + ht);
    dt += f * g * h;
  }
};

void add_power(Residual& sum, const PowerTerm& term, double delta, double tau) {
  const double power = term.l > 0 ? std::pow(delta, term.l) : 0.0;
  const double f = term.n * std::pow(delta, term.d) * std::pow(tau, term.t) * std::exp(-power);
  const double g = term.d - term.l * power;
  sum.add(f, g, -g - term.l * term.l * power, term.t, -term.t);
}

void add_gaussian(Residual& sum, const GaussianTerm& term, double delta, double tau) {
  const double x = delta - term.epsilon;
  const double y = tau - term.gamma;
  const double f =
      term.n * std::pow(delta, term.d) * std::pow(tau, term.t) * std::exp(-term.eta * x * x - term.beta * y * y);
  sum.add(f, term.d - 2.0 * term.eta * delta * x, -term.d - 2.0 * term.eta * delta * delta,
          term.t - 2.0 * term.beta * tau * y, -term.t - 2.0 * term.beta * tau * tau);
}

Residual residual(const HelmholtzFluid& fluid, double temperature, double molar_density) {
  const double delta = molar_density / fluid.reducing_density;
  const double tau = fluid.reducing_temperature / temperature;
  Residual sum;
  for (const PowerTerm& term : fluid.power) add_power(sum, term, delta, tau);
  for (const GaussianTerm& term : fluid.gaussian) add_gaussian(sum, term, delta, tau);
  return sum;
}

double square(double x) { return x * x; }

double heat_term(const HeatTerm& term, double temperature) {
  const double x = term.parameter / temperature;
  switch (term.form) {
    case HeatTerm::Form::power:
      return term.weight * std::pow(temperature, term.parameter);
    case HeatTerm::Form::einstein:
      return term.weight * square(x / 2.0 / std::sinh(x / 2.0));
    case HeatTerm::Form::cosh:
      return term.weight * square(x / std::cosh(x));
  }
  return undetermined;
}

double ideal_heat(const HelmholtzFluid& fluid, double temperature) {
  double sum = fluid.heat_at_constant_volume;
  for (const HeatTerm& term : fluid.heat) sum += heat_term(term, temperature);
  return sum;
}

// Newton from the densest liquid: pressure is convex in density there, so the steps come from one side.
double molar_liquid_density(const HelmholtzFluid& fluid, double temperature, double pressure) {
  constexpr int most = 60;
  constexpr double close = 1e-13;
  const double rt = fluid.gas_constant * temperature;
  double density = fluid.densest;
  for (int i = 0; i < most; ++i) {
    const Residual r = residual(fluid, temperature, density);
    const double slope = rt * (1.0 + 2.0 * r.d + r.dd);
    if (!(slope > 0.0)) return undetermined;
    const double step = (pressure - density * rt * (1.0 + r.d)) / slope;
    density += step;
    if (std::abs(step) <= close * density) return density;
  }
  return undetermined;
}

LiquidState state_at(const HelmholtzFluid& fluid, double temperature, double molar_density) {
  const Residual r = residual(fluid, temperature, molar_density);
  const double gas = fluid.gas_constant;
  const double dp_drho = gas * temperature * (1.0 + 2.0 * r.d + r.dd);
  const double dp_dt = gas * molar_density * (1.0 + r.d - r.dt);
  const double cv = gas * (ideal_heat(fluid, temperature) - r.tt);
  const double cp = cv + temperature * square(dp_dt / molar_density) / dp_drho;
  const IsothermalBulkModulus isothermal{molar_density * dp_drho};
  const IsentropicBulkModulus isentropic = isentropic_bulk_modulus(isothermal, cp / cv);
  const double density = molar_density * fluid.molar_mass;
  return {LiquidStatus::ok, density,    dp_dt / isothermal.pascal,       cp / cv,
          isothermal,       isentropic, sound_speed(isentropic, density)};
}

}  // namespace

LiquidState liquid_state(const HelmholtzFluid& fluid, double temperature, double absolute_pressure) {
  const bool within = temperature >= fluid.lowest_temperature && temperature <= highest_temperature &&
                      absolute_pressure > 0.0 && absolute_pressure <= fluid.highest_pressure;
  if (!within) return {LiquidStatus::out_of_range};
  const double density = molar_liquid_density(fluid, temperature, absolute_pressure);
  if (!(density > 2.0 * fluid.reducing_density)) return {LiquidStatus::not_converged};
  return state_at(fluid, temperature, density);
}

double helmholtz_pressure(const HelmholtzFluid& fluid, double temperature, double density) {
  const double molar_density = density / fluid.molar_mass;
  return molar_density * fluid.gas_constant * temperature * (1.0 + residual(fluid, temperature, molar_density).d);
}

}  // namespace forecourse::fuel
