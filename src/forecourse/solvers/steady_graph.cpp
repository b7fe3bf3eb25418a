#include "forecourse/solvers/steady_graph.h"

#include <utility>

namespace forecourse::solvers {
namespace {

std::vector<std::pair<int, int>> unknown_pairs(int unknowns, const std::vector<SteadyEdge>& edges) {
  std::vector<std::pair<int, int>> pairs;
  for (const SteadyEdge& edge : edges) {
    if (edge.from < unknowns && edge.to < unknowns) pairs.emplace_back(edge.from, edge.to);
  }
  return pairs;
}

}  // namespace

SteadyGraph::SteadyGraph(int unknowns, std::vector<double> fixed_pressures, std::vector<SteadyEdge> edges)
    : unknowns_(unknowns),
      fixed_pressures_(std::move(fixed_pressures)),
      edges_(std::move(edges)),
      elimination_(static_cast<std::size_t>(unknowns), unknown_pairs(unknowns, edges_)) {
  slots_.reserve(edges_.size());
  for (const SteadyEdge& edge : edges_) {
    const bool inner = is_unknown(edge.from) && is_unknown(edge.to);
    slots_.push_back(inner ? elimination_.slot(edge.from, edge.to) : -1);
  }
}

}  // namespace forecourse::solvers
