#include "forecourse/studies/flow/course.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "forecourse/base/index.h"
#include "forecourse/site/places.h"

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

/// A height of the pipe, and whether it was entered.
struct Height {
  double elevation = 0.0;
  bool entered = false;
};

/// The groove of a shear valve that belongs to the inlet of this name.
std::optional<double> groove_of(const site::Site* site, const std::string& inlet) {
  if (site == nullptr) return std::nullopt;
  for (const site::Dispenser& d : site->dispensers) {
    for (const site::Inlet& i : d.inlets) {
      if (site::place_name(d, i) != inlet || !i.shear_valve || !i.shear_valve->groove_elevation) continue;
      return i.shear_valve->groove_elevation->likely.si();
    }
  }
  return std::nullopt;
}

/// Tells the way forward, one element after the other.
class Teller {
 public:
  Teller(const PipingSystem& system, const SystemState& state, const site::Site* site)
      : system_(system), state_(state), site_(site) {}

  Course tell(const std::vector<Passed>& way, const network::HosePoint& hose) {
    const int tank = way.front().run->from;
    const double start = elevation_of(system_, tank);
    grade_ = system_.weight_of(start);
    add_point(name_of(system_, tank), {start, system_.elevations_known});
    for (const Passed& passed : way) pass(passed);
    const double end = elevation_of(system_, way.back().run->to);
    add_held(hose, grade_ - system_.weight_of(end));
    course_.budget.push_back({network::ElementKind::nozzle, "lift", hose.id, way.back().flow, 0.0,
                              system_.weight_of(end) - system_.weight_of(start)});
    add_point(hose.id, {end, true});
    return std::move(course_);
  }

 private:
  void pass(const Passed& passed) {
    const Height begin = height_at(passed.backwards ? passed.run->to : passed.run->from);
    const int end = passed.backwards ? passed.run->from : passed.run->to;
    speed_ = network::speed_of_run(system_, state_, static_cast<std::size_t>(passed.run - system_.runs.data()));
    const std::size_t count = passed.run->elements.size();
    const auto element = [&](std::size_t i) -> const network::Element& {
      return passed.run->elements[passed.backwards ? count - 1 - i : i];
    };
    for (std::size_t i = 0; i < count; ++i) {
      add_element(element(i), passed.flow);
      if (!ends_part(*passed.run, i + 1 < count ? &element(i + 1) : nullptr, element(i))) continue;
      add_point(element(i).owner, part_height(*passed.run, element(i), begin, height_at(end)),
                network::word(element(i).kind));
    }
    if (at(end) < system_.places.size()) add_point(system_.places[at(end)].id, height_at(end));
  }

  /// Whether a point is told behind an element: not along a line, not within a part, and not where a place follows,
  /// unless the part has a height of its own.
  static bool ends_part(const Run& run, const network::Element* next, const network::Element& element) {
    if (run.kind == network::RunKind::line) return false;
    if (next == nullptr) return element.kind == network::ElementKind::shear_valve;
    return next->kind != element.kind;
  }

  [[nodiscard]] Height height_at(int node) const {
    if (at(node) >= system_.places.size()) return {elevation_of(system_, node), true};
    return {system_.places[at(node)].elevation, system_.places[at(node)].elevation_entered};
  }

  /// Where a part within a run ends: the pump's parts at its discharge, the tee at the line, the shear valve at its
  /// groove, the rest of a riser at the dispenser's inlet, and what follows at that inlet too.
  [[nodiscard]] Height part_height(const Run& run, const network::Element& element, Height begin, Height end) const {
    if (run.kind == network::RunKind::pump) return end;
    if (run.kind == network::RunKind::hose) return {begin.elevation, false};
    if (element.kind == network::ElementKind::connection) return begin;
    if (element.kind == network::ElementKind::shear_valve || element.kind == network::ElementKind::riser) {
      if (const auto groove = groove_of(site_, element.owner)) return {*groove, true};
    }
    return {end.elevation, false};
  }

  void add_element(const network::Element& element, double flow) {
    const double loss = network::loss(element, flow, speed_).pressure_loss;
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

  void add_point(const std::string& place, Height height, const std::string& part = {}) {
    const double weight = system_.weight_of(1.0);
    course_.grade_line.push_back({place, distance_, height.elevation, grade_ / weight,
                                  grade_ - weight * height.elevation, part, height.entered});
  }

  const PipingSystem& system_;
  const SystemState& state_;
  const site::Site* site_;
  Course course_;
  double speed_ = 1.0;  ///< of the pump of the run, of its full speed [1]
  double grade_ = 0.0;  ///< [Pa] piezometric
  double distance_ = 0.0;
};

}  // namespace

Course course_to(const network::PipingSystem& system, const network::SystemState& state, const network::HosePoint& hose,
                 const site::Site* site) {
  const std::vector<Passed> way = way_to(system, state, hose);
  if (way.empty()) return {};
  return Teller(system, state, site).tell(way, hose);
}

}  // namespace forecourse::studies
