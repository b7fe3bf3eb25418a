#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/lanes/instruction_set.h"
#include "forecourse/network/piping_system.h"
#include "forecourse/solvers/steady_graph.h"

namespace forecourse::network {

/// One state asked of a system: a bit for each of its hoses that is open and each of its pumps that runs.
struct BatchCase {
  std::uint64_t hoses = 0;
  std::uint64_t pumps = ~std::uint64_t{0};  ///< a pump that the site says is off stays off
};

/// Solved states in the order asked.
struct BatchStates {
  std::size_t runs = 0;
  std::size_t nodes = 0;
  std::vector<double> flow;                   ///< [m3/s] states x runs; 0 for a closed hose
  std::vector<double> pressure;               ///< [Pa] piezometric, states x nodes; NaN where nothing holds it
  std::vector<solvers::SteadyStatus> status;  ///< per state

  [[nodiscard]] std::size_t size() const { return status.size(); }
  [[nodiscard]] double flow_of(std::size_t state, std::size_t run) const { return flow[state * runs + run]; }
  [[nodiscard]] double pressure_of(std::size_t state, std::size_t node) const { return pressure[state * nodes + node]; }
};

/// How a batch went.
struct BatchCounts {
  std::size_t by_scalar = 0;  ///< states that did not settle in lanes and were solved one by one
  std::size_t blocks = 0;     ///< of lanes
  std::size_t steps = 0;      ///< Newton steps, all blocks
};

/// Many states of one system, several at once in the lanes of the processor's vector registers.
///
/// Each state is accepted by the tests of the scalar solver; one that does not settle in a few steps goes to that
/// solver. Pumps run at full speed, on or off; demand and further caps on hoses are for the scalar solver.
/// Answers are the same for any number of threads. They depend on the instruction set within what is accepted.
/// See docs/theory/steady-network.md.
class BatchSolver {
 public:
  using Tell = std::function<void(std::span<const BatchCase>, const BatchStates&)>;

  /// \pre the system has a graph, at most 64 hoses and 64 pumps, and outlives this
  explicit BatchSolver(const PipingSystem& system, lanes::InstructionSet instructions = lanes::widest_instruction_set(),
                       const solvers::SteadyOptions& options = {});

  /// Where the context is cancelled, states not yet solved are `not_converged`.
  BatchCounts solve(std::span<const BatchCase> cases, BatchStates& out, const Context& context = {}) const;

  /// Every set of open hoses, in an order that is always the same: those of one block differ in three hoses, and from
  /// block to block one more opens or shuts. Ends early where the context is cancelled.
  /// \param tell    called for each chunk in turn, on the caller's thread
  /// \param counts  how it went, if asked for
  /// \pre at most 30 hoses
  void solve_all(std::uint64_t pumps, const Tell& tell, const Context& context = {},
                 BatchCounts* counts = nullptr) const;

 private:
  struct Core;
  std::shared_ptr<const Core> core_;
};

}  // namespace forecourse::network
