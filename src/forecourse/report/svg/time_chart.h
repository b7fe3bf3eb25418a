#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// One course over time.
struct TimeSeries {
  std::string name;
  std::vector<double> time;      ///< [s], rising from 0
  std::vector<double> value;     ///< in the unit of its panel
  std::size_t dash = 0;          ///< 0 solid, 1 to 3 ever shorter dashes
  std::vector<double> low = {};  ///< of a band about it, as `value`; empty: no band
  std::vector<double> high = {};
};

/// A panel of a chart of panels that share one time axis.
struct TimePanel {
  std::string axis;  ///< "escaping, gpm"
  std::vector<TimeSeries> series;
};

/// A moment marked through all panels.
struct TimeMark {
  double time = 0.0;
  std::string name;  ///< a number or a short word
};

struct TimeChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::vector<TimePanel> panels;
  std::vector<TimeMark> marks;
  bool even = false;  ///< the axis goes evenly in time, in minutes
};

/// Share of the axis's length at which a time stands [1]: the first second takes a third of it, evenly; what comes
/// after goes by the logarithm of the time, to the end.
[[nodiscard]] double time_place(double time, double end);

/// Panels over one time axis whose first second is stretched. Empty without two moments.
[[nodiscard]] std::string draw(const TimeChart& chart);

}  // namespace forecourse::report::svg
