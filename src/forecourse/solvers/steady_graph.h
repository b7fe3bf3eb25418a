#pragma once

#include <limits>
#include <vector>

#include "forecourse/solvers/elimination.h"

namespace forecourse::solvers {

inline constexpr double unbounded = std::numeric_limits<double>::infinity();

/// One edge of a steady network: flow runs from `from` to `to` where positive.
/// Its law, pressure loss against flow, is asked from the caller's laws by the edge's index.
struct SteadyEdge {
  int from = 0;
  int to = 0;
  double lowest = -unbounded;  ///< [m3/s] 0 for a check valve
  double highest = unbounded;  ///< [m3/s] the flow of a limiter
};

/// Topology of a steady network with the elimination order found once; never changes.
/// Nodes 0 .. unknowns-1 have unknown pressure, the nodes after them a fixed one.
class SteadyGraph {
 public:
  SteadyGraph(int unknowns, std::vector<double> fixed_pressures, std::vector<SteadyEdge> edges);

  [[nodiscard]] int unknowns() const { return unknowns_; }
  [[nodiscard]] int nodes() const { return unknowns_ + static_cast<int>(fixed_pressures_.size()); }
  [[nodiscard]] bool is_unknown(int node) const { return node < unknowns_; }
  [[nodiscard]] const std::vector<double>& fixed_pressures() const { return fixed_pressures_; }
  [[nodiscard]] const std::vector<SteadyEdge>& edges() const { return edges_; }
  [[nodiscard]] const Elimination& elimination() const { return elimination_; }
  /// Slot of each edge's entry below the diagonal; -1 where one end is fixed.
  [[nodiscard]] const std::vector<int>& slots() const { return slots_; }

 private:
  int unknowns_;
  std::vector<double> fixed_pressures_;  ///< [Pa]
  std::vector<SteadyEdge> edges_;
  Elimination elimination_;
  std::vector<int> slots_;
};

/// What one state of the network asks of the solver.
struct SteadyCase {
  std::vector<char> open;       ///< per edge; a closed edge is out of the graph, not a high resistance
  std::vector<double> demand;   ///< [m3/s] per unknown node, taken out there; empty: none
  std::vector<double> highest;  ///< [m3/s] per edge, in place of the edges' own; empty: theirs
};

/// Pressures and flows; in: the start (empty: none), out: the solution.
struct SteadyState {
  std::vector<double> pressure;  ///< [Pa] per node; NaN where no pump and no fixed node holds it
  std::vector<double> flow;      ///< [m3/s] per edge, 0 for closed ones
};

struct SteadyOptions {
  double pressure_tolerance = 1e-5;      ///< [Pa] of each edge's law; 1e-5 Pa is 1.4e-9 m of gasoline
  double flow_tolerance = 1e-12;         ///< [m3/s] of each node's balance
  double slope_floor = 1e3;              ///< [Pa s/m3] least slope in the matrix, never in the residual
  double complementarity_slope = 1.5e9;  ///< [Pa s/m3] ten times the slope of a hose; scales bounds against laws
  double first_flow = 1e-3;              ///< [m3/s] start of every open edge without a start of its own
  int newton_iterations = 20;
  int fallback_iterations = 200;
};

enum class SteadyStatus {
  converged,
  at_rest,        ///< nothing flows: every hose is shut, or no pump can lift to an open one
  no_supply,      ///< nothing holds a pressure: every pump is off
  not_converged,  ///< not usable
};

/// How a solve went. Residuals are measured on the state handed back.
struct SteadyReport {
  SteadyStatus status = SteadyStatus::not_converged;
  int iterations = 0;
  bool fallback_used = false;
  double pressure_residual = 0.0;  ///< [Pa] largest over open edges, bounds counted as complementarity
  double flow_residual = 0.0;      ///< [m3/s] largest imbalance over unknown nodes
  int worst_edge = -1;
  int worst_node = -1;

  [[nodiscard]] bool usable() const { return status != SteadyStatus::not_converged; }
};

/// Pressure loss of an edge and its derivative at one flow.
struct EdgeLoss {
  double loss = 0.0;   ///< [Pa], falling pressure along positive flow; a pump's is negative
  double slope = 0.0;  ///< [Pa s/m3], >= 0
};

}  // namespace forecourse::solvers
