#include "forecourse/parts/entered_loss.h"

namespace forecourse::parts {
namespace {

using LawOrFault = std::variant<Law, CurveFault>;

LawOrFault law_of(const LossCoefficient& e, double density) { return from_loss_coefficient(e.k, e.bore, density); }
LawOrFault law_of(const FlowArea& e, double density) { return from_flow_area(e.area, density); }
LawOrFault law_of(const LossAtFlow& e, double) { return from_loss_at_flow(e.pressure_loss, e.flow); }
LawOrFault law_of(const QuadraticLaw& e, double) { return e; }
LawOrFault law_of(const LossPoints& e, double) {
  const auto made = curve_law(e.points);
  if (const auto* fault = std::get_if<CurveFault>(&made)) return *fault;
  return std::get<CurveLaw>(made);
}

}  // namespace

std::variant<Law, CurveFault> entered_law(const EnteredLoss& entered, double density) {
  return std::visit([density](const auto& one) { return law_of(one, density); }, entered);
}

}  // namespace forecourse::parts
