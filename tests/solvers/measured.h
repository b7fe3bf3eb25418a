#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "forecourse/solvers/steady_graph.h"

namespace forecourse::test {

/// How far a state is from being a solution, found from the laws and the balances alone.
struct Measured {
  double pressure = 0.0;   ///< [Pa] largest fault of an edge's law, or of the side on which a bound may hold
  double imbalance = 0.0;  ///< [m3/s] largest over the unknown nodes
  double passed = 0.0;     ///< [m3/s] largest flow beyond a bound
};

/// A flow this near a bound counts as on it: a thousandth of the imbalance that may be left [m3/s].
inline constexpr double on_bound = 1e-13;

inline double law_fault(const solvers::SteadyEdge& edge, double flow, double held) {
  double fault = std::abs(held);
  if (flow <= edge.lowest + on_bound) fault = std::min(fault, std::max(0.0, held));
  if (flow >= edge.highest - on_bound) fault = std::min(fault, std::max(0.0, -held));
  return fault;
}

inline double passed_bound(const solvers::SteadyEdge& edge, double flow) {
  return std::max({0.0, edge.lowest - flow, flow - edge.highest});
}

/// Uses nothing the solver computed but the pressures and flows it hands back. Where no pressure is held (NaN)
/// nothing may flow, and the laws say nothing.
template <class Laws>
Measured measured(int unknowns, const std::vector<solvers::SteadyEdge>& edges, const Laws& laws,
                  const solvers::SteadyCase& given, const solvers::SteadyState& state) {
  Measured worst;
  std::vector<double> out(state.pressure.size(), 0.0);
  for (std::size_t n = 0; n < given.demand.size(); ++n) out[n] = given.demand[n];
  for (std::size_t e = 0; e < edges.size(); ++e) {
    const double flow = state.flow[e];
    const auto from = static_cast<std::size_t>(edges[e].from), to = static_cast<std::size_t>(edges[e].to);
    out[from] += flow;
    out[to] -= flow;
    if (given.open[e] == 0) {
      worst.passed = std::max(worst.passed, std::abs(flow));
      continue;
    }
    solvers::SteadyEdge edge = edges[e];
    if (!given.highest.empty()) edge.highest = given.highest[e];
    worst.passed = std::max(worst.passed, passed_bound(edge, flow));
    const double held = state.pressure[from] - state.pressure[to] - laws.loss(static_cast<int>(e), flow).loss;
    if (!std::isnan(state.pressure[from]) && !std::isnan(state.pressure[to])) {
      worst.pressure = std::max(worst.pressure, law_fault(edge, flow, held));
    }
  }
  for (std::size_t n = 0; n < static_cast<std::size_t>(unknowns); ++n) {
    worst.imbalance = std::max(worst.imbalance, std::abs(out[n]));
  }
  return worst;
}

}  // namespace forecourse::test
