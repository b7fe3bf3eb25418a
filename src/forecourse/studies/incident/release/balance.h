#pragma once

#include <algorithm>
#include <cmath>

#include "forecourse/solvers/sequence/laws.h"
#include "forecourse/studies/incident/release/release_case.h"

namespace forecourse::studies::release {

/// What stands between the pump and the open air at one moment.
struct Flows {
  double in = 0.0;        ///< [m3/s] drawn from the piping at the place
  double out = 0.0;       ///< [m3/s] out of the opening
  double hoses = 0.0;     ///< [m3/s] elsewhere
  double pressure = 0.0;  ///< [Pa] piezometric at the place
};

[[nodiscard]] inline bool is_leak(const Opening& opening) { return opening.leak_coefficient > 0.0; }

/// Leak q = k p^n; its root made smooth about zero.
/// \param pressure above that outside [Pa]
/// \return [m3/s]
[[nodiscard]] inline double leak_flow(double coefficient, double exponent, double pressure) {
  constexpr double smooth = 2.0;  // [Pa]
  if (!(pressure > 0.0)) return 0.0;
  return coefficient *
         (exponent == 0.5 ? solvers::sequence::one_way_root(pressure, smooth) : std::pow(pressure, exponent));
}

/// Pressure that drives a flow through path and opening, a share of the valve open [Pa], [Pa s/m3].
/// \source common practice, no source: the valve's loss grows with the inverse square of its opening
[[nodiscard]] inline network::TableValue needed(const Opening& o, double flow, double share) {
  const double b = o.discharge + o.valve * (1.0 / (share * share) - 1.0);
  const network::TableValue path = o.path.empty() ? network::TableValue{} : o.path.at(flow);
  return {path.value + b * flow * std::abs(flow), path.slope + 2.0 * b * std::abs(flow)};
}

/// What the hoses elsewhere get while a flow is drawn at the place [m3/s].
[[nodiscard]] inline double hoses_at(const network::Feed& feed, double in) {
  return feed.shut() ? 0.0 : std::max(0.0, feed.hoses.at(in).value);
}

/// Flow through path and opening under a pressure above the opening's weight [m3/s].
[[nodiscard]] double out_under(const Opening& opening, double pressure, double share);

/// Where a leak q = k (p - weight)^n and a feed agree.
/// \param fall [Pa] by which the liquid in the tank stands lower than when the feed was solved
[[nodiscard]] Flows leak_balance(const network::Feed& feed, const Opening& opening, double coefficient, double exponent,
                                 double fall = 0.0);

/// Balance of feed and opening, a share of the valve open.
/// \param fall [Pa] by which the liquid in the tank stands lower than when the feed was solved
/// \param near [m3/s] flow near which it is looked for first; 0: not known
[[nodiscard]] Flows balance(const Broken& broken, const network::Feed& feed, double share, double fall = 0.0,
                            double near = 0.0);

/// What feeds an end when it begins: its pumps, or with these off its tank.
[[nodiscard]] inline const network::Feed& feeding(const Broken& b) {
  return b.starts_running || !b.pump_on.empty() ? b.running : b.stopped;
}

/// A leak while the line stands at a pressure that is known.
/// \param from_pump share of it that the pump gives; the rest comes out of the line [1]
[[nodiscard]] Flows at_pressure(const Broken& broken, double pressure, double from_pump);

/// What runs out of an upright vessel in a time, by the law of its falling level: V = V0 (1 - t / T)^2 [m3].
/// \source law of nature (Torricelli)
[[nodiscard]] double drained_by(const Above& above, double left, double time);

}  // namespace forecourse::studies::release
