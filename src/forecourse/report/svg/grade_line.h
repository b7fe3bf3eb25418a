#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// One stop of the course, in the unit of the chart's axis.
struct GradeStop {
  std::string name;
  std::string distance;  ///< as printed under the name: "150.0 ft"
  double pipe = 0.0;     ///< height of the pipe
  double grade = 0.0;    ///< height the liquid would stand at
  std::string pressure;  ///< as printed at the grade line: "21.7"
  double along = 0.0;    ///< distance from the first stop, in one unit for all stops
  bool part = false;     ///< a part between two places: left out of a narrow chart
  Shows shows = {};
};

struct GradeChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;  ///< what the chart shows, in a sentence or two
  std::string axis;         ///< "ft above the site's datum"
  std::vector<GradeStop> stops;
  std::string tone = "regular";  ///< of the product: "regular", "premium" or "diesel"
  bool ground = false;           ///< the zero of the axis is where the ground is drawn
  std::size_t length_from = 0;   ///< stops from this one ...
  std::size_t length_to = 0;     ///< ... to this one stand true to length; equal: none does
  std::string length_text = {};  ///< as printed above them: "183.0 ft, to length"
};

/// The grade line along the course: the pipe at its true height, the grade line above it, and the gap between them
/// shaded, which is the pressure. Between two stops that can be named the line may stand true to length, where no two
/// stops come too close for it; all others are spread evenly, with their distances under them.
/// Empty when there are fewer than two stops or a height is not finite.
[[nodiscard]] std::string draw(const GradeChart& chart);

}  // namespace forecourse::report::svg
