#pragma once

#include <vector>

#include "forecourse/network/piping_system.h"

namespace forecourse::network {

/// The laws of a system's runs, parts in series gathered so that a solver asks as little as possible:
/// all quadratic losses of a run are one, the other laws stay apart.
class RunLaws {
 public:
  explicit RunLaws(const PipingSystem& system);

  /// \param flow [m3/s] through the run
  /// \return loss [Pa] and slope [Pa s/m3]
  [[nodiscard]] solvers::EdgeLoss loss(int run, double flow) const {
    const Gathered& law = runs_[static_cast<std::size_t>(run)];
    parts::Loss sum = parts::loss(law.quadratic, flow);
    for (const auto& pipe : law.pipes) sum = sum + scaled(parts::loss(pipe.law, pipe.factor * flow), pipe.factor);
    for (const auto& other : law.others) sum = sum + scaled(parts::loss(other.law, other.factor * flow), other.factor);
    return {sum.pressure_loss, sum.slope};
  }

 private:
  template <class L>
  struct Factored {
    L law;
    double factor;
  };
  struct Gathered {
    parts::QuadraticLaw quadratic;
    std::vector<Factored<parts::PipeLaw>> pipes;
    std::vector<Factored<parts::Law>> others;
  };

  static parts::Loss scaled(parts::Loss loss, double factor) { return {loss.pressure_loss, loss.slope * factor}; }
  static Gathered gather(const Run& run);

  std::vector<Gathered> runs_;
};

}  // namespace forecourse::network
