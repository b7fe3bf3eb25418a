#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// One step of a waterfall: it begins where the one before ended.
struct Fall {
  std::string name;
  double value = 0.0;
  std::optional<double> error;  ///< whisker, on both sides
  std::string text;             ///< the value as printed
  bool whole = false;           ///< stands on zero: the sum at the beginning, and what is left
  bool open = false;            ///< hatched: not explained
};

struct WaterfallChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::vector<Fall> falls;
};

/// Bars under each other, each from the end of the one before, over a line at zero. Empty without falls.
[[nodiscard]] std::string draw(const WaterfallChart& chart);

}  // namespace forecourse::report::svg
