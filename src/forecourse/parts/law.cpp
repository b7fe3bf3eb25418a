#include "forecourse/parts/law.h"

#include "forecourse/parts/inverse.h"

namespace forecourse::parts {

double flow_at(const Law& law, double pressure_loss) {
  if (const auto* pipe = std::get_if<PipeLaw>(&law)) return flow_at(*pipe, pressure_loss);
  if (const auto* part = std::get_if<QuadraticLaw>(&law)) return flow_at(*part, pressure_loss);
  return flow_anywhere([&law](double flow) { return loss(law, flow); }, pressure_loss);
}

}  // namespace forecourse::parts
