#pragma once

#include <memory>
#include <utility>

#include "forecourse/network/piping_system.h"
#include "solvers/random_network.h"

namespace forecourse::test {

/// An invented network as the piping system that the station's solvers take.
inline network::PipingSystem system_of(const RandomNetwork& from) {
  network::PipingSystem out;
  out.places.resize(static_cast<std::size_t>(from.unknowns));
  out.openings.resize(from.fixed.size());
  for (std::size_t e = 0; e < from.edges.size(); ++e) {
    network::Run run;
    run.from = from.edges[e].from;
    run.to = from.edges[e].to;
    run.bounds = {from.edges[e].lowest, from.edges[e].highest};
    for (const parts::Law& law : from.laws.terms[e]) {
      network::Element element;
      element.law = law;
      run.elements.push_back(std::move(element));
    }
    out.runs.push_back(std::move(run));
  }
  for (const int edge : from.hoses) {
    out.hoses.emplace_back().run = edge;
    out.runs[static_cast<std::size_t>(edge)].kind = network::RunKind::hose;
  }
  for (const int edge : from.pumps) {
    out.pumps.emplace_back().run = edge;
    out.runs[static_cast<std::size_t>(edge)].kind = network::RunKind::pump;
  }
  out.graph = std::make_shared<solvers::SteadyGraph>(from.unknowns, from.fixed, from.edges);
  return out;
}

}  // namespace forecourse::test
