#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// One stop of the course, in the unit of the chart's axis.
struct GradeStop {
  std::string name;
  std::string distance;  ///< as printed under the name: "150.0 ft"
  double pipe = 0.0;     ///< height of the pipe
  double grade = 0.0;    ///< height the liquid would stand at
  std::string pressure;  ///< as printed at the grade line: "21.7"
};

struct GradeChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;  ///< what the chart shows, in a sentence or two
  std::string axis;         ///< "ft above the site's datum"
  std::vector<GradeStop> stops;
};

/// The grade line along the course: the pipe at its true height, the grade line above it, and the gap between them
/// shaded, which is the pressure. Stops are spread evenly; their distances stand under them.
/// Empty when there are fewer than two stops or a height is not finite.
[[nodiscard]] std::string draw(const GradeChart& chart);

}  // namespace forecourse::report::svg
