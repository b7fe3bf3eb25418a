#include "forecourse/studies/incident/release/model.h"

#include <algorithm>
#include <cmath>

#include "forecourse/solvers/sequence/blow_down.h"
#include "forecourse/solvers/sequence/laws.h"

namespace forecourse::studies::release {
namespace {

constexpr double spent_pressure = 20.0;  ///< [Pa] above the opening's weight at which a line counts as spent
constexpr double smooth = 2.0;           ///< [Pa] about which roots are made smooth

bool is_leak(const Opening& opening) { return opening.leak_coefficient > 0.0; }

double leak_flow(double coefficient, double exponent, double pressure) {
  if (!(pressure > 0.0)) return 0.0;
  return coefficient * (exponent == 0.5 ? seq::one_way_root(pressure, smooth) : std::pow(pressure, exponent));
}

/// Pressure that drives a flow through path and opening, a share of the valve open [Pa], [Pa s/m3].
network::TableValue needed(const Opening& o, double flow, double share) {
  const double b = o.discharge + o.valve * (1.0 / (share * share) - 1.0);
  const network::TableValue path = o.path.empty() ? network::TableValue{} : o.path.at(flow);
  return {path.value + b * flow * std::abs(flow), path.slope + 2.0 * b * std::abs(flow)};
}

/// Root of a falling function of the flow between 0 and `high`, by Newton kept inside.
template <class Left>
double balance_flow(const Left& left, double high) {
  double low = 0.0, flow = 0.5 * high;
  if (left(0.0).value <= 0.0) return 0.0;
  if (left(high).value >= 0.0) return high;
  for (int i = 0; i < 80; ++i) {
    const network::TableValue here = left(flow);
    (here.value > 0.0 ? low : high) = flow;
    double next = flow - here.value / here.slope;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (std::abs(next - flow) <= 1e-18 + 1e-13 * flow) return next;
    flow = next;
  }
  return flow;
}

/// Flow through path and opening under a pressure above the opening's weight.
double out_under(const Opening& o, double pressure, double share) {
  if (!(pressure > 0.0)) return 0.0;
  const double b = o.discharge + o.valve * (1.0 / (share * share) - 1.0);
  const double most = std::sqrt(pressure / b);
  return balance_flow(
      [&](double q) {
        const network::TableValue n = needed(o, q, share);
        return network::TableValue{pressure - n.value, -n.slope};
      },
      most);
}

/// What runs out of an upright vessel in a time, by the law of its falling level: V = V0 (1 - t / T)^2.
/// \source law of nature (Torricelli)
double drained_by(const Above& above, double left, double time) {
  if (!(left > above.rest)) return 0.0;
  const double root = std::max(0.0, std::sqrt(left) - std::sqrt(above.volume) * time / above.drains_in);
  return left - root * root;
}

double hoses_at(const network::Feed& feed, double in) {
  return feed.shut() ? 0.0 : std::max(0.0, feed.hoses.at(in).value);
}

/// Where a leak q = k (p - w)^n and a feed agree.
Flows leak_balance(const network::Feed& feed, const Opening& o, double coefficient, double exponent) {
  const double most = leak_flow(coefficient, exponent, feed.pressure.at(0.0).value - o.weight);
  const auto left = [&](double q) {
    const network::TableValue p = feed.pressure.at(q);
    const double drive = std::max(p.value - o.weight, 1e-9);
    const double out = leak_flow(coefficient, exponent, drive);
    return network::TableValue{out - q, exponent * out / drive * p.slope - 1.0};
  };
  const double q = balance_flow(left, most * (1.0 + 1e-12));
  return {q, q, hoses_at(feed, q), feed.pressure.at(q).value};
}

}  // namespace

Model::Model(const Case& given) : c_(&given), at_{static_cast<int>(given.broken.size())} {
  for (const Broken& b : given.broken) {
    const bool seat = b.running.supplied && b.opening.seat_leak > 0.0;
    balances_.push_back(balance(b, b.running, 1.0));
    balances_.push_back(seat ? leak_balance(b.running, b.opening, b.opening.seat_leak, 0.5) : Flows{});
  }
}

// ---- what stands still -----------------------------------------------------------------------------------

seq::LinkEnds Model::ends(int link) const {
  const int own = Layout::links_of_end * at_.ends;
  if (link < own) {
    const int f = link / Layout::links_of_end;
    const int into = c_->catches.exists ? at_.sump() : at_.ground();
    switch (link % Layout::links_of_end) {
      case Layout::pumping:
        return {Layout::tank(f), Layout::line(f)};
      case Layout::elsewhere:
        return {Layout::line(f), at_.vehicle()};
      case Layout::escape_sump:
        return {Layout::line(f), into};
      case Layout::escape_slab:
        return {Layout::line(f), at_.slab()};
      case Layout::drain_sump:
        return {Layout::above(f), into};
      default:
        return {Layout::above(f), at_.slab()};
    }
  }
  if (link == at_.overflow()) return {at_.sump(), at_.slab()};
  if (link == at_.seals()) return {at_.sump(), at_.ground()};
  if (link == at_.to_drain()) return {at_.slab(), at_.interceptor()};
  if (link == at_.evaporating()) return {at_.slab(), at_.air()};
  return {at_.sump(), at_.air()};
}

seq::GuardRule Model::guard_rule(int guard) const {
  const int own = Layout::guards_of_end * at_.ends;
  if (guard < own) {
    const int which = guard % Layout::guards_of_end;
    if (which == Layout::crack_trips) return {seq::Crossing::rising, shutting, 0.0, true};
    if (which == Layout::runs_dry) return {seq::Crossing::falling, telling, 0.0, true};
    return {seq::Crossing::falling, stopping, 0.0, true, false};
  }
  const int kind = guard - own == Layout::link_parts ? shutting : telling;
  return {seq::Crossing::rising, kind, 0.0, true};
}

Flows Model::balance(const Broken& b, const network::Feed& feed, double share) {
  if (feed.shut() || !feed.supplied) return {0.0, 0.0, hoses_at(feed, 0.0), b.opening.weight};
  if (is_leak(b.opening)) return leak_balance(feed, b.opening, b.opening.leak_coefficient, b.opening.leak_exponent);
  const double q = balance_flow(
      [&](double x) {
        const network::TableValue p = feed.pressure.at(x);
        const network::TableValue n = needed(b.opening, x, share);
        return network::TableValue{p.value - b.opening.weight - n.value, p.slope - n.slope};
      },
      feed.pressure.last());
  return {q, q, hoses_at(feed, q), feed.pressure.at(q).value};
}

// ---- flows -------------------------------------------------------------------------------------------------

const network::Feed& Model::feed(int f, const seq::SequenceView& v) const {
  return v.flag(Layout::flag(f, Layout::pump_on)) ? broken(f).running : broken(f).stopped;
}

double Model::open_share(int f, double t, const seq::SequenceView& v) const {
  if (v.flag(Layout::flag(f, Layout::shut))) return 0.0;
  if (!v.flag(Layout::flag(f, Layout::triggered))) return 1.0;
  // Up to the event that shuts it, the moment of shutting itself included, it is as it was just before.
  constexpr double nearly_shut = 1e-3;
  const parts::ClosingLaw& law = broken(f).shutting.law;
  const double since = t - v.marks[static_cast<std::size_t>(Layout::mark(f, Layout::triggered_at))];
  const double before = std::nextafter(parts::shut_time(law), 0.0);
  return std::max(parts::opening(law, std::min(since, before)), nearly_shut);
}

bool Model::leaks_only(int f, const seq::SequenceView& v) const {
  return is_leak(broken(f).opening) || v.flag(Layout::flag(f, Layout::shut));
}

bool Model::follows_columns(int f, const seq::SequenceView& v) const {
  return !v.flag(Layout::flag(f, Layout::calm)) && !leaks_only(f, v);
}

double Model::out_at(int f, double t, const seq::SequenceView& v, double pressure) const {
  const Broken& b = broken(f);
  const double drive = pressure - b.opening.weight;
  if (v.flag(Layout::flag(f, Layout::spent))) return 0.0;
  if (v.flag(Layout::flag(f, Layout::shut))) return leak_flow(b.opening.seat_leak, 0.5, drive);
  if (is_leak(b.opening)) return leak_flow(b.opening.leak_coefficient, b.opening.leak_exponent, drive);
  if (b.opening.inertance > 0.0 && follows_columns(f, v)) {
    return std::max(0.0, v.auxiliaries[static_cast<std::size_t>(Layout::escape_flow(f))]);
  }
  return out_under(b.opening, drive, open_share(f, t, v));
}

Flows Model::now(int f, double t, const seq::SequenceView& v) const {
  const auto mark = [&](Layout::MarkOfEnd m) { return v.marks[static_cast<std::size_t>(Layout::mark(f, m))]; };
  if (v.flag(Layout::flag(f, Layout::settled))) {
    return {mark(Layout::settled_in), mark(Layout::settled_out), mark(Layout::settled_hoses),
            mark(Layout::settled_pressure)};
  }
  const Broken& b = broken(f);
  const network::Feed& from = feed(f, v);
  if (b.compliance > 0.0) {
    const double p = b.rest_pressure + v.amounts[static_cast<std::size_t>(Layout::line(f))] / b.compliance;
    const bool by_column =
        b.inertance > 0.0 && from.supplied && !v.flag(Layout::flag(f, Layout::calm)) && !is_leak(b.opening);
    double in = by_column ? v.auxiliaries[static_cast<std::size_t>(Layout::trunk_flow(f))] : from.flow_at(p);
    if (v.flag(Layout::flag(f, Layout::held))) in = 0.0;
    return {in, out_at(f, t, v, p), hoses_at(from, in), p};
  }
  if (v.flag(Layout::flag(f, Layout::shut)) && !(b.opening.seat_leak > 0.0)) {
    return {0.0, 0.0, hoses_at(from, 0.0), from.shut() ? b.opening.weight : from.pressure.at(0.0).value};
  }
  if (from.shut() || !from.supplied) return {0.0, 0.0, hoses_at(from, 0.0), b.opening.weight};
  if (v.flag(Layout::flag(f, Layout::shut))) return leak_balance(from, b.opening, b.opening.seat_leak, 0.5);
  if (b.inertance + b.opening.inertance > 0.0 && follows_columns(f, v)) {
    const double q = std::max(0.0, v.auxiliaries[static_cast<std::size_t>(Layout::escape_flow(f))]);
    return {q, q, hoses_at(from, q), from.pressure.at(q).value};
  }
  return balance(b, from, open_share(f, t, v));
}

void Model::end_flows(int f, double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const {
  const Broken& b = broken(f);
  const network::Feed& from = feed(f, v);
  const Flows is = now(f, t, v);
  const auto set = [&](Layout::OfEnd which, double value) {
    q[static_cast<std::size_t>(Layout::link(f, which))] = value;
  };
  set(Layout::pumping, from.supplied ? is.in + is.hoses : 0.0);
  set(Layout::elsewhere, from.supplied ? is.hoses : std::max(0.0, -is.in));
  const auto escaping = seq::split(is.out, v.flag(at_.full()) ? 0.0 : c_->catches.share);
  set(Layout::escape_sump, escaping.first);
  set(Layout::escape_slab, escaping.rest);
  const double left = std::max(0.0, v.amounts[static_cast<std::size_t>(Layout::above(f))]);
  const double drains =
      v.flag(Layout::flag(f, Layout::drained)) ? 0.0 : 2.0 * std::sqrt(b.above.volume * left) / b.above.drains_in;
  const auto draining = seq::split(drains, v.flag(at_.full()) ? 0.0 : c_->catches.share);
  set(Layout::drain_sump, draining.first);
  set(Layout::drain_slab, draining.rest);

  double& trunk = rate[static_cast<std::size_t>(Layout::trunk_flow(f))];
  double& escape = rate[static_cast<std::size_t>(Layout::escape_flow(f))];
  trunk = escape = 0.0;
  rate[static_cast<std::size_t>(Layout::leaked(f))] = is.out;
  if (v.flag(Layout::flag(f, Layout::settled))) return;
  const bool springs = b.compliance > 0.0;
  if (springs && b.inertance > 0.0 && from.supplied && !v.flag(Layout::flag(f, Layout::calm)) && !is_leak(b.opening) &&
      !v.flag(Layout::flag(f, Layout::held))) {
    trunk = (from.pressure.at(is.in).value - is.pressure) / b.inertance;
  }
  const double column = b.opening.inertance + (springs ? 0.0 : b.inertance);
  if (column > 0.0 && follows_columns(f, v) && !v.flag(Layout::flag(f, Layout::spent)) && (springs || from.supplied)) {
    const double drive = is.pressure - b.opening.weight - needed(b.opening, is.out, open_share(f, t, v)).value;
    escape = is.out > 0.0 || drive > 0.0 ? drive / column : 0.0;
  }
}

/// What reaches a full sump or a pool at a drain goes on at once.
void Model::pass_on(const seq::SequenceView& v, std::span<double> q) const {
  const auto sum = [&](Layout::OfEnd a, Layout::OfEnd b) {
    double total = 0.0;
    for (int f = 0; f < at_.ends; ++f) {
      total += q[static_cast<std::size_t>(Layout::link(f, a))] + q[static_cast<std::size_t>(Layout::link(f, b))];
    }
    return total;
  };
  double& over = q[static_cast<std::size_t>(at_.overflow())];
  const double taken = q[static_cast<std::size_t>(at_.seals())] + q[static_cast<std::size_t>(at_.burning())];
  over = 0.0;
  if (v.flag(at_.full())) {
    over = std::max(0.0, (c_->catches.exists ? sum(Layout::escape_sump, Layout::drain_sump) : 0.0) - taken);
  }
  const double onto = sum(Layout::escape_slab, Layout::drain_slab) + over;
  q[static_cast<std::size_t>(at_.to_drain())] =
      v.flag(at_.at_drain()) ? std::max(0.0, onto - q[static_cast<std::size_t>(at_.evaporating())]) : 0.0;
}

void Model::shared_flows(const seq::SequenceView& v, std::span<double> q) const {
  const double pool = std::max(0.0, v.amounts[static_cast<std::size_t>(at_.slab())]);
  const double in_sump = std::max(0.0, v.amounts[static_cast<std::size_t>(at_.sump())]);
  const double burns = c_->fire.burns ? c_->fire.burning : 0.0;
  q[static_cast<std::size_t>(at_.evaporating())] = (c_->slab.evaporation + burns) * pool / c_->slab.film;
  q[static_cast<std::size_t>(at_.seals())] =
      v.flag(at_.at_seal()) ? c_->catches.seal_leak * std::max(0.0, in_sump - c_->catches.seal_volume) : 0.0;
  q[static_cast<std::size_t>(at_.burning())] =
      std::min(burns * c_->fire.sump_area, in_sump / 1.0);  // dries in a second
  pass_on(v, q);
}

void Model::flows(double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const {
  for (int f = 0; f < at_.ends; ++f) end_flows(f, t, v, q, rate);
  shared_flows(v, q);
  const Fire& fire = c_->fire;
  double& warming = rate[static_cast<std::size_t>(at_.link_temperature())];
  warming = 0.0;
  if (fire.response_index > 0.0) {
    const double u = std::sqrt(fire.gas_speed), rise = v.auxiliaries[static_cast<std::size_t>(at_.link_temperature())];
    warming = u / fire.response_index * (fire.gas_temperature - fire.start - (1.0 + fire.conduction / u) * rise);
  }
}

// ---- guards -------------------------------------------------------------------------------------------------

void Model::guards(double t, const seq::SequenceView& v, std::span<const double> /*q*/, std::span<double> value) const {
  std::fill(value.begin(), value.end(), -1.0);
  for (int f = 0; f < at_.ends; ++f) {
    const Broken& b = broken(f);
    const auto set = [&](Layout::GuardOfEnd g, double x) { value[static_cast<std::size_t>(Layout::guard(f, g))] = x; };
    set(Layout::runs_dry, v.amounts[static_cast<std::size_t>(Layout::above(f))] - b.above.rest);
    const bool settled = v.flag(Layout::flag(f, Layout::settled));
    const double excess = v.amounts[static_cast<std::size_t>(Layout::line(f))];
    const double pressure = b.compliance > 0.0 ? b.rest_pressure + excess / b.compliance : b.opening.weight;
    set(Layout::runs_spent, settled ? 1.0 : pressure - b.opening.weight - spent_pressure);
    set(Layout::check_shuts, settled ? 1.0 : v.auxiliaries[static_cast<std::size_t>(Layout::trunk_flow(f))]);
    if (b.shutting.trip_volume < never) {
      const double leaked = v.auxiliaries[static_cast<std::size_t>(Layout::leaked(f))];
      const bool pressed = now(f, t, v).pressure >= b.shutting.trip_pressure;
      set(Layout::crack_trips, pressed ? leaked - b.shutting.trip_volume : -1.0);
    }
  }
  const auto set = [&](Layout::Shared g, double x) { value[static_cast<std::size_t>(at_.guard(g))] = x; };
  const auto held = [&](int compartment) { return v.amounts[static_cast<std::size_t>(compartment)]; };
  const auto past = [](double amount, double limit) { return limit < never ? amount - limit : -1.0; };
  set(Layout::sensor, t < c_->stops.sensor_dead_until ? -1.0 : past(held(at_.sump()), c_->catches.sensor_volume));
  set(Layout::seal, past(held(at_.sump()), c_->catches.seal_volume));
  set(Layout::brim, past(held(at_.sump()), c_->catches.brim_volume));
  set(Layout::drain, past(held(at_.slab()), c_->slab.reaches_drain));
  set(Layout::interceptor_full, past(held(at_.interceptor()), c_->slab.interceptor));
  set(Layout::reportable, past(held(at_.slab()) + held(at_.ground()) + held(at_.interceptor()), c_->reportable));
  if (c_->fire.response_index > 0.0) {
    set(Layout::link_parts, held(at_.compartments() - 1) * 0.0 +
                                v.auxiliaries[static_cast<std::size_t>(at_.link_temperature())] -
                                (c_->fire.rated - c_->fire.start));
  }
}

// ---- events -------------------------------------------------------------------------------------------------

void Model::on_event(const seq::Event& event, seq::Mutator& m) const {
  if (event.source == seq::EventSource::timed) return on_timed(event, m);
  const int own = Layout::guards_of_end * at_.ends;
  if (event.id < own) return on_end_guard(event.id / Layout::guards_of_end, event.id % Layout::guards_of_end, m);
  on_shared_guard(event.id - own, m);
}

void Model::on_timed(const seq::Event& event, seq::Mutator& m) const {
  const int f = end_of(event.id);
  switch (timed_of(event.id)) {
    case Timed::triggers:
      return trigger(f, m);
    case Timed::shuts:
      return shut(f, m);
    case Timed::pump_starts:
      return start_pump(f, m);
    case Timed::pump_stops:
      return stop_pump(f, m);
    case Timed::settles:
      return settle(f, m);
    case Timed::emergency_stop:
    case Timed::sensor_acts:
    case Timed::detector:
      return stop_all(m);
    case Timed::sensor_wakes:
      return;
  }
}

void Model::on_end_guard(int f, int which, seq::Mutator& m) const {
  if (which == Layout::runs_dry) {
    m.set_flag(Layout::flag(f, Layout::drained), true);
  } else if (which == Layout::crack_trips) {
    trigger(f, m);
  } else if (which == Layout::runs_spent) {
    m.set_flag(Layout::flag(f, Layout::spent), true);
    m.set_auxiliary(Layout::escape_flow(f), 0.0);
    m.set_flag(Layout::flag(f, Layout::settled), true);
    rest_at(f, {0.0, 0.0, 0.0, broken(f).opening.weight}, m);
  } else {  // the check valve shuts
    m.set_auxiliary(Layout::trunk_flow(f), 0.0);
    m.set_flag(Layout::flag(f, Layout::held), true);
    const Broken& b = broken(f);
    const double over = m.amount(Layout::line(f)) - b.compliance * (b.relief - b.rest_pressure);
    if (b.relief < never && over > 0.0) m.transfer(Layout::line(f), Layout::tank(f), over, cause_relief);
    if (m.flag(Layout::flag(f, Layout::shut))) settle(f, m);
  }
}

void Model::on_shared_guard(int which, seq::Mutator& m) const {
  if (which == Layout::sensor) {
    m.set_flag(at_.wet(), true);
    if (c_->stops.sensor_acts_in < never) {
      m.schedule({m.time() + c_->stops.sensor_acts_in, stopping, timed_id(Timed::sensor_acts), 0.0});
    }
  } else if (which == Layout::seal) {
    m.set_flag(at_.at_seal(), true);
  } else if (which == Layout::brim) {
    m.set_flag(at_.full(), true);
  } else if (which == Layout::drain) {
    m.set_flag(at_.at_drain(), true);
  } else if (which == Layout::interceptor_full) {
    m.set_flag(at_.at_drain(), false);
  } else if (which == Layout::link_parts) {
    for (int f = 0; f < at_.ends; ++f) {
      if (broken(f).shutting.by_link) trigger(f, m);
    }
  }
}

void Model::trigger(int f, seq::Mutator& m) const {
  if (m.flag(Layout::flag(f, Layout::triggered))) return;
  m.set_flag(Layout::flag(f, Layout::triggered), true);
  m.set_mark(Layout::mark(f, Layout::triggered_at), m.time());
  for (const auto which : {Layout::escape_sump, Layout::escape_slab})
    m.set_cause(Layout::link(f, which), cause_closing);
  m.schedule({m.time() + parts::shut_time(broken(f).shutting.law), shutting, timed_id(Timed::shuts, f), 0.0});
  disturb(f, m);
}

void Model::shut(int f, seq::Mutator& m) const {
  m.set_flag(Layout::flag(f, Layout::shut), true);
  m.set_auxiliary(Layout::escape_flow(f), 0.0);
  for (const auto which : {Layout::escape_sump, Layout::escape_slab}) m.set_cause(Layout::link(f, which), cause_seat);
  disturb(f, m);
}

void Model::start_pump(int f, seq::Mutator& m) const {
  const Broken& b = broken(f);
  if (m.flag(at_.stopped())) return;
  if (b.runs_for < never) {
    m.schedule({m.time() + b.runs_for, stopping, timed_id(Timed::pump_stops, f), 0.0});
    m.schedule({m.time() + b.runs_for + b.rests_for, stopping, timed_id(Timed::pump_starts, f), 0.0});
  }
  if (m.flag(Layout::flag(f, Layout::pump_on))) return;
  m.set_flag(Layout::flag(f, Layout::pump_on), true);
  m.set_flag(Layout::flag(f, Layout::spent), false);
  disturb(f, m);
}

void Model::stop_pump(int f, seq::Mutator& m) const {
  if (!m.flag(Layout::flag(f, Layout::pump_on))) return;
  const Broken& b = broken(f);
  m.set_flag(Layout::flag(f, Layout::pump_on), false);
  m.set_auxiliary(Layout::trunk_flow(f), 0.0);
  if (!b.checked) {
    const double pressed = m.amount(Layout::line(f));
    if (pressed > 0.0) m.transfer(Layout::line(f), Layout::tank(f), pressed, cause_runs_back);
  }
  if (!m.flag(Layout::flag(f, Layout::triggered))) {
    for (const auto which : {Layout::escape_sump, Layout::escape_slab}) {
      if (!is_leak(b.opening)) m.set_cause(Layout::link(f, which), cause_after_stop);
    }
  }
  disturb(f, m);
}

void Model::stop_all(seq::Mutator& m) const {
  m.set_flag(at_.stopped(), true);
  for (int f = 0; f < at_.ends; ++f) stop_pump(f, m);
}

/// The line moves again. A leak is too small to move a column: it settles at once.
void Model::disturb(int f, seq::Mutator& m) const {
  const Broken& b = broken(f);
  m.cancel(settling, timed_id(Timed::settles, f));
  m.set_flag(Layout::flag(f, Layout::settled), false);
  m.set_flag(Layout::flag(f, Layout::held), false);
  const bool on = m.flag(Layout::flag(f, Layout::pump_on));
  m.set_flag(Layout::flag(f, Layout::calm), is_leak(b.opening) || !on);
  m.arm(Layout::guard(f, Layout::runs_spent), !on && b.compliance > 0.0);
  m.arm(Layout::guard(f, Layout::check_shuts), false);
  const bool closing = m.flag(Layout::flag(f, Layout::triggered)) && !m.flag(Layout::flag(f, Layout::shut));
  if (is_leak(b.opening) && !closing) return settle(f, m);
  const bool columns = b.inertance > 0.0 && b.compliance > 0.0 && b.running.open.empty();
  m.arm(Layout::guard(f, Layout::check_shuts), on && columns && m.flag(Layout::flag(f, Layout::shut)));
  m.schedule({m.time() + follows_for, settling, timed_id(Timed::settles, f), 0.0});
}

/// The balance that the line comes to, taken as it stands until something moves it again.
void Model::settle(int f, seq::Mutator& m) const {
  const Broken& b = broken(f);
  const bool shut_now = m.flag(Layout::flag(f, Layout::shut));
  const bool on = m.flag(Layout::flag(f, Layout::pump_on));
  const bool leaks = shut_now ? b.opening.seat_leak > 0.0 : true;
  if (m.flag(Layout::flag(f, Layout::triggered)) && !shut_now) {  // still closing
    return m.schedule({m.time() + follows_for, settling, timed_id(Timed::settles, f), 0.0});
  }
  m.set_flag(Layout::flag(f, Layout::calm), true);
  const network::Feed& from = on ? b.running : b.stopped;
  if (!on || !from.supplied) {
    const bool still = b.compliance == 0.0 || (!leaks && from.shut());
    if (!still) return m.arm(Layout::guard(f, Layout::runs_spent), b.compliance > 0.0);  // it springs back
    m.set_flag(Layout::flag(f, Layout::settled), true);
    return rest_at(
        f, {0.0, 0.0, 0.0, b.rest_pressure + (b.compliance > 0.0 ? m.amount(Layout::line(f)) / b.compliance : 0.0)}, m);
  }
  Flows is{0.0, 0.0, hoses_at(from, 0.0), from.pressure.at(0.0).value};
  if (leaks) is = balances_[static_cast<std::size_t>(2 * f + (shut_now ? 1 : 0))];
  const double excess = b.compliance * (is.pressure - b.rest_pressure);
  const bool trapped = !leaks && from.open.empty() && m.amount(Layout::line(f)) > excess;
  if (trapped) is.pressure = b.rest_pressure + m.amount(Layout::line(f)) / b.compliance;
  if (!trapped && b.compliance > 0.0) {
    m.transfer(Layout::tank(f), Layout::line(f), excess - m.amount(Layout::line(f)), cause_line_settles);
  }
  m.set_flag(Layout::flag(f, Layout::settled), true);
  rest_at(f, is, m);
}

void Model::rest_at(int f, const Flows& is, seq::Mutator& m) const {
  m.set_mark(Layout::mark(f, Layout::settled_in), is.in);
  m.set_mark(Layout::mark(f, Layout::settled_out), is.out);
  m.set_mark(Layout::mark(f, Layout::settled_hoses), is.hoses);
  m.set_mark(Layout::mark(f, Layout::settled_pressure), is.pressure);
  m.set_auxiliary(Layout::trunk_flow(f), is.in);
  m.set_auxiliary(Layout::escape_flow(f), is.out);
}

// ---- long quiet times -----------------------------------------------------------------------------------------

bool Model::quiet(double /*t*/, const seq::SequenceView& v) const {
  if (c_->fire.burns || c_->fire.response_index > 0.0 || c_->slab.evaporation > 0.0) return false;
  if (v.flag(at_.at_seal()) && c_->catches.seal_leak > 0.0) return false;
  for (int f = 0; f < at_.ends; ++f) {
    if (v.flag(Layout::flag(f, Layout::settled))) continue;
    const Broken& b = broken(f);
    const bool springs_back = !v.flag(Layout::flag(f, Layout::pump_on)) && b.stopped.shut() && b.compliance > 0.0;
    const bool closing = v.flag(Layout::flag(f, Layout::triggered)) && !v.flag(Layout::flag(f, Layout::shut));
    if (!springs_back || !leaks_only(f, v) || closing) return false;
  }
  return true;
}

void Model::advance_analytically(double from, double to, const seq::SequenceView& v, std::span<double> moved,
                                 std::span<double> auxiliaries) const {
  std::fill(moved.begin(), moved.end(), 0.0);
  for (int f = 0; f < at_.ends; ++f) {
    const Broken& b = broken(f);
    const auto put = [&](Layout::OfEnd which, double x) {
      moved[static_cast<std::size_t>(Layout::link(f, which))] = x;
    };
    double out = 0.0;
    if (v.flag(Layout::flag(f, Layout::settled))) {
      const Flows is = now(f, from, v);
      const bool supplied = feed(f, v).supplied;
      put(Layout::pumping, supplied ? (is.in + is.hoses) * (to - from) : 0.0);
      put(Layout::elsewhere, supplied ? is.hoses * (to - from) : 0.0);
      out = is.out * (to - from);
    } else {
      const bool seat = v.flag(Layout::flag(f, Layout::shut));
      const seq::LeakLaw leak = seat ? seq::LeakLaw{b.opening.seat_leak, 0.5}
                                     : seq::LeakLaw{b.opening.leak_coefficient, b.opening.leak_exponent};
      const double p = b.rest_pressure + v.amounts[static_cast<std::size_t>(Layout::line(f))] / b.compliance;
      out = seq::blow_down(std::max(0.0, p - b.opening.weight), b.compliance, leak, to - from).released;
    }
    const auto escaping = seq::split(out, v.flag(at_.full()) ? 0.0 : c_->catches.share);
    put(Layout::escape_sump, escaping.first);
    put(Layout::escape_slab, escaping.rest);
    auxiliaries[static_cast<std::size_t>(Layout::leaked(f))] += out;
    const auto draining =
        seq::split(drained_by(b.above, v.amounts[static_cast<std::size_t>(Layout::above(f))], to - from),
                   v.flag(at_.full()) ? 0.0 : c_->catches.share);
    put(Layout::drain_sump, draining.first);
    put(Layout::drain_slab, draining.rest);
  }
  pass_on(v, moved);
}

// ---- start ----------------------------------------------------------------------------------------------------

seq::SequenceStart Model::start() const {
  seq::SequenceStart s;
  s.end = c_->end;
  s.amounts.assign(static_cast<std::size_t>(at_.compartments()), 0.0);
  s.auxiliaries.assign(static_cast<std::size_t>(at_.auxiliaries()), 0.0);
  s.marks.assign(static_cast<std::size_t>(at_.marks()), 0.0);
  s.causes.assign(static_cast<std::size_t>(at_.links()), cause_overflow);
  const auto flag = [&](int which) { s.flags |= std::uint64_t{1} << which; };
  for (int f = 0; f < at_.ends; ++f) {
    const Broken& b = broken(f);
    const auto cause = [&](Layout::OfEnd which, Cause c) {
      s.causes[static_cast<std::size_t>(Layout::link(f, which))] = c;
    };
    cause(Layout::pumping, cause_pumped);
    cause(Layout::elsewhere, cause_elsewhere);
    for (const auto which : {Layout::escape_sump, Layout::escape_slab})
      cause(which, is_leak(b.opening) ? cause_crack : cause_open);
    for (const auto which : {Layout::drain_sump, Layout::drain_slab}) cause(which, cause_drains);
    s.amounts[static_cast<std::size_t>(Layout::above(f))] = b.above.volume;
    if (!(b.above.volume > b.above.rest)) flag(Layout::flag(f, Layout::drained));
    if (b.running.supplied) {
      s.amounts[static_cast<std::size_t>(Layout::line(f))] =
          b.compliance * (b.running.pressure.at(0.0).value - b.rest_pressure);
    }
    const bool runs = b.starts_running && b.running.supplied;
    if (runs) flag(Layout::flag(f, Layout::pump_on));
    if (is_leak(b.opening) || !runs) flag(Layout::flag(f, Layout::calm));
    s.timed.push_back({is_leak(b.opening) || !runs ? 0.0 : follows_for, settling, timed_id(Timed::settles, f), 0.0});
    if (b.shutting.triggers_at < never)
      s.timed.push_back({b.shutting.triggers_at, shutting, timed_id(Timed::triggers, f), 0.0});
    for (const double at : b.pump_on) s.timed.push_back({at, stopping, timed_id(Timed::pump_starts, f), 0.0});
    if (b.detector_sees && c_->stops.detector_at < never) {
      s.timed.push_back({c_->stops.detector_at, stopping, timed_id(Timed::detector, f), 0.0});
    }
  }
  s.causes[static_cast<std::size_t>(at_.seals())] = cause_seals;
  s.causes[static_cast<std::size_t>(at_.to_drain())] = cause_runs_to_drain;
  s.causes[static_cast<std::size_t>(at_.evaporating())] = c_->fire.burns ? cause_burns : cause_evaporates;
  s.causes[static_cast<std::size_t>(at_.burning())] = cause_burns;
  if (c_->stops.emergency_stop < never) {
    s.timed.push_back({c_->stops.emergency_stop, stopping, timed_id(Timed::emergency_stop), 0.0});
  }
  if (c_->stops.sensor_dead_until > 0.0 && c_->stops.sensor_dead_until < never) {
    s.timed.push_back({c_->stops.sensor_dead_until, telling, timed_id(Timed::sensor_wakes), 0.0});
  }
  return s;
}

}  // namespace forecourse::studies::release
