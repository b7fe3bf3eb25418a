#include "forecourse/network/escape/changed_system.h"

#include <algorithm>
#include <utility>

#include "forecourse/base/index.h"

namespace forecourse::network {
namespace {

void make_graph(PipingSystem& system) {
  std::vector<double> fixed;
  for (const Opening& opening : system.openings) fixed.push_back(system.weight_of(opening.elevation));
  std::vector<solvers::SteadyEdge> edges;
  for (const Run& run : system.runs) edges.push_back({run.from, run.to, run.bounds.lowest, run.bounds.highest});
  system.graph = std::make_shared<solvers::SteadyGraph>(static_cast<int>(system.places.size()), std::move(fixed),
                                                        std::move(edges));
}

/// A standing pump of which nothing is known lets all pass: 1 Pa at 1 L/s, so that the run has a loss at all.
Element free_passage(const std::string& pump) {
  return {ElementKind::pump, pump, parts::QuadraticLaw{0.0, 1e6}, 1.0, 0.0, 0.0, {}};
}

std::vector<Element> parts_of(const Run& run, double share) {
  std::vector<Element> parts;
  for (const Element& element : run.elements) parts.push_back(shortened(element, share));
  return parts;
}

}  // namespace

PipingSystem standing_system(const PipingSystem& system) {
  PipingSystem out = system;
  for (PumpPoint& pump : out.pumps) {
    pump.running = true;
    Run& run = out.runs[at(pump.run)];
    run.bounds = run.bounds & parts::one_way();
    std::vector<Element> elements = pump.standing;
    if (elements.empty()) elements.push_back(free_passage(pump.id));
    for (const Element& element : run.elements) {
      if (element.kind != ElementKind::pump) elements.push_back(element);
    }
    run.elements = std::move(elements);
  }
  make_graph(out);
  return out;
}

bool standing_loss_known(const PipingSystem& system) {
  return std::all_of(system.pumps.begin(), system.pumps.end(), [](const PumpPoint& p) { return !p.standing.empty(); });
}

PipingSystem split_system(const PipingSystem& system, std::size_t run, double along) {
  PipingSystem out = system;
  const int place = static_cast<int>(system.places.size());
  for (Run& each : out.runs) {  // nodes of openings come after one place more
    if (each.from >= place) ++each.from;
    if (each.to >= place) ++each.to;
  }
  Run near = out.runs[run], far = near;
  const Place& from = system.places[at(near.from)];
  const Place& to = system.places[at(near.to)];
  out.places.push_back({near.id, from.elevation + along * (to.elevation - from.elevation),
                        from.elevation_entered && to.elevation_entered});
  near.elements = parts_of(near, along);
  far.elements = parts_of(far, 1.0 - along);
  near.to = far.from = place;
  out.runs[run] = std::move(near);
  out.runs.push_back(std::move(far));
  make_graph(out);
  return out;
}

Element shortened(Element element, double share) {
  element.length *= share;
  auto* pipe = std::get_if<parts::PipeLaw>(&element.law);
  if (pipe == nullptr) return element;
  pipe->quadratic *= share;
  pipe->laminar *= share;
  pipe->fittings.linear *= share;
  pipe->fittings.quadratic *= share;
  return element;
}

}  // namespace forecourse::network
