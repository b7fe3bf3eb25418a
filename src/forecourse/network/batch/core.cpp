#include "forecourse/network/batch/core.h"

#include <algorithm>

namespace forecourse::network {
namespace {

std::uint64_t low_bits(std::size_t count) { return count >= 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1; }

/// As `SteadySolver` looks at an edge.
RestLevel rest_level(const solvers::SteadyGraph& graph, const solvers::SteadyEdge& edge, double loss_at_rest) {
  const auto fixed = [&](int node) {
    return graph.fixed_pressures()[static_cast<std::size_t>(node - graph.unknowns())];
  };
  const bool into = graph.is_unknown(edge.to);
  const bool both_ways = edge.lowest < 0.0;
  const double level = into ? fixed(edge.from) - loss_at_rest : fixed(edge.to) + loss_at_rest;
  RestLevel out{.control = -1, .reached = -solvers::unbounded, .needed = solvers::unbounded};
  if (into || both_ways) out.reached = level;
  if (!into || both_ways) out.needed = level;
  return out;
}

}  // namespace

BatchCore::BatchCore(const PipingSystem& asked, lanes::InstructionSet instructions,
                     const solvers::SteadyOptions& wanted)
    : system(asked), options(wanted), laws(asked), program(asked, laws, wanted), kernel(kernel_for(instructions)) {
  const solvers::SteadyGraph& graph = *system.graph;
  hoses = low_bits(system.hoses.size());
  for (std::size_t p = 0; p < system.pumps.size(); ++p) {
    pumps |= std::uint64_t{system.pumps[p].running ? 1U : 0U} << p;
  }
  for (std::size_t e = 0; e < graph.edges().size(); ++e) {
    const solvers::SteadyEdge& edge = graph.edges()[e];
    const double loss = laws.loss(static_cast<int>(e), 0.0).loss;
    const int fixed_ends = (graph.is_unknown(edge.from) ? 0 : 1) + (graph.is_unknown(edge.to) ? 0 : 1);
    if (fixed_ends == 2 || (fixed_ends == 0 && loss != 0.0)) rest_is_simple = false;
    if (fixed_ends != 1) continue;
    rest.push_back(rest_level(graph, edge, loss));
    rest.back().control = program.view().graph.edge[e].control;
  }
  find_whether_any_flows();
}

/// True where even the weakest pump lifts to the highest hose.
void BatchCore::find_whether_any_flows() {
  double reached = solvers::unbounded, needed = -solvers::unbounded;
  for (const RestLevel& level : rest) {
    if (level.control >= pump_controls) {
      reached = std::min(reached, level.reached);
    } else if (level.control >= 0) {
      needed = std::max(needed, level.needed);
    }
  }
  any_flows = reached > needed;
}

}  // namespace forecourse::network
