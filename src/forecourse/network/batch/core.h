#pragma once

#include <vector>

#include "forecourse/network/batch/program.h"

namespace forecourse::network {

/// An edge with one end at a fixed pressure, as far as it matters to whether anything flows.
struct RestLevel {
  int control = -1;      ///< as `LaneEdge::control`
  double reached = 0.0;  ///< [Pa] pressure inside up to which it pushes; -infinity if it lets nothing in
  double needed = 0.0;   ///< [Pa] pressure inside from which it lets out; infinity if it does not
};

/// What all workers of a batch share; never changes.
struct BatchCore {
  BatchCore(const PipingSystem& asked, lanes::InstructionSet instructions, const solvers::SteadyOptions& options);

  void find_whether_any_flows();

  const PipingSystem& system;
  solvers::SteadyOptions options;
  RunLaws laws;
  BatchProgram program;
  LaneKernel kernel;
  std::uint64_t hoses = 0;  ///< bits of all hoses
  std::uint64_t pumps = 0;  ///< bits of the pumps that the site lets run
  std::vector<RestLevel> rest;
  bool any_flows = false;      ///< whichever hose is open and whichever pump runs, something flows
  bool rest_is_simple = true;  ///< a law inside drives no flow, and no fixed pressures are joined
};

}  // namespace forecourse::network
