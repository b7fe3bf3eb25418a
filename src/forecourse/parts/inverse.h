#pragma once

#include <cmath>
#include <limits>

#include "forecourse/parts/loss.h"

namespace forecourse::parts {

/// Flows known to lie on both sides of an answer [m3/s].
struct FlowRange {
  double low = 0.0;
  double high = 0.0;
};

/// Flow at which a rising law loses a given pressure: Newton's method kept inside a shrinking range.
///
/// \param loss_at       a rising law: flow [m3/s] -> Loss [Pa], [Pa s/m3]
/// \param pressure_loss wanted [Pa], between the losses at the ends of the range
/// \param range         flows on both sides [m3/s]
/// \return flow [m3/s].
/// \error rounding of the loss.
/// \source common practice, no source
template <class LossAt>
double flow_in_range(const LossAt& loss_at, double pressure_loss, FlowRange range) {
  double flow = 0.5 * (range.low + range.high);
  const auto is_near = [](double next, double at) {
    return std::abs(next - at) <= std::numeric_limits<double>::epsilon() * std::abs(at);
  };
  for (int step = 0; step < 200; ++step) {
    const Loss here = loss_at(flow);
    const double miss = here.pressure_loss - pressure_loss;
    if (miss == 0.0) return flow;
    (miss > 0.0 ? range.high : range.low) = flow;
    double next = flow - miss / here.slope;
    if (is_near(next, flow)) return next;  // before the range is asked: rounding may put the last step beyond its end
    if (!(next > range.low && next < range.high)) next = 0.5 * (range.low + range.high);
    if (is_near(next, flow)) return next;
    flow = next;
  }
  return flow;
}

/// Flow at which a rising law loses a given pressure, with no range known.
///
/// \param loss_at       a rising law: flow [m3/s] -> Loss [Pa], [Pa s/m3]
/// \param pressure_loss wanted [Pa]
/// \return flow [m3/s]; NaN when no flow up to 1e6 m3/s either way loses that much.
/// \error rounding of the loss.
/// \source common practice, no source
template <class LossAt>
double flow_anywhere(const LossAt& loss_at, double pressure_loss) {
  const double at_rest = loss_at(0.0).pressure_loss;
  if (at_rest == pressure_loss) return 0.0;
  const double sign = pressure_loss > at_rest ? 1.0 : -1.0;
  double near = 0.0;
  for (double far = 1e-6 * sign; std::abs(far) <= 1e6; near = far, far *= 10.0) {
    if (sign * (loss_at(far).pressure_loss - pressure_loss) < 0.0) continue;
    return flow_in_range(loss_at, pressure_loss, sign > 0.0 ? FlowRange{near, far} : FlowRange{far, near});
  }
  return std::numeric_limits<double>::quiet_NaN();
}

}  // namespace forecourse::parts
