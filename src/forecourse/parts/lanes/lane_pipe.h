#pragma once

namespace forecourse::parts {

/// The law of a pipe's wall as plain data for the code in lanes, which may not call what other files compile.
struct LanePipe {
  static constexpr double laminar_limit = 2000.0;                  ///< as in friction_factor.h
  static constexpr double turbulent_limit = 4000.0;                ///< as in friction_factor.h
  static constexpr double smooth_wall = 2.51;                      ///< as in friction_factor.cpp
  static constexpr double per_logarithm = 0.86858896380650365530;  ///< 2/ln(10)

  double reynolds_per_flow = 0.0;  ///< [s/m3]
  double quadratic = 0.0;          ///< friction loss = factor * quadratic * q|q| [Pa s2/m6]
  double laminar = 0.0;            ///< friction loss = laminar * q below Re 2000 [Pa s/m3]
  double roughness_term = 0.0;     ///< relative roughness / 3.7 [1]
  double transition[4] = {};       ///< factor = c0 + c1 t + c2 t2 + c3 t3, t = (Re - 2000)/2000 [1]
};

/// A step of x no longer than this leaves x exact to rounding (see `PipeLanes`) [1].
inline constexpr double trusted_friction_step = 3e-4;

}  // namespace forecourse::parts
