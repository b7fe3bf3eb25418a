#include "forecourse/studies/flow/spans/set_flows.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/index.h"
#include "forecourse/network/build.h"

namespace forecourse::studies {
namespace {

using network::HosePoint;
using network::PipingSystem;
using network::SystemState;

/// What is left between both ends of a hose's run when its parts have taken theirs.
double spare_of(const PipingSystem& system, const SystemState& state, const HosePoint& hose) {
  const network::Run& run = system.runs[at(hose.run)];
  double left = state.pressure[at(run.from)] - state.pressure[at(run.to)];
  for (const network::Element& element : run.elements) {
    left -= network::loss(element, state.flow[at(hose.run)]).pressure_loss;
  }
  return left;
}

/// Adds what one system gives to its open hoses; a blended hose has the least to spare of its products.
void add_gives(const PipingSystem& system, const SystemState& state, std::map<std::string, Give>& hoses,
               std::map<std::string, double>& shares) {
  for (const HosePoint& hose : system.hoses) {
    if (state.open[at(hose.run)] == 0) continue;
    const double spare = spare_of(system, state, hose);
    auto [known, fresh] = hoses.emplace(hose.id, Give{0.0, spare});
    known->second.flow += state.flow[at(hose.run)];
    known->second.spare = fresh ? spare : std::min(known->second.spare, spare);
    shares[hose.id] += hose.share;
  }
}

std::optional<SpanFlows> flows_of(const PipingSystem& system, const SystemState& state) {
  SpanFlows out;
  bool any = false;
  for (const HosePoint& hose : system.hoses) {
    if (state.open[at(hose.run)] == 0) continue;
    const double flow = state.flow[at(hose.run)] / hose.share;
    if (!any || flow < out.slowest) {
      out.slowest = flow;
      out.slowest_hose = hose.id;
    }
    if (!any || flow > out.fastest) {
      out.fastest = flow;
      out.fastest_hose = hose.id;
    }
    any = true;
  }
  for (const network::PumpPoint& pump : system.pumps) out.total += state.flow[at(pump.run)];
  return any ? std::optional(out) : std::nullopt;
}

SetFlows told(const network::StationNetwork& network, const network::StationState& solved) {
  SetFlows out;
  std::map<std::string, double> shares;
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    const PipingSystem& system = network.systems[s];
    out.systems.push_back({std::nullopt, system.fluid});
    if (!system.graph || !solved.systems[s].report.usable() || !solved.blends_agree) continue;
    add_gives(system, solved.systems[s], out.hoses, shares);
    out.systems.back().flows = flows_of(system, solved.systems[s]);
  }
  constexpr double rounding = 1e-6;
  std::erase_if(out.hoses, [&](const auto& hose) { return std::abs(shares.at(hose.first) - 1.0) > rounding; });
  return out;
}

}  // namespace

bool gives_less(const Give& a, const Give& b) {
  constexpr double same_flow = 1e-9;   // relative, and of 1 mL/s: the solver's own agreement
  constexpr double same_spare = 1e-2;  // [Pa] far above the solver's residual, far below what moves a flow
  const double difference = a.flow - b.flow;
  if (std::abs(difference) > same_flow * std::max({std::abs(a.flow), std::abs(b.flow), 1e-6})) return difference < 0.0;
  return a.spare < b.spare - same_spare;
}

std::vector<SetFlows> solve_sets(const network::StationNetwork& network, network::StationSolver& solver,
                                 const HoseSets& sets) {
  std::vector<SetFlows> out;
  for (const auto& hoses : sets) out.push_back(told(network, solver.solve(hoses)));
  return out;
}

std::vector<SetFlows> solve_sets(const site::Site& site, const HoseSets& sets) {
  const network::StationNetwork network = network::build_network(site);
  network::StationSolver solver(network);
  return solve_sets(network, solver, sets);
}

}  // namespace forecourse::studies
