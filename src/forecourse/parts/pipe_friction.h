#pragma once

#include "forecourse/parts/friction_factor.h"
#include "forecourse/parts/loss.h"
#include "forecourse/parts/minor_loss.h"

namespace forecourse::parts {

/// A straight run of round pipe and the liquid in it.
struct Pipe {
  double length = 0.0;             ///< [m], >= 0
  double inside_diameter = 0.0;    ///< [m], > 0
  double roughness = 0.0;          ///< mean height of the wall's roughness [m], 0 to 5 % of the bore
  double density = 0.0;            ///< [kg/m3], > 0
  double dynamic_viscosity = 0.0;  ///< [Pa s], > 0
};

/// A pipe made ready for a solver: wall friction, and the fittings of the run as a quadratic law.
struct PipeLaw {
  double reynolds_per_flow = 0.0;  ///< Re = reynolds_per_flow |q| [s/m3]
  double quadratic = 0.0;          ///< friction loss = factor * quadratic * q|q| [Pa s2/m6]
  double laminar = 0.0;            ///< friction loss = laminar * q below Re 2000 [Pa s/m3]
  FrictionLaw friction;            ///< constants of the friction factor
  QuadraticLaw fittings;           ///< fittings passed by the same flow

  friend bool operator==(const PipeLaw&, const PipeLaw&) = default;
};

/// Makes the law of a pipe; done once, then `loss` is called as often as needed.
///
/// \param pipe     geometry [m] and liquid [kg/m3], [Pa s]
/// \param fittings loss of its fittings [Pa s/m3], [Pa s2/m6]; none when left out
/// \return the law, in SI units [SI].
/// \pre full pipe, developed flow, no gas.
/// \error see `friction`.
/// \source [colebrook_1939, the transition law] with Darcy-Weisbach. See docs/theory/pipe-friction.md.
PipeLaw pipe_law(const Pipe& pipe, const QuadraticLaw& fittings = {});

/// Pressure loss and slope of a pipe: odd in flow, linear through zero, slope continuous.
///
/// \param law  from `pipe_law` [SI]
/// \param flow [m3/s], either sign
/// \return loss [Pa], slope [Pa s/m3] by implicit differentiation; NaN in, NaN out.
/// \error see `friction`.
/// \source [colebrook_1939, the transition law] with Darcy-Weisbach.
Loss loss(const PipeLaw& law, double flow);

/// Flow that loses a given pressure in a pipe.
///
/// \param law           from `pipe_law` [SI]
/// \param pressure_loss [Pa], either sign
/// \return flow [m3/s], same sign; infinite with neither length nor fittings.
///         Explicit outside Re 2000 to 4000 when there are no fittings, else iterated.
/// \error rounding only: `loss` of the answer gives the pressure back to about 1e-13.
/// \source [colebrook_1939, the transition law] solved for the flow.
double flow_at(const PipeLaw& law, double pressure_loss);

/// `loss` of a pipe used once; see `pipe_law`.
///
/// \param pipe geometry [m] and liquid [kg/m3], [Pa s]
/// \param flow [m3/s], either sign
/// \return loss [Pa], slope [Pa s/m3].
/// \error see `friction`.
/// \source [colebrook_1939, the transition law] with Darcy-Weisbach.
Loss pipe_loss(const Pipe& pipe, double flow);

/// `flow_at` of a pipe used once; see `pipe_law`.
///
/// \param pipe          geometry [m] and liquid [kg/m3], [Pa s]
/// \param pressure_loss [Pa], either sign
/// \return flow [m3/s].
/// \error see `flow_at`.
/// \source [colebrook_1939, the transition law] solved for the flow.
double pipe_flow(const Pipe& pipe, double pressure_loss);

}  // namespace forecourse::parts
