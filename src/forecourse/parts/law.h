#pragma once

#include <variant>

#include "forecourse/parts/curve_law.h"
#include "forecourse/parts/loss.h"
#include "forecourse/parts/minor_loss.h"
#include "forecourse/parts/pipe_friction.h"
#include "forecourse/parts/pump_curve.h"

namespace forecourse::parts {

/// The law of any part of a network: flow in, pressure loss and slope out. A pump's loss is minus its rise.
using Law = std::variant<PipeLaw, QuadraticLaw, CurveLaw, PumpLaw>;

/// Pressure loss and slope of any part.
///
/// \param law  of the part [SI]
/// \param flow [m3/s], either sign
/// \return loss [Pa], slope [Pa s/m3] >= 0; a pump gives minus its rise.
/// \error that of the law.
/// \source common practice, no source
inline Loss loss(const Law& law, double flow) {
  return std::visit([flow](const auto& one) { return loss(one, flow); }, law);
}

/// Flow at which any part loses a given pressure.
///
/// \param law           of the part [SI]
/// \param pressure_loss [Pa]; for a pump minus the rise asked for
/// \return flow [m3/s]; on a flat stretch one of its flows, NaN when no flow up to 1e6 m3/s reaches the pressure.
/// \error rounding of the loss.
/// \source common practice, no source
double flow_at(const Law& law, double pressure_loss);

}  // namespace forecourse::parts
