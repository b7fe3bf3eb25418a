#include <algorithm>

#include "forecourse/studies/incident/release/model.h"

namespace forecourse::studies::release {

seq::GuardRule Model::guard_rule(int guard) const {
  const int own = Layout::guards_of_end * layout_.ends;
  if (guard < own) {
    const int which = guard % Layout::guards_of_end;
    if (which == Layout::crack_trips) return {seq::Crossing::rising, shutting, 0.0, true};
    if (which == Layout::runs_dry) return {seq::Crossing::falling, telling, 0.0, true};
    return {seq::Crossing::falling, stopping, 0.0, true, false};
  }
  if (guard == layout_.unseen()) return {seq::Crossing::rising, telling, 0.0, true};
  if (guard >= own + Layout::shared_guards) return {seq::Crossing::falling, stopping, 0.0, true};
  const int kind = guard - own == Layout::link_parts ? shutting : telling;
  return {seq::Crossing::rising, kind, 0.0, true};
}

void Model::guards(double t, const seq::SequenceView& v, std::span<const double> /*q*/, std::span<double> value) const {
  std::fill(value.begin(), value.end(), -1.0);
  for (int f = 0; f < layout_.ends; ++f) {
    const Broken& b = broken(f);
    const auto set = [&](Layout::GuardOfEnd g, double x) { value[at(Layout::guard(f, g))] = x; };
    const bool drained = v.flag(Layout::flag(f, Layout::drained));
    set(Layout::runs_dry, drained ? 1.0 : v.amounts[at(Layout::above(f))] - b.above.rest);
    const bool settled = v.flag(Layout::flag(f, Layout::settled));
    const double excess = v.amounts[at(Layout::line(f))];
    const double pressure = b.compliance > 0.0 ? b.rest_pressure + excess / b.compliance : b.opening.weight;
    set(Layout::runs_spent, settled ? 1.0 : pressure - floor(f, v) - spent_pressure);
    const double gone = -v.amounts[at(Layout::tank(f))];
    value[at(layout_.guard(f, Layout::tank_empty))] = b.stock < never ? b.stock - gone : 1.0;
    value[at(layout_.guard(f, Layout::level_down))] =
        by_gravity(f, v) && !b.fall.empty() ? floor(f, v) - b.opening.weight - spent_pressure : 1.0;
    set(Layout::check_shuts, settled ? 1.0 : v.auxiliaries[at(Layout::trunk_flow(f))]);
    if (b.shutting.trip_volume < never) {
      const double leaked = v.auxiliaries[at(Layout::leaked(f))];
      const bool pressed = now(f, t, v).pressure >= b.shutting.trip_pressure;
      set(Layout::crack_trips, pressed ? leaked - b.shutting.trip_volume : -1.0);
    }
  }
  const auto set = [&](Layout::Shared g, double x) { value[at(layout_.guard(g))] = x; };
  const auto held = [&](int compartment) { return v.amounts[at(compartment)]; };
  const auto past = [](double amount, double limit) { return limit < never ? amount - limit : -1.0; };
  set(Layout::sensor, t < c_->stops.sensor_dead_until ? -1.0 : past(held(layout_.sump()), c_->catches.sensor_volume));
  if (t < c_->stops.sensor_dead_until) {
    value[at(layout_.unseen())] = past(held(layout_.sump()), c_->catches.sensor_volume);
  }
  set(Layout::seal, past(held(layout_.sump()), c_->catches.seal_volume));
  set(Layout::brim, past(held(layout_.sump()), c_->catches.brim_volume));
  set(Layout::drain, past(held(layout_.slab()), c_->slab.reaches_drain));
  set(Layout::interceptor_full, past(held(layout_.interceptor()), c_->slab.interceptor));
  set(Layout::reportable,
      past(held(layout_.slab()) + held(layout_.ground()) + held(layout_.interceptor()), c_->reportable));
  if (c_->fire.response_index > 0.0) {
    set(Layout::link_parts, v.auxiliaries[at(layout_.link_temperature())] - (c_->fire.rated - c_->fire.start));
  }
}

}  // namespace forecourse::studies::release
