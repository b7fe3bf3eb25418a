#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/hose_flows.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// Flow of the slowest hose with so many open, in the unit of the axis; empty: not determined.
struct LadderPair {
  int open = 0;
  std::optional<double> a;
  std::optional<double> b;
};

struct CompareLadderChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string axis;  ///< "flow of the slowest hose, gpm"
  int decimals = 2;  ///< of the numbers at the ends
  std::vector<LadderPair> steps;
  std::vector<FlowLimit> limits;  ///< level lines: a cap, a flow to keep, a limiter
  std::optional<int> worth_from;  ///< a mark at this number: "worth it from 6"
};

/// Two ladders over the number of hoses open: A solid with squares, B dashed with discs, each named with its value at
/// its end; limits as level lines. Empty without a flow.
[[nodiscard]] std::string draw(const CompareLadderChart& chart);

}  // namespace forecourse::report::svg
