#include <algorithm>
#include <cmath>

#include "forecourse/solvers/sequence/laws.h"
#include "forecourse/studies/incident/release/model.h"

namespace forecourse::studies::release {

const network::Feed& Model::feed(int f, const seq::SequenceView& v) const {
  if (v.flag(layout_.dry(f))) return nothing_;
  return v.flag(Layout::flag(f, Layout::pump_on)) ? broken(f).running : broken(f).stopped;
}

bool Model::by_gravity(int f, const seq::SequenceView& v) const {
  return broken(f).stopped.supplied && !v.flag(Layout::flag(f, Layout::pump_on)) && !v.flag(layout_.dry(f));
}

double Model::fall(int f, const seq::SequenceView& v) const {
  const Broken& b = broken(f);
  return b.fall.empty() ? 0.0 : b.fall.at(-v.amounts[at(Layout::tank(f))]).value;
}

double Model::floor(int f, const seq::SequenceView& v) const {
  const Broken& b = broken(f);
  return by_gravity(f, v) ? b.stopped.pressure.at(0.0).value - fall(f, v) : b.opening.weight;
}

bool Model::level_moves(int f, const seq::SequenceView& v) const {
  return !broken(f).fall.empty() && !leaks_only(f, v) && feed(f, v).supplied;
}

Flows Model::balanced(int f, const seq::SequenceView& v) const {
  if (level_moves(f, v)) {
    return balance(broken(f), feed(f, v), 1.0, fall(f, v), v.auxiliaries[at(Layout::escape_flow(f))]);
  }
  const int on = v.flag(Layout::flag(f, Layout::pump_on)) ? 0 : 2;
  return balances_[at(4 * f + on + (v.flag(Layout::flag(f, Layout::shut)) ? 1 : 0))];
}

double Model::open_share(int f, double t, const seq::SequenceView& v) const {
  if (v.flag(Layout::flag(f, Layout::shut))) return 0.0;
  if (!v.flag(Layout::flag(f, Layout::triggered))) return 1.0;
  // Up to the event that shuts it, the moment of shutting itself included, it is as it was just before.
  constexpr double nearly_shut = 1e-3;
  const parts::ClosingLaw& law = broken(f).shutting.law;
  const double since = t - v.marks[at(Layout::mark(f, Layout::triggered_at))];
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
    return std::clamp(v.auxiliaries[at(Layout::escape_flow(f))], 0.0, b.opening.limit);
  }
  return out_under(b.opening, drive, open_share(f, t, v));
}

Flows Model::now(int f, double t, const seq::SequenceView& v) const {
  const auto mark = [&](Layout::MarkOfEnd m) { return v.marks[at(Layout::mark(f, m))]; };
  if (v.flag(Layout::flag(f, Layout::settled))) {
    if (level_moves(f, v)) return balanced(f, v);
    return {mark(Layout::settled_in), mark(Layout::settled_out), mark(Layout::settled_hoses),
            mark(Layout::settled_pressure)};
  }
  const Broken& b = broken(f);
  const network::Feed& from = feed(f, v);
  if (b.compliance > 0.0) {
    const double p = b.rest_pressure + v.amounts[at(Layout::line(f))] / b.compliance;
    const bool by_column =
        b.inertance > 0.0 && from.supplied && !v.flag(Layout::flag(f, Layout::calm)) && !is_leak(b.opening);
    double in = by_column ? v.auxiliaries[at(Layout::trunk_flow(f))] : from.flow_at(p + fall(f, v));
    if (v.flag(Layout::flag(f, Layout::held))) in = 0.0;
    if (by_gravity(f, v) && from.open.empty()) in = std::max(0.0, in);  // nothing runs back past a standing pump
    return {in, out_at(f, t, v, p), hoses_at(from, in), p};
  }
  if (v.flag(Layout::flag(f, Layout::shut)) && !(b.opening.seat_leak > 0.0)) {
    return {0.0, 0.0, hoses_at(from, 0.0), from.shut() ? b.opening.weight : from.pressure.at(0.0).value - fall(f, v)};
  }
  if (from.shut() || !from.supplied) return {0.0, 0.0, hoses_at(from, 0.0), b.opening.weight};
  if (v.flag(Layout::flag(f, Layout::shut))) return leak_balance(from, b.opening, b.opening.seat_leak, 0.5);
  if (b.inertance + b.opening.inertance > 0.0 && follows_columns(f, v)) {
    const double q = std::clamp(v.auxiliaries[at(Layout::escape_flow(f))], 0.0, b.opening.limit);
    return {q, q, hoses_at(from, q), from.pressure.at(q).value - fall(f, v)};
  }
  return balance(b, from, open_share(f, t, v), fall(f, v));
}

std::optional<double> Model::line_pressure(double t, const seq::SequenceView& v) const {
  const Broken& b = broken(0);
  const bool springs = b.compliance > 0.0;
  if (!springs && !b.running.supplied && !b.stopped.supplied) return std::nullopt;
  const Flows is = now(0, t, v);
  if (springs || feed(0, v).supplied || is.out > 0.0) return is.pressure - b.opening.weight;
  if (v.flag(Layout::flag(0, Layout::shut)) && !(b.opening.seat_leak > 0.0)) return std::nullopt;
  return 0.0;  // open to the air, and nothing to spring back
}

std::optional<double> Model::pressure_before() const {
  const auto stands = begins_at(0);
  return stands ? std::optional(*stands - broken(0).opening.weight) : std::nullopt;
}

void Model::end_flows(int f, double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const {
  const Broken& b = broken(f);
  const network::Feed& from = feed(f, v);
  const Flows is = now(f, t, v);
  const auto set = [&](Layout::OfEnd which, double value) { q[at(Layout::link(f, which))] = value; };
  set(Layout::pumping, from.supplied ? is.in + is.hoses : 0.0);
  set(Layout::elsewhere, from.supplied ? is.hoses : std::max(0.0, -is.in));
  const auto escaping = seq::split(is.out, v.flag(layout_.full()) ? 0.0 : c_->catches.share);
  set(Layout::escape_sump, escaping.first);
  set(Layout::escape_slab, escaping.rest);
  const double left = std::max(0.0, v.amounts[at(Layout::above(f))]);
  const double drains =
      v.flag(Layout::flag(f, Layout::drained)) ? 0.0 : 2.0 * std::sqrt(b.above.volume * left) / b.above.drains_in;
  const auto draining = seq::split(drains, v.flag(layout_.full()) ? 0.0 : c_->catches.share);
  set(Layout::drain_sump, draining.first);
  set(Layout::drain_slab, draining.rest);

  double& trunk = rate[at(Layout::trunk_flow(f))];
  double& escape = rate[at(Layout::escape_flow(f))];
  trunk = escape = 0.0;
  rate[at(Layout::leaked(f))] = is.out;
  if (v.flag(Layout::flag(f, Layout::settled))) return;
  const bool springs = b.compliance > 0.0;
  if (springs && b.inertance > 0.0 && from.supplied && !v.flag(Layout::flag(f, Layout::calm)) && !is_leak(b.opening) &&
      !v.flag(Layout::flag(f, Layout::held))) {
    const double drive = from.pressure.at(is.in).value - fall(f, v) - is.pressure;
    const bool holds = by_gravity(f, v) && from.open.empty() && !(is.in > 0.0) && !(drive > 0.0);
    trunk = holds ? 0.0 : drive / b.inertance;
  }
  const double column = b.opening.inertance + (springs ? 0.0 : b.inertance);
  if (column > 0.0 && follows_columns(f, v) && !v.flag(Layout::flag(f, Layout::spent)) && (springs || from.supplied)) {
    const double drive = is.pressure - b.opening.weight - needed(b.opening, is.out, open_share(f, t, v)).value;
    const bool limited = is.out >= b.opening.limit && drive > 0.0;
    escape = !limited && (is.out > 0.0 || drive > 0.0) ? drive / column : 0.0;
  }
}

/// What reaches a full sump or a pool at a drain goes on at once.
void Model::pass_on(const seq::SequenceView& v, std::span<double> q) const {
  const auto sum = [&](Layout::OfEnd a, Layout::OfEnd b) {
    double total = 0.0;
    for (int f = 0; f < layout_.ends; ++f) {
      total += q[at(Layout::link(f, a))] + q[at(Layout::link(f, b))];
    }
    return total;
  };
  double& over = q[at(layout_.overflow())];
  const double taken = q[at(layout_.seals())] + q[at(layout_.burning())];
  over = 0.0;
  if (v.flag(layout_.full())) {
    over = std::max(0.0, (c_->catches.exists ? sum(Layout::escape_sump, Layout::drain_sump) : 0.0) - taken);
  }
  const double onto = sum(Layout::escape_slab, Layout::drain_slab) + over;
  q[at(layout_.to_drain())] = v.flag(layout_.at_drain()) ? std::max(0.0, onto - q[at(layout_.evaporating())]) : 0.0;
}

void Model::shared_flows(const seq::SequenceView& v, std::span<double> q) const {
  const double pool = std::max(0.0, v.amounts[at(layout_.slab())]);
  const double in_sump = std::max(0.0, v.amounts[at(layout_.sump())]);
  const double burns = c_->fire.burns ? c_->fire.burning : 0.0;
  q[at(layout_.evaporating())] = (c_->slab.evaporation + burns) * pool / c_->slab.film;
  q[at(layout_.seals())] =
      v.flag(layout_.at_seal()) ? c_->catches.seal_leak * std::max(0.0, in_sump - c_->catches.seal_volume) : 0.0;
  q[at(layout_.burning())] = std::min(burns * c_->fire.sump_area, in_sump / 1.0);  // dries in a second
  pass_on(v, q);
}

void Model::flows(double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const {
  for (int f = 0; f < layout_.ends; ++f) end_flows(f, t, v, q, rate);
  shared_flows(v, q);
  const Fire& fire = c_->fire;
  double& warming = rate[at(layout_.link_temperature())];
  warming = 0.0;
  if (fire.response_index > 0.0) {
    const double u = std::sqrt(fire.gas_speed), rise = v.auxiliaries[at(layout_.link_temperature())];
    warming = u / fire.response_index * (fire.gas_temperature - fire.start - (1.0 + fire.conduction / u) * rise);
  }
}

}  // namespace forecourse::studies::release
