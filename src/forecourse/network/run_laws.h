#pragma once

#include <vector>

#include "forecourse/network/gathered_run.h"

namespace forecourse::network {

/// The laws of a system's runs as a solver asks for them, parts in series gathered.
class RunLaws {
 public:
  /// \pre the system outlives this
  explicit RunLaws(const PipingSystem& system);

  /// Lets the pump of a run turn at a share of its full speed from now on [1]; at first all turn at full speed.
  void set_speed(int run, double speed);

  /// \param flow [m3/s] through the run
  /// \return loss [Pa] and slope [Pa s/m3]
  [[nodiscard]] solvers::EdgeLoss loss(int run, double flow) const {
    return runs_[static_cast<std::size_t>(run)].loss(flow);
  }

  [[nodiscard]] const std::vector<GatheredRun>& runs() const { return runs_; }

 private:
  const PipingSystem* system_;
  std::vector<GatheredRun> runs_;
  std::vector<double> speeds_;  ///< per run [1]
};

}  // namespace forecourse::network
