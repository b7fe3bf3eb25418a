#include <algorithm>
#include <cmath>

#include "forecourse/solvers/sequence/blow_down.h"
#include "forecourse/solvers/sequence/laws.h"
#include "forecourse/studies/incident/release/model.h"

namespace forecourse::studies::release {

bool Model::quiet(double /*t*/, const seq::SequenceView& v) const {
  if (c_->fire.burns || c_->fire.response_index > 0.0 || c_->slab.evaporation > 0.0) return false;
  if (v.flag(layout_.at_seal()) && c_->catches.seal_leak > 0.0) return false;
  for (int f = 0; f < layout_.ends; ++f) {
    if (v.flag(Layout::flag(f, Layout::settled))) {
      if (level_moves(f, v)) return false;
      continue;
    }
    const Broken& b = broken(f);
    const network::Feed& from = feed(f, v);
    const bool pressed = b.rest_pressure + v.amounts[at(Layout::line(f))] / b.compliance > floor(f, v);
    const bool alone = from.shut() || (by_gravity(f, v) && from.open.empty() && pressed);
    const bool springs_back = !v.flag(Layout::flag(f, Layout::pump_on)) && alone && b.compliance > 0.0;
    const bool closing = v.flag(Layout::flag(f, Layout::triggered)) && !v.flag(Layout::flag(f, Layout::shut));
    if (!springs_back || !leaks_only(f, v) || closing) return false;
  }
  return true;
}

void Model::advance_analytically(double from, double to, const seq::SequenceView& v, std::span<double> moved,
                                 std::span<double> auxiliaries) const {
  std::fill(moved.begin(), moved.end(), 0.0);
  for (int f = 0; f < layout_.ends; ++f) {
    const Broken& b = broken(f);
    const auto put = [&](Layout::OfEnd which, double x) { moved[at(Layout::link(f, which))] = x; };
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
      const double p = b.rest_pressure + v.amounts[at(Layout::line(f))] / b.compliance;
      out = seq::blow_down(std::max(0.0, p - b.opening.weight), b.compliance, leak, to - from).released;
    }
    const auto escaping = seq::split(out, v.flag(layout_.full()) ? 0.0 : c_->catches.share);
    put(Layout::escape_sump, escaping.first);
    put(Layout::escape_slab, escaping.rest);
    auxiliaries[at(Layout::leaked(f))] += out;
    const auto draining = seq::split(drained_by(b.above, v.amounts[at(Layout::above(f))], to - from),
                                     v.flag(layout_.full()) ? 0.0 : c_->catches.share);
    put(Layout::drain_sump, draining.first);
    put(Layout::drain_slab, draining.rest);
  }
  pass_on(v, moved);
}

}  // namespace forecourse::studies::release
