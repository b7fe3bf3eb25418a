#include "forecourse/studies/incident/release/balance.h"

namespace forecourse::studies::release {
namespace {

/// Root of a falling function of the flow between 0 and `most`, by Newton kept inside, from a first guess; the end that
/// is nearer to it where there is none. The ends are looked at only once a step leads beyond them.
template <class Left>
double balance_flow(const Left& left, double most, double guess) {
  double low = 0.0, high = most, flow = guess;
  // Asked before the range is: Newton ends at one end of it as a rule, and rounding may put the last step beyond.
  const auto is_near = [&](double next) { return std::abs(next - flow) <= 1e-15 + 1e-11 * flow; };
  for (int i = 0; i < 80; ++i) {
    const network::TableValue here = left(flow);
    (here.value > 0.0 ? low : high) = flow;
    double next = flow - here.value / here.slope;
    if (is_near(next)) return next;
    if (!(next > low && next < high)) {
      if (low == 0.0 && left(0.0).value <= 0.0) return 0.0;
      if (high == most && left(most).value >= 0.0) return most;
      next = 0.5 * (low + high);
    }
    if (is_near(next)) return next;
    flow = next;
  }
  return flow;
}

}  // namespace

double out_under(const Opening& o, double pressure, double share) {
  if (!(pressure > 0.0)) return 0.0;
  const double b = o.discharge + o.valve * (1.0 / (share * share) - 1.0);
  const double most = std::sqrt(pressure / b);
  const double path = o.path.empty() ? 0.0 : o.path.at(most).value / (most * most);  // as if its loss were all square
  return std::min(o.limit, balance_flow(
                               [&](double q) {
                                 const network::TableValue n = needed(o, q, share);
                                 return network::TableValue{pressure - n.value, -n.slope};
                               },
                               most, std::sqrt(pressure / (b + path))));
}

Flows leak_balance(const network::Feed& feed, const Opening& o, double coefficient, double exponent, double fall) {
  const double weight = o.weight + fall;
  const double most = leak_flow(coefficient, exponent, feed.pressure.at(0.0).value - weight);
  const auto left = [&](double q) {
    const network::TableValue p = feed.pressure.at(q);
    const double drive = std::max(p.value - weight, 1e-9);
    const double out = leak_flow(coefficient, exponent, drive);
    return network::TableValue{out - q, exponent * out / drive * p.slope - 1.0};
  };
  const double q = balance_flow(left, most * (1.0 + 1e-12), most);
  return {q, q, hoses_at(feed, q), feed.pressure.at(q).value - fall};
}

Flows balance(const Broken& b, const network::Feed& feed, double share, double fall, double near) {
  const Opening& o = b.opening;
  if (feed.shut() || !feed.supplied) return {0.0, 0.0, hoses_at(feed, 0.0), o.weight};
  if (is_leak(o)) return leak_balance(feed, o, o.leak_coefficient, o.leak_exponent, fall);
  const double weight = o.weight + fall, most = feed.pressure.last();
  const double free = balance_flow(
      [&](double x) {
        const network::TableValue p = feed.pressure.at(x);
        const network::TableValue n = needed(o, x, share);
        return network::TableValue{p.value - weight - n.value, p.slope - n.slope};
      },
      most, near > 0.0 && near < most ? near : 0.5 * most);
  const double q = std::min(o.limit, free);
  return {q, q, hoses_at(feed, q), feed.pressure.at(q).value - fall};
}

Flows at_pressure(const Broken& b, double pressure, double from_pump) {
  const Opening& o = b.opening;
  const double q = leak_flow(o.leak_coefficient, o.leak_exponent, pressure - o.weight);
  return {from_pump * q, q, from_pump > 0.0 ? hoses_at(b.running, q) : 0.0, pressure};
}

double drained_by(const Above& above, double left, double time) {
  if (!(left > above.rest)) return 0.0;
  const double root = std::max(0.0, std::sqrt(left) - std::sqrt(above.volume) * time / above.drains_in);
  return left - root * root;
}

}  // namespace forecourse::studies::release
