#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include "forecourse/solvers/sequence/laws.h"
#include "forecourse/solvers/sequence/stepper.h"

namespace forecourse::test {

namespace seq = solvers::sequence;

/// A model put together from functions, for tests. (The stepper asks for no virtual call; a test may.)
struct ModelOf {
  using Flows = std::function<void(double, const seq::SequenceView&, std::span<double>, std::span<double>)>;
  using Guards = std::function<void(double, const seq::SequenceView&, std::span<double>)>;
  using OnEvent = std::function<void(const seq::Event&, seq::Mutator&)>;

  int count = 0;
  std::vector<seq::LinkEnds> link_ends;
  int auxiliary_count = 0;
  std::vector<seq::GuardRule> rules;
  Flows law;
  Guards guard_law = [](auto&&...) {};
  OnEvent event_law = [](auto&&...) {};

  [[nodiscard]] int compartments() const { return count; }
  [[nodiscard]] int links() const { return static_cast<int>(link_ends.size()); }
  [[nodiscard]] int auxiliaries() const { return auxiliary_count; }
  [[nodiscard]] int guard_count() const { return static_cast<int>(rules.size()); }
  [[nodiscard]] seq::LinkEnds ends(int i) const { return link_ends[static_cast<std::size_t>(i)]; }
  [[nodiscard]] seq::GuardRule guard_rule(int i) const { return rules[static_cast<std::size_t>(i)]; }
  void flows(double t, const seq::SequenceView& v, std::span<double> q, std::span<double> r) const { law(t, v, q, r); }
  void guards(double t, const seq::SequenceView& v, std::span<const double> /*q*/, std::span<double> value) const {
    guard_law(t, v, value);
  }
  void on_event(const seq::Event& e, seq::Mutator& m) const { event_law(e, m); }
};

/// An upright tank that empties through a hole: q = constant sqrt(amount), shut when `rest` is left.
inline ModelOf draining_tank(double constant, double rest) {
  ModelOf model;
  model.count = 2;
  model.link_ends = {{0, 1}};
  model.rules = {{seq::Crossing::falling, 0, 0.0, true}};
  model.law = [constant](double, const auto& v, auto q, auto) {
    q[0] = constant * std::sqrt(std::max(0.0, v.amounts[0]));
  };
  model.guard_law = [rest](double, const auto& v, auto value) { value[0] = v.amounts[0] - rest; };
  model.event_law = [](const auto& event, auto& m) {
    if (event.source == seq::EventSource::guard) m.close(0);
  };
  return model;
}

/// Two upright tanks joined low: q = constant sqrt(difference of heights), smoothed.
inline ModelOf joined_tanks(double constant, double area0, double area1, double soft) {
  ModelOf model;
  model.count = 2;
  model.link_ends = {{0, 1}};
  model.law = [=](double, const auto& v, auto q, auto) {
    q[0] = constant * seq::regularized_root(v.amounts[0] / area0 - v.amounts[1] / area1, soft);
  };
  return model;
}

/// A tank filled at a rate, which a pump empties between two levels; hysteresis by two guards.
inline ModelOf pumped_sump(double inflow, double pump, double high, double low) {
  ModelOf model;
  model.count = 3;
  model.link_ends = {{0, 1}, {1, 2}};
  model.rules = {{seq::Crossing::rising, 0}, {seq::Crossing::falling, 0}};
  model.law = [=](double t, const auto& v, auto q, auto) {
    q[0] = inflow * (1.0 + 0.5 * std::sin(0.05 * t));
    q[1] = v.flag(0) ? pump * std::sqrt(std::max(0.0, v.amounts[1])) : 0.0;
  };
  model.guard_law = [=](double, const auto& v, auto value) {
    value[0] = v.amounts[1] - high;
    value[1] = v.amounts[1] - low;
  };
  model.event_law = [](const auto& event, auto& m) { m.set_flag(0, event.id == 0); };
  return model;
}

/// A ball that bounces with a share of its speed; height and speed are auxiliaries.
inline ModelOf bouncing_ball(double restitution, int most) {
  ModelOf model;
  model.count = 1;
  model.auxiliary_count = 2;
  model.rules = {{seq::Crossing::falling}};
  model.law = [](double, const auto& v, auto, auto rate) {
    rate[0] = v.auxiliaries[1];
    rate[1] = -9.80665;
  };
  model.guard_law = [](double, const auto& v, auto value) { value[0] = v.auxiliaries[0]; };
  model.event_law = [=](const auto&, auto& m) {
    m.set_auxiliary(1, -restitution * m.view().auxiliaries[1]);
    m.set_mark(0, m.mark(0) + 1.0);
    if (m.mark(0) >= most) m.stop(1);
  };
  return model;
}

}  // namespace forecourse::test
