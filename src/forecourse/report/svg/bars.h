#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// A bar with its name above it and its value at its end; a second value is the filled part of it.
struct Bar {
  std::string name;
  double value = 0.0;
  double filled = 0.0;  ///< part of `value` drawn solid
  std::string text;     ///< the value as printed
};

struct BarChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::vector<Bar> bars;
};

/// Bars under each other from one line. Empty without bars.
[[nodiscard]] std::string draw(const BarChart& chart);

}  // namespace forecourse::report::svg
