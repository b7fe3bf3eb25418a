#pragma once

#include "forecourse/parts/escape/estimate.h"

namespace forecourse::parts {

/// Liquid that lies on a flat slab. See docs/theory/spill-pool.md.
struct Pool {
  double area = 0.0;    ///< [m2]
  double radius = 0.0;  ///< of the circle of that area [m]
};

/// The smallest and the largest pool that a range of film thickness leaves open.
struct PoolRange {
  Pool smallest;  ///< with the thick film
  Pool largest;   ///< with the thin film
};

/// Thickness of fuel lying on a slab where the user gives none [m]: illustrative, not measured. It depends on the
/// roughness and the hollows of the slab.
/// \source illustrative, no source
inline constexpr Estimate illustrative_film{.low = 0.7e-3, .high = 5e-3};

/// Pool of a volume that has spread to a film.
/// \param volume [m3], >= 0
/// \param film   mean thickness [m], > 0
/// \return area [m2], radius [m]. On a slope the area is the same, but long in the direction of the fall and wherever
///         the slab's joints and drains lead it: how long is not told here.
/// \error that of the film: it may be several times thinner or thicker than a guess.
/// \source closed form
[[nodiscard]] Pool pool_of(double volume, double film);

/// Pools of a volume for a range of film thickness.
/// \param volume [m3], >= 0
/// \param film   [m], low > 0
/// \return areas [m2], radii [m].
/// \error as wide as the range of the film.
/// \source closed form
[[nodiscard]] PoolRange pool_between(double volume, Estimate film);

/// Speed at which the edge of a round pool moves out under its own weight: sqrt(2 g (depth - film)).
/// \param depth mean depth of the pool [m]
/// \param film  thickness at which it lies still [m], >= 0
/// \return speed [m/s], 0 once the pool is no deeper than the film.
/// \pre flat slab, no drain, no viscosity; slower in truth as the pool thins.
/// \error an order of magnitude.
/// \source common practice, no source
[[nodiscard]] double spreading_rate(double depth, double film);

/// Time for a volume set down at one point to spread to its film.
/// \param volume [m3], >= 0
/// \param film   [m], > 0
/// \return time [s], the integral of `spreading_rate` from radius 0.
/// \error an order of magnitude.
/// \source closed form
[[nodiscard]] double spreading_time(double volume, double film);

/// Pool of a volume set down at one point, some time later.
/// \param volume [m3], >= 0
/// \param film   [m], > 0
/// \param since  [s], >= 0
/// \return area [m2], radius [m], those of `pool_of` from `spreading_time` on.
/// \error an order of magnitude.
/// \source closed form
[[nodiscard]] Pool pool_after(double volume, double film, double since);

/// What decides how fast a pool evaporates.
struct Evaporating {
  double wind = 0.0;            ///< at 10 m [m/s], > 0
  double molar_mass = 0.0;      ///< of the vapor [kg/mol], > 0
  double vapor_pressure = 0.0;  ///< at the pool's temperature [Pa], >= 0
  double temperature = 0.0;     ///< of the pool [K], > 0
};

/// Mass that evaporates from a pool.
///
/// The constant is recalled from a guidance text for risk plans, not verified; an older text has a
/// constant 2.7 times smaller. The vapor pressure of a blend falls as its light ends leave: this is the first rate.
/// \param from wind [m/s], molar mass [kg/mol], vapor pressure [Pa], temperature [K]
/// \param area of the pool [m2], >= 0
/// \return rate [kg/s].
/// \pre the pool keeps its temperature, vapor pressure well below that of the air, some wind.
/// \error an order of magnitude.
/// \source from memory, not verified
[[nodiscard]] double evaporation_rate(const Evaporating& from, double area);

}  // namespace forecourse::parts
