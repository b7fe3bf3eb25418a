#include "forecourse/network/run_laws.h"

namespace forecourse::network {

RunLaws::RunLaws(const PipingSystem& system) {
  runs_.reserve(system.runs.size());
  for (const Run& run : system.runs) runs_.push_back(gather(run));
}

RunLaws::Gathered RunLaws::gather(const Run& run) {
  Gathered out;
  for (const Element& element : run.elements) {
    const double factor = element.flow_factor;
    if (const auto* quadratic = std::get_if<parts::QuadraticLaw>(&element.law)) {
      out.quadratic =
          out.quadratic + parts::QuadraticLaw{quadratic->linear * factor, quadratic->quadratic * factor * factor};
    } else if (const auto* pipe = std::get_if<parts::PipeLaw>(&element.law)) {
      out.pipes.push_back({*pipe, factor});
    } else {
      out.others.push_back({element.law, factor});
    }
  }
  return out;
}

}  // namespace forecourse::network
