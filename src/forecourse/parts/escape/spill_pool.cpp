#include "forecourse/parts/escape/spill_pool.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"

namespace forecourse::parts {

Pool pool_of(double volume, double film) {
  const double area = volume / film;
  return {.area = area, .radius = std::sqrt(area / std::numbers::pi)};
}

PoolRange pool_between(double volume, Estimate film) {
  return {.smallest = pool_of(volume, film.high), .largest = pool_of(volume, film.low)};
}

double spreading_rate(double depth, double film) {
  return std::sqrt(2.0 * standard_gravity * std::max(depth - film, 0.0));
}

// r dr/dt = sqrt(2 g (V/pi - film r2)), so the root of V/pi - film r2 falls evenly, by film sqrt(2 g) a second.
double spreading_time(double volume, double film) {
  return std::sqrt(volume / std::numbers::pi) / (film * std::sqrt(2.0 * standard_gravity));
}

Pool pool_after(double volume, double film, double since) {
  const Pool last = pool_of(volume, film);
  const double time = spreading_time(volume, film);
  if (since >= time) return last;
  const double done = since / time;
  const double share = done * (2.0 - done);  // of the last area: 1 - (1 - t/T)^2
  return {.area = share * last.area, .radius = std::sqrt(share) * last.radius};
}

double evaporation_rate(const Evaporating& from, double area) {
  // 0.284 / 82.05 of the remembered form, whose units are pounds a minute, square feet, millimeters of mercury and
  // grams a mole.
  constexpr double constant = 2.112619273205343e-6;
  const double grams = 1000.0 * from.molar_mass;
  return constant * std::pow(from.wind, 0.78) * std::pow(grams, 2.0 / 3.0) * area * from.vapor_pressure /
         from.temperature;
}

}  // namespace forecourse::parts
