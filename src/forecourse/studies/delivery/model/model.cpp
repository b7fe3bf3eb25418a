#include "forecourse/studies/delivery/model/model.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/index.h"
#include "forecourse/parts/vapor/isothermal_flow.h"
#include "forecourse/parts/vapor/truck_limits.h"

namespace forecourse::studies::delivering {
namespace {

constexpr double rest = 1e-6;           ///< [m3] at which a compartment or hose counts as empty
constexpr double stalled_share = 0.01;  ///< of the first rate
constexpr double still = 1e-7;          ///< [m3/s]

}  // namespace

seq::SequenceOptions told_options() {
  seq::SequenceOptions options;
  options.absolute = 1e-7;  // [m3]; in the vapor of a small ullage a part in a million of the atmosphere
  options.relative = 1e-6;
  options.longest_step = 20.0;  // [s]
  options.keep_states = true;
  return options;
}

Model::Model(const Case& given) : c_(&given) {
  for (int d = 0; d < drops(); ++d) {
    for (const Told what : {Told::truck_empty, Told::hose_empty, Told::drain_stalls, Told::stalls})
      guards_.push_back({what, d});
  }
  for (int t = 0; t < tanks(); ++t) {
    for (const Told what :
         {Told::restricts, Told::closes, Told::alarm, Told::ninety, Told::ninety_five, Told::fills, Told::covered})
      guards_.push_back({what, t});
  }
  for (int w = 0; w < vents(); ++w) {
    for (const Told what : {Told::lifts, Told::draws}) guards_.push_back({what, w});
  }
  for (const Told what : {Told::truck_over, Told::truck_under}) guards_.push_back({what, 0});
  const seq::SequenceStart s = start();
  for (int d = 0; d < drops(); ++d) first_rate_.push_back(drop_flow({s.amounts, {}, {}, 0}, d));
}

seq::LinkEnds Model::ends(int link) const {
  if (link < drops()) return {truck(link), tank(c_->drops[at(link)].tank)};
  if (link < vent_link(0)) return {hose(link - drops()), tank(c_->drops[at(link - drops())].tank)};
  if (link >= branch_link(0) && link < return_link(0)) {
    const BranchCase& branch = c_->branches[at(link - branch_link(0))];
    return {vapor(branch.from), vapor(branch.to)};
  }
  if (link < branch_link(0)) return {vapor(c_->vents[at(link - vent_link(0))].space), air()};
  if (link < growth_link(0)) return {vapor(link - return_link(0)), truck_vapor()};
  if (link < filling_link(0)) return {source(), vapor(link - growth_link(0))};
  if (link < emptying_link()) return {room(), vapor(link - filling_link(0))};
  return {truck_vapor(), room()};
}

seq::GuardRule Model::guard_rule(int i) const {
  const Told what = guard(i).what;
  const bool falls = what <= Told::stalls || what == Told::draws || what == Told::truck_under;
  const bool acts = what <= Told::alarm || what == Told::fills;
  const bool later = what == Told::hose_empty || what == Told::drain_stalls || what == Told::stalls;
  return {falls ? seq::Crossing::falling : seq::Crossing::rising, acts ? acting : telling, 0.0, true, !later};
}

/// An amount at the atmosphere beyond that which a room holds, at one temperature.
double Model::ullage_pressure(const seq::SequenceView& v, int space) const {
  double room = c_->spaces[at(space)].other_room;
  for (int t = 0; t < tanks(); ++t) {
    const TankCase& one = c_->tanks[at(t)];
    if (one.space == space) room += one.capacity - v.amounts[at(tank(t))];
  }
  return c_->atmospheric * v.amounts[at(vapor(space))] / room;
}

double Model::truck_pressure(const seq::SequenceView& v) const {
  if (!c_->truck_closed) return 0.0;
  double room = c_->truck_room;
  for (int d = 0; d < drops(); ++d) {
    const DropCase& one = c_->drops[at(d)];
    room += one.volume - v.amounts[at(truck(d))] + one.in_hose - v.amounts[at(hose(d))];
  }
  return c_->atmospheric * v.amounts[at(truck_vapor())] / room;
}

double Model::space_pressure(const seq::SequenceView& v, int t) const {
  const int space = c_->tanks[at(t)].space;
  return space < 0 ? 0.0 : ullage_pressure(v, space);
}

double Model::limit(const seq::SequenceView& v, int t) const {
  const TankCase& one = c_->tanks[at(t)];
  return v.flag(closed(t)) ? one.closed : v.flag(restricting(t)) ? one.restricted : never;
}

/// Energy between the surface in the truck and that in the tank, or the end of the drop tube where it is not covered.
double Model::drop_flow(const seq::SequenceView& v, int d) const {
  const DropCase& drop = c_->drops[at(d)];
  const TankCase& into = c_->tanks[at(drop.tank)];
  const double most = limit(v, drop.tank);
  if (drop.rate > 0.0) return std::min(most, drop.rate);
  double head = drop.fixed_head;
  if (!(head > 0.0)) {
    const double below = std::max(into.level.level(v.amounts[at(tank(drop.tank))]), into.tube_end);
    head = drop.truck_bottom + v.amounts[at(truck(d))] / drop.truck_area - below;
  }
  const double drive = drop.density * standard_gravity * head + truck_pressure(v) - space_pressure(v, drop.tank);
  return drive > 0.0 ? std::min(most, drop.way.flow(drive)) : -drop.way.flow(-drive);
}

/// A full hose stands about as high as the fill; where that is not known it drains evenly in the time given.
double Model::drain_flow(const seq::SequenceView& v, int d) const {
  const DropCase& drop = c_->drops[at(d)];
  const double most = limit(v, drop.tank);
  if (!drop.height_known) return std::min(most, drop.in_hose / drop.drains_in);
  const TankCase& into = c_->tanks[at(drop.tank)];
  const double below = std::max(into.level.level(v.amounts[at(tank(drop.tank))]), into.tube_end);
  const double drive =
      drop.density * standard_gravity * (drop.hose_height - below) + truck_pressure(v) - space_pressure(v, drop.tank);
  return std::min(most, drop.way.flow(drive));
}

double Model::vent_flow(const VentCase& vent, double pressure) const {
  const double factor = parts::density_factor(pressure, 0.0, c_->atmospheric);
  if (pressure > 0.0) {
    const double open = vent.out.opens_at();
    return pressure > open ? vent.out.flow(open + (pressure - open) * factor) : 0.0;
  }
  const double open = vent.in.opens_at();
  return -pressure > open ? -vent.in.flow(open + (-pressure - open) * factor) : 0.0;
}

/// Between two pressures, either way.
double Model::vapor_flow(const parts::PathFlow& way, double from, double to) const {
  const double drive = (from - to) * parts::density_factor(from, to, c_->atmospheric);
  return drive > 0.0 ? way.flow(drive) : -way.flow(-drive);
}

/// A vapor hose is on while a drop into one of the tanks runs or drains.
bool Model::hose_connected(const seq::SequenceView& v, int space) const {
  for (int d = 0; d < drops(); ++d) {
    const bool on = v.flag(runs(d)) || v.flag(drains(d));
    if (on && c_->tanks[at(c_->drops[at(d)].tank)].space == space) return true;
  }
  return false;
}

void Model::flows(double /*t*/, const seq::SequenceView& v, std::span<double> q, std::span<double> /*rate*/) const {
  std::fill(q.begin(), q.end(), 0.0);
  for (int d = 0; d < drops(); ++d) {
    const int into = c_->drops[at(d)].tank;
    if (v.flag(full(into))) continue;
    if (v.flag(runs(d))) q[at(drop_link(d))] = drop_flow(v, d);
    if (v.flag(drains(d))) q[at(drain_link(d))] = drain_flow(v, d);
    const double liquid = q[at(drop_link(d))] + q[at(drain_link(d))];
    if (c_->truck_closed) q[at(emptying_link())] += liquid;
    const int space = c_->tanks[at(into)].space;
    if (space < 0) continue;
    q[at(filling_link(space))] += liquid;
    q[at(growth_link(space))] += (c_->growth - 1.0) * liquid;
  }
  for (int w = 0; w < vents(); ++w) {
    const VentCase& vent = c_->vents[at(w)];
    q[at(vent_link(w))] = vent_flow(vent, ullage_pressure(v, vent.space));
  }
  for (int b = 0; b < branches(); ++b) {
    const BranchCase& branch = c_->branches[at(b)];
    q[at(branch_link(b))] = vapor_flow(branch.way, ullage_pressure(v, branch.from), ullage_pressure(v, branch.to));
  }
  if (!c_->truck_closed) return;
  const double in_truck = truck_pressure(v);
  for (int s = 0; s < spaces(); ++s) {
    const parts::PathFlow& way = c_->spaces[at(s)].to_truck;
    if (way.shut() || !hose_connected(v, s)) continue;
    q[at(return_link(s))] = vapor_flow(way, ullage_pressure(v, s), in_truck);
  }
}

double Model::value_of(const Guard& g, const seq::SequenceView& v, std::span<const double> q) const {
  const auto past = [&](double volume) { return volume < never ? v.amounts[at(tank(g.of))] - volume : -1.0; };
  switch (g.what) {
    case Told::truck_empty:
      return v.amounts[at(truck(g.of))] - rest;
    case Told::hose_empty:
      return v.amounts[at(hose(g.of))] - rest;
    case Told::drain_stalls:
      return q[at(drain_link(g.of))] - still;
    case Told::stalls: {
      const bool held_back = !v.flag(runs(g.of)) || limit(v, c_->drops[at(g.of)].tank) < never;
      return held_back ? 1.0 : q[at(drop_link(g.of))] - stalled_share * first_rate(g.of);
    }
    case Told::restricts:
      return past(c_->tanks[at(g.of)].restricts);
    case Told::closes:
      return past(c_->tanks[at(g.of)].closes);
    case Told::alarm:
      return past(c_->tanks[at(g.of)].alarm);
    case Told::ninety:
      return past(c_->tanks[at(g.of)].ninety);
    case Told::ninety_five:
      return past(c_->tanks[at(g.of)].ninety_five);
    case Told::fills:
      return past(c_->tanks[at(g.of)].capacity - rest);
    case Told::covered:
      return past(c_->tanks[at(g.of)].covered);
    case Told::lifts: {
      const VentCase& vent = c_->vents[at(g.of)];
      return vent.out.opens_at() > 0.0 ? ullage_pressure(v, vent.space) - vent.out.opens_at() : -1.0;
    }
    case Told::draws: {
      const VentCase& vent = c_->vents[at(g.of)];
      return vent.in.opens_at() > 0.0 ? ullage_pressure(v, vent.space) + vent.in.opens_at() : 1.0;
    }
    case Told::truck_over:
      return truck_pressure(v) - parts::truck_pressure_limit;
    case Told::truck_under:
      return truck_pressure(v) + parts::truck_vacuum_limit;
  }
  return -1.0;
}

void Model::guards(double /*t*/, const seq::SequenceView& v, std::span<const double> q, std::span<double> value) const {
  for (std::size_t i = 0; i < guards_.size(); ++i) value[i] = value_of(guards_[i], v, q);
}

void Model::on_event(const seq::Event& event, seq::Mutator& m) const {
  if (event.source == seq::EventSource::guard) return on_guard(guard(event.id), m);
  if (is_start(event.id)) return begin_drop(static_cast<int>(event.value), m);
  if (is_driver(event.id)) {
    for (int d = 0; d < drops(); ++d) {
      if (c_->drops[at(d)].tank == static_cast<int>(event.value) && m.flag(runs(d))) shut_truck(d, m);
    }
    return;
  }
  for (int d = 0; d < drops(); ++d) m.set_flag(shut(d), true);
  for (int d = 0; d < drops(); ++d) {
    if (m.flag(runs(d))) drain(d, m);
  }
}

void Model::on_guard(const Guard& g, seq::Mutator& m) const {
  switch (g.what) {
    case Told::truck_empty:
      if (m.flag(runs(g.of))) drain(g.of, m);
      return;
    case Told::hose_empty:
    case Told::drain_stalls:
      return end_drop(g.of, m);
    case Told::stalls:
      return m.stop(stalled);
    case Told::restricts:
      return m.set_flag(restricting(g.of), true);
    case Told::closes:
      m.set_flag(closed(g.of), true);
      call_driver(g.of, m);
      for (int d = 0; d < drops(); ++d) {
        if (c_->drops[at(d)].tank == g.of && (m.flag(runs(d)) || m.flag(drains(d))) &&
            !(c_->tanks[at(g.of)].closed > 0.0))
          end_drop(d, m);
      }
      return;
    case Told::alarm:
      if (c_->tanks[at(g.of)].hears_alarm) call_driver(g.of, m);
      return;
    case Told::fills:
      m.set_flag(full(g.of), true);
      for (int d = 0; d < drops(); ++d) {
        if (c_->drops[at(d)].tank == g.of && (m.flag(runs(d)) || m.flag(drains(d)))) end_drop(d, m);
      }
      return;
    default:
      return;
  }
}

void Model::call_driver(int t, seq::Mutator& m) const {
  if (!(c_->driver_acts_in < never)) return;
  m.schedule({m.time() + c_->driver_acts_in, acting, driver(t), static_cast<double>(t)});
}

void Model::shut_truck(int d, seq::Mutator& m) const {
  m.set_flag(shut(d), true);
  drain(d, m);
}

/// What is in the hose runs into the tank, as far as the valve and the heights let it.
void Model::drain(int d, seq::Mutator& m) const {
  m.set_flag(runs(d), false);
  const bool takes =
      m.amount(hose(d)) > rest && !m.flag(full(c_->drops[at(d)].tank)) && drain_flow(m.view(), d) > still;
  if (!takes) return end_drop(d, m);
  m.set_flag(drains(d), true);
  const int first = 4 * d;
  m.arm(first + static_cast<int>(Told::hose_empty));
  m.arm(first + static_cast<int>(Told::drain_stalls));
}

void Model::end_drop(int d, seq::Mutator& m) const {
  m.set_flag(runs(d), false);
  m.set_flag(drains(d), false);
  m.set_flag(ended(d), true);
  for (const Told what : {Told::hose_empty, Told::drain_stalls, Told::stalls})
    m.arm(4 * d + static_cast<int>(what), false);
  begin_waiting(m);
}

void Model::begin_drop(int d, seq::Mutator& m) const {
  const int into = c_->drops[at(d)].tank;
  const bool held = m.flag(closed(into)) && !(c_->tanks[at(into)].closed > 0.0);
  if (m.flag(shut(d)) || m.flag(full(into)) || held) return end_drop(d, m);
  m.set_flag(runs(d), true);
  if (!(c_->drops[at(d)].rate > 0.0)) m.arm(4 * d + static_cast<int>(Told::stalls));
}

/// The first of those that wait begin, as many as may run at once and one into a tank at a time.
void Model::begin_waiting(seq::Mutator& m) const {
  int running = 0;
  bool all = true;
  std::vector<char> taken(c_->tanks.size(), 0);
  for (int d = 0; d < drops(); ++d) {
    const bool on = m.flag(runs(d)) || m.flag(drains(d)) || (m.mark(d) > 0.0 && !m.flag(ended(d)));
    if (on) taken[at(c_->drops[at(d)].tank)] = 1;
    running += on ? 1 : 0;
    all = all && m.flag(ended(d));
  }
  if (all) return m.stop(all_done);
  for (int d = 0; d < drops() && running < c_->at_once; ++d) {
    const bool waits = m.mark(d) == 0.0 && !m.flag(ended(d));
    char& busy = taken[at(c_->drops[at(d)].tank)];
    if (!waits || busy != 0) continue;
    busy = 1;
    ++running;
    m.set_mark(d, 1.0);
    m.schedule({m.time() + (m.time() > 0.0 ? c_->change_over : 0.0), acting, starts(d), static_cast<double>(d)});
  }
}

seq::SequenceStart Model::start() const {
  seq::SequenceStart s;
  s.end = c_->end;
  s.amounts.assign(static_cast<std::size_t>(compartments()), 0.0);
  for (int d = 0; d < drops(); ++d) {
    s.amounts[at(truck(d))] = c_->drops[at(d)].volume;
    s.amounts[at(hose(d))] = c_->drops[at(d)].in_hose;
  }
  for (int t = 0; t < tanks(); ++t) s.amounts[at(tank(t))] = c_->tanks[at(t)].volume;
  s.marks.assign(c_->drops.size(), 0.0);
  int begun = 0;
  std::vector<char> taken(c_->tanks.size(), 0);
  for (int d = 0; d < drops() && begun < c_->at_once; ++d) {
    char& busy = taken[at(c_->drops[at(d)].tank)];
    if (busy != 0) continue;
    busy = 1;
    ++begun;
    s.marks[at(d)] = 1.0;
    s.timed.push_back({0.0, acting, starts(d), static_cast<double>(d)});
  }
  if (c_->stop_at < never) s.timed.push_back({c_->stop_at, acting, stopped, 0.0});
  return s;
}

}  // namespace forecourse::studies::delivering
