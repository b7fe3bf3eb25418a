#pragma once

#include "forecourse/site/entered.h"

namespace forecourse::site {

/// One point of a viscosity that was measured at several temperatures.
struct ViscosityPoint {
  Temperature temperature;
  KinematicViscosity viscosity;
};

/// A fuel that the station sells. Every property can be entered; what is not comes from `kind`.
struct Product {
  Name id;
  SourceSpan where{};
  Name kind;                          ///< one of `product_kinds` (product_kinds.h)
  Maybe<Density> density;             ///< at `density_at`; without it, at the flowing temperature
  Maybe<Temperature> density_at;      ///< temperature at which `density` was read
  Maybe<Density> gravity;             ///< entered as degAPI at 60 degF; held as density there
  Maybe<DynamicViscosity> viscosity;  ///< at the flowing temperature
  Maybe<KinematicViscosity> kinematic_viscosity;
  std::vector<ViscosityPoint> viscosity_points;  ///< rising in temperature; ASTM D341 through the first and the last
  Maybe<Temperature> temperature;                ///< flowing temperature; without it the site's ground temperature
  Maybe<AbsolutePressure> reid_vapor_pressure;   ///< at 100 degF
  Maybe<AbsolutePressure> true_vapor_pressure;   ///< at the flowing temperature
  Maybe<double> vapor_molar_mass;                ///< of its vapor [g/mol]
  Maybe<Modulus> isothermal_bulk_modulus;
  Maybe<Modulus> isentropic_bulk_modulus;
  Maybe<Expansion> expansion;
  Maybe<SpecificHeat> specific_heat;
  Maybe<Ratio> ethanol;    ///< share by volume
  Maybe<Ratio> biodiesel;  ///< share by volume
};

}  // namespace forecourse::site
