#pragma once

#include <vector>

#include "forecourse/network/run_laws.h"
#include "forecourse/solvers/lanes/lane_graph.h"
#include "forecourse/solvers/steady.h"

namespace forecourse::network {

/// Points where solves in lanes start, one for each of a few numbers of open hoses: the mean of states in which as many
/// hoses are open, evenly spread over the station.
class BatchStarts {
 public:
  BatchStarts(const PipingSystem& system, const RunLaws& laws, const solvers::SteadyOptions& options);

  /// The start that lies nearest.
  [[nodiscard]] solvers::LaneStart nearest(int open_hoses) const;

 private:
  struct Start {
    std::vector<double> flow, conductance, offset, pressure, friction;
  };
  [[nodiscard]] Start mean_state(const PipingSystem& system, const RunLaws& laws, std::size_t open_hoses) const;
  void linearize(const solvers::SteadyGraph& graph, const RunLaws& laws, Start& start) const;

  solvers::SteadyOptions options_;
  std::vector<Start> starts_;
  int hoses_ = 0;
};

}  // namespace forecourse::network
