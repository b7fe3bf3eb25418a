#include "forecourse/studies/incident/overfill/overfill_model.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/constants.h"

namespace forecourse::studies::overfilling {
namespace {

constexpr double rest = 1e-6;  ///< [m3] at which a truck or hose counts as empty

}  // namespace

seq::LinkEnds Model::ends(int link) {
  switch (link) {
    case dropping:
      return {truck, tank};
    case draining:
      return {hose, tank};
    case overflowing:
      return {tank, container};
    default:
      return {container, slab};
  }
}

seq::GuardRule Model::guard_rule(int guard) {
  const bool falls = guard == truck_empty || guard == hose_empty;
  const int kind = guard == restricts || guard == closes ? shutting : telling;
  return {falls ? seq::Crossing::falling : seq::Crossing::rising, kind, 0.0, true, guard != hose_empty};
}

double Model::open_flow(double in_truck, double in_tank) const {
  if (c_->rate > 0.0) return c_->rate;
  const double above = c_->truck_bottom + std::max(0.0, in_truck) / c_->truck_area;
  const double head = above - parts::depth_of_volume(c_->tank, in_tank);
  return release::out_under(c_->way, c_->density * standard_gravity * head, 1.0);
}

void Model::flows(double /*t*/, const seq::SequenceView& v, std::span<double> q, std::span<double> /*rate*/) const {
  const double limit = v.flag(closed) ? c_->closed : v.flag(restricting) ? c_->restricted : never;
  const bool runs = !v.flag(driver_shut) && !v.flag(empty);
  q[dropping] = runs ? std::min(limit, open_flow(v.amounts[truck], v.amounts[tank])) : 0.0;
  const bool takes = v.flag(driver_shut) && !v.flag(full) && v.amounts[hose] > 0.0;
  q[draining] = takes ? std::min(limit, c_->in_hose / c_->drains_in) : 0.0;
  q[overflowing] = v.flag(full) ? q[dropping] + q[draining] : 0.0;
  q[running_over] = v.flag(spilling_over) ? q[overflowing] : 0.0;
}

void Model::guards(double /*t*/, const seq::SequenceView& v, std::span<const double> /*q*/,
                   std::span<double> value) const {
  const auto past = [&](double depth) {
    return depth < never ? v.amounts[tank] - parts::volume_at_depth(c_->tank, depth) : -1.0;
  };
  value[restricts] = past(c_->restricts_at);
  value[closes] = past(c_->closes_at);
  value[alarms] = past(c_->alarm_at);
  value[fills] = v.amounts[tank] - capacity_;
  value[container_full] = v.amounts[container] - c_->container;
  if (!v.flag(full)) value[container_full] = std::min(value[container_full], -1.0);
  value[truck_empty] = v.amounts[truck] - rest;
  value[hose_empty] = v.amounts[hose] - rest;
}

void Model::on_event(const seq::Event& event, seq::Mutator& m) const {
  const auto calls_driver = [&] {
    if (c_->driver_acts_in < never) m.schedule({m.time() + c_->driver_acts_in, shutting, driver, 0.0});
  };
  if (event.source == seq::EventSource::timed) return driver_acts(m);
  switch (event.id) {
    case restricts:
      m.set_flag(restricting, true);
      if (!c_->hears_alarm) calls_driver();
      return;
    case closes:
      m.set_flag(closed, true);
      if (!c_->hears_alarm && !(c_->restricts_at < never)) calls_driver();
      return;
    case alarms:
      if (c_->hears_alarm) calls_driver();
      return;
    case fills:
      return m.set_flag(full, true);
    case container_full:
      return m.set_flag(spilling_over, true);
    case truck_empty:
      return m.set_flag(empty, true);
    default:
      return m.close(draining);
  }
}

/// The truck's valve is shut; what is in the hose runs into the tank if that takes it, or is spilled.
void Model::driver_acts(seq::Mutator& m) const {
  if (m.flag(driver_shut)) return;
  m.set_flag(driver_shut, true);
  m.arm(hose_empty, true);
  if (!c_->disconnects_full) return;
  const double into = std::min(c_->in_hose, std::max(0.0, c_->container - m.amount(container)));
  m.transfer(hose, container, into, spilled);
  m.transfer(hose, slab, c_->in_hose - into, spilled);
  m.close(draining);
}

seq::SequenceStart Model::start() const {
  seq::SequenceStart s;
  s.end = c_->end;
  s.amounts = {c_->in_truck, c_->in_hose, c_->in_tank, 0.0, 0.0};
  s.causes = {drops, drains, overflows, runs_over};
  if (c_->stop_at < never) s.timed.push_back({c_->stop_at, shutting, stopped, 0.0});
  return s;
}

}  // namespace forecourse::studies::overfilling
