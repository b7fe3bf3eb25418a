#pragma once

#include <variant>
#include <vector>

#include "forecourse/parts/law.h"

namespace forecourse::parts {

/// The ways in which the loss of a filter, meter, breakaway, swivel, nozzle, valve or shear valve is known.
/// Every figure is user input; the project holds none for devices.
struct LossCoefficient {
  double k = 0.0;     ///< velocity heads of `bore` [1], >= 0
  double bore = 0.0;  ///< [m], > 0
};
struct FlowArea {
  double area = 0.0;  ///< Av [m2], > 0, from Cv or Kv by base/flow_coefficient.h
};
struct LossAtFlow {
  double pressure_loss = 0.0;  ///< [Pa], >= 0
  double flow = 0.0;           ///< [m3/s], > 0
};
struct LossPoints {
  std::vector<CurvePoint> points;  ///< flow [m3/s], loss [Pa]
};

/// One of the ways, or the coefficients of linear*q + quadratic*q|q| themselves.
using EnteredLoss = std::variant<LossCoefficient, FlowArea, LossAtFlow, LossPoints, QuadraticLaw>;

/// The law of a device from whatever was entered for it.
///
/// \param entered the figures, SI units [SI]
/// \param density of the liquid [kg/m3], > 0; not used for losses given as pressures
/// \return law [Pa], or the fault of its points.
/// \pre losses given as pressures were taken with this liquid.
/// \error that of the figures entered.
/// \source [tp410, loss = K rho v2 / 2] [isa_75_01, definition of the flow coefficient]
std::variant<Law, CurveFault> entered_law(const EnteredLoss& entered, double density);

}  // namespace forecourse::parts
