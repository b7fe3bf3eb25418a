#include "forecourse/studies/flow/course.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::Run;
using network::SystemState;

/// A run as passed on the way to the hose: backwards where its flow is negative.
struct Passed {
  const Run* run = nullptr;
  double flow = 0.0;  ///< >= 0 along the way
  bool backwards = false;
};

std::size_t at(int i) { return static_cast<std::size_t>(i); }

double elevation_of(const PipingSystem& system, int node) {
  const std::size_t places = system.places.size();
  return at(node) < places ? system.places[at(node)].elevation : system.openings[at(node) - places].elevation;
}

std::string name_of(const PipingSystem& system, int node) {
  const std::size_t places = system.places.size();
  return at(node) < places ? system.places[at(node)].id : system.openings[at(node) - places].id;
}

/// The run that brings most into a node.
Passed strongest_inflow(const PipingSystem& system, const SystemState& state, int node) {
  Passed best;
  for (std::size_t r = 0; r < system.runs.size(); ++r) {
    const Run& run = system.runs[r];
    const bool forward = run.to == node && state.flow[r] > best.flow;
    const bool backward = run.from == node && -state.flow[r] > best.flow;
    if (forward || backward) best = {&run, std::abs(state.flow[r]), backward};
  }
  return best;
}

std::vector<Passed> way_to(const PipingSystem& system, const SystemState& state, const network::HosePoint& hose) {
  const Run& last = system.runs[at(hose.run)];
  if (!(state.flow[at(hose.run)] > 0.0)) return {};
  std::vector<Passed> way{{&last, state.flow[at(hose.run)], false}};
  int node = last.from;
  while (at(node) < system.places.size() && way.size() <= system.runs.size()) {
    const Passed next = strongest_inflow(system, state, node);
    if (next.run == nullptr) return {};
    way.push_back(next);
    node = next.backwards ? next.run->to : next.run->from;
  }
  std::reverse(way.begin(), way.end());
  return way;
}

double velocity(const network::Element& element, double flow) {
  if (element.bore <= 0.0) return 0.0;
  return element.flow_factor * flow / (0.25 * std::numbers::pi * element.bore * element.bore);
}

/// Tells the way forward, one element after the other.
class Teller {
 public:
  Teller(const PipingSystem& system, const SystemState& state) : system_(system), state_(state) {}

  Course tell(const std::vector<Passed>& way, const network::HosePoint& hose) {
    const int tank = way.front().run->from;
    const double start = elevation_of(system_, tank);
    grade_ = system_.weight_of(start);
    add_point(name_of(system_, tank), start);
    for (const Passed& passed : way) pass(passed);
    const double end = elevation_of(system_, way.back().run->to);
    add_held(hose, grade_ - system_.weight_of(end));
    course_.budget.push_back({network::ElementKind::nozzle, "lift", hose.id, way.back().flow, 0.0,
                              system_.weight_of(end) - system_.weight_of(start)});
    add_point(hose.id, end);
    return std::move(course_);
  }

 private:
  void pass(const Passed& passed) {
    const int end = passed.backwards ? passed.run->from : passed.run->to;
    const std::size_t count = passed.run->elements.size();
    for (std::size_t i = 0; i < count; ++i) {
      add_element(passed.run->elements[passed.backwards ? count - 1 - i : i], passed.flow);
    }
    if (at(end) < system_.places.size()) add_point(system_.places[at(end)].id, system_.places[at(end)].elevation);
  }

  void add_element(const network::Element& element, double flow) {
    const double loss = network::loss(element, flow).pressure_loss;
    course_.budget.push_back({element.kind, network::word(element.kind), element.owner, element.flow_factor * flow,
                              velocity(element, flow), loss});
    grade_ -= loss;
    distance_ += element.length;
  }

  /// What the limiter, or the valve that keeps a blend's share, takes up.
  void add_held(const network::HosePoint& hose, double held) {
    const double least = 1e-3;  // [Pa] far above the solver's residual, far below what a gauge shows
    if (std::abs(held) < least) return;
    const bool limiter = state_.flow[at(hose.run)] >= hose.limit * hose.share * (1.0 - 1e-9);
    course_.budget.push_back({network::ElementKind::control_valve, limiter ? "limiter" : "blend valve", hose.id,
                              state_.flow[at(hose.run)], 0.0, held});
    grade_ -= held;
  }

  void add_point(const std::string& place, double elevation) {
    const double weight = system_.weight_of(1.0);
    course_.grade_line.push_back({place, distance_, elevation, grade_ / weight, grade_ - weight * elevation});
  }

  const PipingSystem& system_;
  const SystemState& state_;
  Course course_;
  double grade_ = 0.0;  ///< [Pa] piezometric
  double distance_ = 0.0;
};

}  // namespace

Course course_to(const network::PipingSystem& system, const network::SystemState& state,
                 const network::HosePoint& hose) {
  const std::vector<Passed> way = way_to(system, state, hose);
  if (way.empty()) return {};
  return Teller(system, state).tell(way, hose);
}

}  // namespace forecourse::studies
