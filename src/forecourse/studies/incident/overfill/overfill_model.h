#pragma once

#include <array>
#include <span>

#include "forecourse/parts/tank/level_curve.h"
#include "forecourse/solvers/sequence/model.h"
#include "forecourse/studies/incident/overfill/overfill_case.h"

namespace forecourse::studies::overfilling {

namespace seq = solvers::sequence;

/// A drop as a sequence: truck, hose, tank, spill container, slab. See docs/theory/overfill.md.
class Model {
 public:
  enum Compartment { truck, hose, tank, container, slab, compartments_count };
  enum Link { dropping, draining, overflowing, running_over, links_count };
  enum Guard { restricts, closes, alarms, fills, container_full, truck_empty, hose_empty, guards_count };
  enum Flag { restricting, closed, driver_shut, full, spilling_over, empty };
  enum Timed { driver, stopped, wakes };
  enum Kind { shutting, telling };
  enum Cause { drops, drains, overflows, runs_over, spilled };

  /// \pre the case outlives the model
  explicit Model(const Case& given);

  static constexpr int compartments() { return compartments_count; }
  static constexpr int links() { return links_count; }
  static constexpr int auxiliaries() { return 0; }
  static constexpr int guard_count() { return guards_count; }
  [[nodiscard]] static seq::LinkEnds ends(int link);
  [[nodiscard]] static seq::GuardRule guard_rule(int guard);

  void flows(double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const;
  void guards(double t, const seq::SequenceView& v, std::span<const double> q, std::span<double> value) const;
  void on_event(const seq::Event& event, seq::Mutator& m) const;
  [[nodiscard]] seq::SequenceStart start() const;

  /// Flow out of the truck with nothing shut [m3/s]; of a full tank, against the height of its fill.
  [[nodiscard]] double open_flow(double in_truck, double in_tank, bool is_full = false) const;
  [[nodiscard]] double capacity() const { return capacity_; }

 private:
  [[nodiscard]] double drain_flow(double in_tank) const;
  void call_driver(seq::Mutator& m) const;
  void shut_truck(seq::Mutator& m, bool takes_hose_off) const;

  const Case* c_;
  double capacity_;
  parts::LevelCurve level_;
  std::array<double, 3> passed_at_;  ///< [m3] in the tank at which the valve restricts, shuts, and the alarm sounds
};

}  // namespace forecourse::studies::overfilling
