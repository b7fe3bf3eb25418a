#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// One hose in the three states every station is asked about, in the unit of the axis; empty: not in that state.
struct HoseMarks {
  std::string name;
  std::optional<double> alone;
  std::optional<double> one_each;
  std::optional<double> all_open;
};

/// A flow that must not be passed, or must be kept.
struct FlowLimit {
  double value = 0.0;
  std::string label;  ///< "cap 10.00"
};

struct HoseFlowChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string axis;  ///< "flow at the hose, gpm"
  int decimals = 2;  ///< of the numbers at the marks
  std::vector<HoseMarks> hoses;
  std::vector<FlowLimit> limits;
};

/// A row for each hose with its flow alone (open square), with one hose at each dispenser (ring) and with all open
/// (disc), joined by a line; limits run down through the rows. Empty when no hose has a flow.
[[nodiscard]] std::string draw(const HoseFlowChart& chart);

}  // namespace forecourse::report::svg
