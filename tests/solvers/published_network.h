#pragma once

#include <cstddef>
#include <numbers>
#include <string>
#include <vector>

#include "forecourse/base/constants.h"
#include "solvers/random_network.h"

namespace forecourse::test {

/// A network written down node by node, as textbooks print them. Pressures are piezometric.
/// The nodes of unknown pressure come first, then the reservoirs.
struct PublishedNetwork {
  double density = 0.0;            ///< [kg/m3]
  int unknowns = 0;                ///< nodes of unknown pressure
  std::vector<double> reservoirs;  ///< [Pa] piezometric pressure of each
  std::vector<double> demand;      ///< [m3/s] per unknown node, negative for an inflow
  std::vector<solvers::SteadyEdge> edges;
  SeriesLaws laws;

  [[nodiscard]] double pressure_of_head(double head) const { return density * standard_gravity * head; }
  [[nodiscard]] double head_of_pressure(double pressure) const { return pressure / (density * standard_gravity); }
  [[nodiscard]] int reservoir(int i) const { return unknowns + i; }

  void join(int from, int to, std::vector<parts::Law> terms, double lowest = -solvers::unbounded) {
    edges.push_back({from, to, lowest, solvers::unbounded});
    laws.terms.push_back(std::move(terms));
  }

  /// The solution; the caller looks at `report` first.
  struct Solution {
    solvers::SteadyReport report;
    solvers::SteadyState state;
  };
  [[nodiscard]] Solution solve() const {
    const solvers::SteadyGraph graph(unknowns, reservoirs, edges);
    solvers::SteadySolver solver(graph, laws);
    Solution solution;
    solution.report = solver.solve({std::vector<char>(edges.size(), 1), demand, {}}, solution.state);
    return solution;
  }
};

inline double bore_area(double bore) { return std::numbers::pi / 4.0 * bore * bore; }

}  // namespace forecourse::test
