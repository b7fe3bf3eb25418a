#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "forecourse/base/constants.h"

namespace forecourse::test::textbook {

/// Laws written down a second time, without a line of the program: the energy equation along a pipe.
/// SOURCE: [tp410, Darcy-Weisbach loss, resistance coefficients, exit loss]; Colebrook's equation for the friction.
struct Liquid {
  double density = 750.0;     ///< [kg/m3]
  double viscosity = 0.6e-3;  ///< [Pa s]
};

inline double area(double bore) { return 0.25 * std::numbers::pi * bore * bore; }

inline double friction(double reynolds, double relative_roughness) {
  if (reynolds < 2300.0) return 64.0 / std::max(reynolds, 1e-9);
  double f = 0.02;
  for (int i = 0; i < 25; ++i) {
    f = std::pow(-2.0 * std::log10(relative_roughness / 3.7 + 2.51 / (reynolds * std::sqrt(f))), -2.0);
  }
  return f;
}

/// Loss of a pipe with K velocity heads of fittings [Pa].
inline double pipe(const Liquid& liquid, double flow, double length, double bore, double fittings,
                   double roughness = 5e-5) {
  if (!(flow > 0.0)) return 0.0;
  const double v = flow / area(bore);
  const double f = friction(liquid.density * v * bore / liquid.viscosity, roughness / bore);
  return (f * length / bore + fittings) * 0.5 * liquid.density * v * v;
}

/// A pump whose rise falls with the square of its flow [Pa].
inline double pump(double flow, double shutoff, double run_out) {
  return shutoff * (1.0 - flow * flow / (run_out * run_out));
}

inline double head(const Liquid& liquid, double meters) { return liquid.density * standard_gravity * meters; }

/// Root of a falling function.
inline double root(const std::function<double(double)>& left, double low, double high) {
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (left(middle) > 0.0 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

inline constexpr double liter_per_minute = 1e-3 / 60.0;  ///< [m3/s]

}  // namespace forecourse::test::textbook
