#include "forecourse/studies/incident/release/model.h"

namespace forecourse::studies::release {
Model::Model(const Case& given) : c_(&given), layout_{static_cast<int>(given.broken.size())} {
  for (int link = 0; link < layout_.links(); ++link) ends_.push_back(ends_of(link));
  for (const Broken& b : given.broken) {
    for (const network::Feed* feed : {&b.running, &b.stopped}) {
      const bool seat = feed->supplied && b.opening.seat_leak > 0.0;
      balances_.push_back(feed == &b.running && b.runs_at < never ? at_pressure(b, b.runs_at, 1.0)
                                                                  : balance(b, *feed, 1.0));
      balances_.push_back(seat ? leak_balance(*feed, b.opening, b.opening.seat_leak, 0.5) : Flows{});
    }
  }
}

seq::LinkEnds Model::ends_of(int link) const {
  const int own = Layout::links_of_end * layout_.ends;
  if (link < own) {
    const int f = link / Layout::links_of_end;
    const int into = c_->catches.exists ? layout_.sump() : layout_.ground();
    switch (link % Layout::links_of_end) {
      case Layout::pumping:
        return {Layout::tank(f), Layout::line(f)};
      case Layout::elsewhere:
        return {Layout::line(f), layout_.vehicle()};
      case Layout::escape_sump:
        return {Layout::line(f), into};
      case Layout::escape_slab:
        return {Layout::line(f), layout_.slab()};
      case Layout::drain_sump:
        return {Layout::above(f), into};
      default:
        return {Layout::above(f), layout_.slab()};
    }
  }
  if (link == layout_.overflow()) return {layout_.sump(), layout_.slab()};
  if (link == layout_.seals()) return {layout_.sump(), layout_.ground()};
  if (link == layout_.to_drain()) return {layout_.slab(), layout_.interceptor()};
  if (link == layout_.evaporating()) return {layout_.slab(), layout_.air()};
  return {layout_.sump(), layout_.air()};
}

seq::SequenceStart Model::start() const {
  seq::SequenceStart s;
  s.end = c_->end;
  s.amounts.assign(at(layout_.compartments()), 0.0);
  s.auxiliaries.assign(at(layout_.auxiliaries()), 0.0);
  s.marks.assign(at(layout_.marks()), 0.0);
  s.causes.assign(at(layout_.links()), cause_overflow);
  for (int f = 0; f < layout_.ends; ++f) {
    start_causes(f, s);
    start_state(f, s);
    start_events(f, s);
  }
  s.causes[at(layout_.seals())] = cause_seals;
  s.causes[at(layout_.to_drain())] = cause_runs_to_drain;
  s.causes[at(layout_.evaporating())] = c_->fire.burns ? cause_burns : cause_evaporates;
  s.causes[at(layout_.burning())] = cause_burns;
  if (c_->stops.emergency_stop < never) {
    s.timed.push_back({c_->stops.emergency_stop, stopping, timed_id(Timed::emergency_stop), 0.0});
  }
  if (c_->stops.sensor_dead_until > 0.0 && c_->stops.sensor_dead_until < never) {
    s.timed.push_back({c_->stops.sensor_dead_until, shutting, timed_id(Timed::sensor_wakes), 0.0});
  }
  return s;
}

std::optional<double> Model::begins_at(int f) const {
  const Broken& b = broken(f);
  if (b.starts_at < never) return b.starts_at;
  const bool pressed = b.starts_running || (b.compliance > 0.0 && b.checked);
  if (pressed && b.running.supplied) return b.running.pressure.at(0.0).value;
  return b.stopped.supplied ? std::optional(b.stopped.pressure.at(0.0).value) : std::nullopt;
}

void Model::start_causes(int f, seq::SequenceStart& s) const {
  const bool leak = is_leak(broken(f).opening);
  const auto cause = [&](Layout::OfEnd which, Cause c) { s.causes[at(Layout::link(f, which))] = c; };
  cause(Layout::pumping, cause_pumped);
  cause(Layout::elsewhere, cause_elsewhere);
  for (const auto which : {Layout::escape_sump, Layout::escape_slab}) cause(which, leak ? cause_crack : cause_open);
  for (const auto which : {Layout::drain_sump, Layout::drain_slab}) cause(which, cause_drains);
}

void Model::start_state(int f, seq::SequenceStart& s) const {
  const Broken& b = broken(f);
  const auto flag = [&](int which) { s.flags |= std::uint64_t{1} << which; };
  s.amounts[at(Layout::above(f))] = b.above.volume;
  if (!(b.above.volume > b.above.rest)) flag(Layout::flag(f, Layout::drained));
  if (const auto stands = begins_at(f)) s.amounts[at(Layout::line(f))] = b.compliance * (*stands - b.rest_pressure);
  if (b.starts_running && b.running.supplied) flag(Layout::flag(f, Layout::pump_on));
  if (is_leak(b.opening)) flag(Layout::flag(f, Layout::calm));
}

void Model::start_events(int f, seq::SequenceStart& s) const {
  const Broken& b = broken(f);
  if (b.starts_running && b.running.supplied) {
    s.timed.push_back({is_leak(b.opening) ? 0.0 : follows_for, settling, timed_id(Timed::settles, f), 0.0});
  } else {
    s.timed.push_back({0.0, settling, timed_id(Timed::begins_at_rest, f), 0.0});
  }
  if (b.shutting.triggers_at < never) {
    s.timed.push_back({b.shutting.triggers_at, shutting, timed_id(Timed::triggers, f), 0.0});
  }
  for (const double at : b.pump_on) s.timed.push_back({at, stopping, timed_id(Timed::pump_starts, f), 0.0});
  if (b.detector_sees && c_->stops.detector_at < never) {
    s.timed.push_back({c_->stops.detector_at, stopping, timed_id(Timed::detector, f), 0.0});
  }
}

}  // namespace forecourse::studies::release
