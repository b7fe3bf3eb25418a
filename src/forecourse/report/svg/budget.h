#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// One bar of the waterfall, in the unit of the axis.
struct BudgetBar {
  std::string name;     ///< "riser"
  std::string owner;    ///< "D1.regular"
  double before = 0.0;  ///< what is left before the part
  double after = 0.0;   ///< and after it
  std::string change;   ///< as printed: "−2.1"
};

struct BudgetChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string axis;  ///< "pressure left, psi"
  std::vector<BudgetBar> bars;
};

/// The pressure budget as a horizontal waterfall: each bar starts where the one above it ended, and the last ends at
/// what is left. What adds is dark, what takes is lighter. Empty without bars.
[[nodiscard]] std::string draw(const BudgetChart& chart);

}  // namespace forecourse::report::svg
