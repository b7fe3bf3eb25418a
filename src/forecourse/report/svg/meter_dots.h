#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// A meter as it is drawn; errors in the unit of the axis.
struct MeterDotsRow {
  std::string name;
  std::vector<double> draws;  ///< of its last proving
  double mean = 0.0;
  std::optional<double> error;  ///< standard error of the mean: a whisker
  std::vector<Point> course;    ///< over provings: days and errors
};

/// A limit on both sides of zero.
struct MeterDotsLimit {
  double at = 0.0;
  std::string name;
  bool as_share = false;  ///< dotted; one that is a volume is dashed
};

struct MeterDots {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string axis;
  std::vector<MeterDotsRow> rows;
  std::vector<MeterDotsLimit> limits;
};

/// A row for each meter: its draws as rings, their mean as a disc with a whisker, the limits as lines across all rows;
/// on a wide page the course over provings small beside it. Empty without rows.
[[nodiscard]] std::string draw(const MeterDots& chart);

}  // namespace forecourse::report::svg
