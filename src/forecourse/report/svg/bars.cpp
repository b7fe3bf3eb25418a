#include "forecourse/report/svg/bars.h"

#include <algorithm>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {

std::string draw(const BarChart& chart) {
  if (chart.bars.empty()) return {};
  constexpr double row = 40.0, thick = 14.0, top = 8.0, value_room = 96.0;
  double most = 0.0;
  for (const Bar& bar : chart.bars) most = std::max(most, bar.value);
  const double room = chart.width - value_room;
  const auto fitting = static_cast<std::size_t>(chart.width / 6.8);
  std::string out =
      open(chart.id, chart.width, top + row * static_cast<double>(chart.bars.size()), chart.title, chart.description);
  for (std::size_t i = 0; i < chart.bars.size(); ++i) {
    const Bar& bar = chart.bars[i];
    const double y = top + row * static_cast<double>(i);
    const auto width = [&](double value) { return most > 0.0 ? room * value / most : 0.0; };
    out += label({0.0, y + 12.0}, shortened(bar.name, fitting), "bar-name");
    out += rectangle({0.0, y + 18.0}, std::max(width(bar.value), 1.0), thick, "takes");
    if (bar.filled > 0.0) out += rectangle({0.0, y + 18.0}, width(bar.filled), thick, "adds");
    out += label({std::max(width(bar.value), 1.0) + 6.0, y + 30.0}, bar.text, "bar-value");
  }
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
