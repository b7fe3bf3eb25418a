#pragma once

#include <vector>

#include "forecourse/network/piping_system.h"

namespace forecourse::network {

/// The law of a run with as few terms as possible, so that a solver asks little. Exact: parts in series at one flow
/// add, and pipes of one bore, roughness and liquid are one pipe of their whole length.
struct GatheredRun {
  struct Other {
    parts::Law law;
    double factor = 1.0;  ///< flow through the part per flow of the run [1]
  };

  double constant = 0.0;              ///< [Pa] at any flow: minus what pumps give at no flow
  parts::QuadraticLaw quadratic;      ///< all that is linear*q + quadratic*q|q|
  std::vector<parts::PipeLaw> pipes;  ///< walls only, per flow of the run
  std::vector<Other> others;          ///< curves, and pumps that are no parabola

  /// \param flow [m3/s] through the run
  /// \return loss [Pa] and slope [Pa s/m3]
  [[nodiscard]] solvers::EdgeLoss loss(double flow) const;
  [[nodiscard]] parts::Loss loss_of_others(double flow) const;
};

/// \param pump_speed  of full speed, of the pumps in the run [1]
[[nodiscard]] GatheredRun gather(const Run& run, double pump_speed = 1.0);

/// Adds one more part in series.
void gather_into(GatheredRun& out, const Element& element, double pump_speed = 1.0);

}  // namespace forecourse::network
