#pragma once

#include <string>
#include <vector>

#include "forecourse/decide/compare/rows.h"

namespace forecourse::decide {

/// One figure of one station; what it is of is what the other station's figure is found by.
struct Figure {
  Topic topic = Topic::hose_flow;
  std::string system;
  std::string state;
  std::string subject;
  std::string detail = {};
  std::optional<double> bore = {};
  double value = 0.0;  ///< NaN: there is none, and `detail` says why

  [[nodiscard]] bool is_of_the_same(const Figure& other) const {
    return topic == other.topic && state == other.state && subject == other.subject && bore == other.bore;
  }
};

/// Flows, pressures and velocities of every state of a result, by topic.
[[nodiscard]] std::vector<Figure> flow_figures(const studies::FlowResult& flow);

/// Lengths of the piping and the count of its joints, by topic.
///
/// What is counted as a joint: each end of a line, at the place where it ends; each end of a riser and of a pump's
/// leg; the outlet of a shear valve; and where a shear valve stands on a tee without a riser, its inlet. Fittings
/// along a run, which a site file does not list, and joints inside a dispenser are not counted.
/// \source common practice, no source
[[nodiscard]] std::vector<Figure> piping_figures(const site::Site& site);

}  // namespace forecourse::decide
