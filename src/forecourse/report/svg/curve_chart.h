#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// One curve; where a value is no number it is broken.
struct Curve {
  std::string name;  ///< empty: without a legend
  std::vector<double> x;
  std::vector<double> y;
  std::size_t dash = 0;  ///< 0 solid, 1 to 3 ever shorter dashes
};

/// A dashed line across the chart at a value, with its name.
struct CurveLimit {
  double at = 0.0;
  std::string name;
  bool name_below = false;  ///< else above the line
  bool name_first = false;  ///< at the beginning of the line, else at its end
};

/// A place on the chart that is crossed out.
struct CurveCross {
  double x = 0.0;
  double y = 0.0;
};

struct CurveChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string x_axis;
  std::string y_axis;
  std::vector<Curve> curves;
  std::vector<CurveLimit> limits;  ///< level lines
  std::vector<CurveLimit> marks;   ///< upright lines
  std::vector<CurveCross> crosses;
  std::vector<double> foot_ticks;  ///< where something happened that the caption tells
  std::optional<double> highest;   ///< of the upright axis; what lies above is cut off
};

/// Curves over one axis. Empty without two points.
[[nodiscard]] std::string draw(const CurveChart& chart);

}  // namespace forecourse::report::svg
