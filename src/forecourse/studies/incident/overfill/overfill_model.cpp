#include "forecourse/studies/incident/overfill/overfill_model.h"

#include <algorithm>

#include "forecourse/base/constants.h"

namespace forecourse::studies::overfilling {
namespace {

constexpr double rest = 1e-6;  ///< [m3] at which a truck or hose counts as empty

double volume_to(const Case& c, double level) { return level < never ? c.tank->volume(level) : never; }

}  // namespace

Model::Model(const Case& given)
    : c_(&given),
      capacity_(given.tank->capacity()),
      level_(*given.tank),
      passed_at_{volume_to(given, given.restricts_at), volume_to(given, given.closes_at),
                 volume_to(given, given.alarm_at)} {}

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

double Model::open_flow(double in_truck, double in_tank, bool is_full) const {
  if (c_->rate > 0.0) return c_->rate;
  double head = c_->fixed_head;
  if (!(head > 0.0)) {
    const double below = level_.level(in_tank);
    const double above = c_->truck_bottom + std::max(0.0, in_truck) / c_->truck_area;
    head = above - (is_full ? std::max(below, c_->outlet) : below);
  }
  return release::out_under(c_->way, c_->density * standard_gravity * head, 1.0);
}

/// A full hose stands about as high as the fill; where that is not known it drains evenly in the time given.
double Model::drain_flow(double in_tank) const {
  const bool heights = !(c_->rate > 0.0) && !(c_->fixed_head > 0.0);
  if (!heights) return c_->in_hose / c_->drains_in;
  const double head = c_->outlet - level_.level(in_tank);
  return release::out_under(c_->way, c_->density * standard_gravity * head, 1.0);
}

void Model::flows(double /*t*/, const seq::SequenceView& v, std::span<double> q, std::span<double> /*rate*/) const {
  const double limit = v.flag(closed) ? c_->closed : v.flag(restricting) ? c_->restricted : never;
  const bool runs = !v.flag(driver_shut) && !v.flag(empty);
  q[dropping] = runs ? std::min(limit, open_flow(v.amounts[truck], v.amounts[tank], v.flag(full))) : 0.0;
  const bool takes = !runs && !v.flag(full) && v.amounts[hose] > 0.0;
  q[draining] = takes ? std::min(limit, drain_flow(v.amounts[tank])) : 0.0;
  q[overflowing] = v.flag(full) ? q[dropping] + q[draining] : 0.0;
  q[running_over] = v.flag(spilling_over) ? q[overflowing] : 0.0;
}

void Model::guards(double t, const seq::SequenceView& v, std::span<const double> /*q*/, std::span<double> value) const {
  const auto past = [&](Guard guard, double dead) {
    const double limit = passed_at_[guard];
    return limit < never && t >= dead ? v.amounts[tank] - limit : -1.0;
  };
  value[restricts] = past(restricts, c_->valve_dead);
  value[closes] = past(closes, c_->valve_dead);
  value[alarms] = past(alarms, c_->alarm_dead);
  value[fills] = v.amounts[tank] - capacity_;
  value[container_full] = v.flag(full) ? v.amounts[container] - c_->container : -1.0;
  value[truck_empty] = v.amounts[truck] - rest;
  value[hose_empty] = v.amounts[hose] - rest;
}

void Model::on_event(const seq::Event& event, seq::Mutator& m) const {
  if (event.source == seq::EventSource::timed) {
    if (event.id != wakes) shut_truck(m, event.id == driver && c_->disconnects_full);
    return;
  }
  switch (event.id) {
    case restricts:
      m.set_flag(restricting, true);
      if (!c_->hears_alarm) call_driver(m);
      return;
    case closes:
      m.set_flag(closed, true);
      return call_driver(m);
    case alarms:
      if (c_->hears_alarm) call_driver(m);
      return;
    case fills:
      return m.set_flag(full, true);
    case container_full:
      return m.set_flag(spilling_over, true);
    case truck_empty:
      m.set_flag(empty, true);
      return m.arm(hose_empty, m.amount(hose) > rest);
    default:
      return m.close(draining);
  }
}

/// He acts a time after the first of what tells him.
void Model::call_driver(seq::Mutator& m) const {
  if (!(c_->driver_acts_in < never) || m.flag(driver_shut)) return;
  m.schedule({std::max(m.time() + c_->driver_acts_in, c_->driver_dead), shutting, driver, 0.0});
}

/// The truck's valve is shut; what is in the hose runs into the tank if that takes it, or is spilled.
void Model::shut_truck(seq::Mutator& m, bool takes_hose_off) const {
  if (m.flag(driver_shut)) return;
  m.set_flag(driver_shut, true);
  m.cancel(shutting, driver);
  const double held = m.amount(hose);
  if (!takes_hose_off) return m.arm(hose_empty, held > rest);
  const double into = std::clamp(c_->container - m.amount(container), 0.0, held);
  m.transfer(hose, container, into, spilled);
  m.transfer(hose, slab, held - into, spilled);
  m.arm(hose_empty, false);
  m.close(draining);
}

seq::SequenceStart Model::start() const {
  seq::SequenceStart s;
  s.end = c_->end;
  s.amounts = {c_->in_truck, c_->in_hose, c_->in_tank, 0.0, 0.0};
  s.causes = {drops, drains, overflows, runs_over};
  if (c_->stop_at < never) s.timed.push_back({c_->stop_at, shutting, stopped, 0.0});
  for (const double dead : {c_->valve_dead, c_->alarm_dead}) {
    if (dead > 0.0) s.timed.push_back({dead, telling, wakes, 0.0});
  }
  return s;
}

}  // namespace forecourse::studies::overfilling
