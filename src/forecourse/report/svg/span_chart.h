#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// How far one thing moves a number, in the unit of the axis.
struct SpanMarks {
  std::string name;
  double likely = 0.0;
  double least = 0.0;  ///< over both ends and what is likely
  double most = 0.0;
};

struct SpanChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string axis;  ///< "slowest open hose, gpm"
  int decimals = 2;
  std::vector<SpanMarks> rows;
};

/// A row for each thing with a whisker from least to most and a disc at what is likely. Empty without rows, or when a
/// number is not finite or below zero.
[[nodiscard]] std::string draw(const SpanChart& chart);

}  // namespace forecourse::report::svg
