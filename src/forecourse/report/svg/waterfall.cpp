#include "forecourse/report/svg/waterfall.h"

#include <algorithm>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {
namespace {

constexpr double row = 40.0, thick = 14.0, top = 8.0, edge = 8.0, value_room = 110.0;

/// From where to where each bar goes.
struct Reach {
  double from = 0.0;
  double to = 0.0;
};

std::vector<Reach> reaches(const std::vector<Fall>& falls) {
  std::vector<Reach> out;
  double at = 0.0;
  for (const Fall& fall : falls) {
    const double from = fall.whole ? 0.0 : at;
    out.push_back({from, from + fall.value});
    at = from + fall.value;
  }
  return out;
}

}  // namespace

std::string draw(const WaterfallChart& chart) {
  if (chart.falls.empty()) return {};
  const std::vector<Reach> bars = reaches(chart.falls);
  double low = 0.0;
  double high = 0.0;
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const double error = chart.falls[i].error.value_or(0.0);
    low = std::min({low, bars[i].from, bars[i].to - error});
    high = std::max({high, bars[i].from, bars[i].to + error});
  }
  if (!(high > low)) high = low + 1.0;
  const double room = chart.width - value_room - 2.0 * edge;
  const auto x = [&](double value) { return edge + room * (value - low) / (high - low); };
  const double height = top + row * static_cast<double>(bars.size());
  const auto fitting = static_cast<std::size_t>(chart.width / 6.8);
  std::string out = open(chart.id, chart.width, height, chart.title, chart.description);
  out += line({x(0.0), top}, {x(0.0), height}, "zero");
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const Fall& fall = chart.falls[i];
    const double y = top + row * static_cast<double>(i);
    const double left = std::min(x(bars[i].from), x(bars[i].to));
    const double width = std::max(std::abs(x(bars[i].to) - x(bars[i].from)), 1.0);
    out += label({edge, y + 12.0}, shortened(fall.name, fitting), "bar-name on-sheet");
    out += rectangle({left, y + 18.0}, width, thick, fall.whole && !fall.open ? "adds" : "takes");
    if (fall.open) out += hatch({left, y + 18.0}, width, thick, 6.0, Strokes::slanting, "step");
    double end = std::max(x(bars[i].from), x(bars[i].to));
    if (fall.error) {
      const double middle = y + 18.0 + 0.5 * thick;
      out += line({x(bars[i].to - *fall.error), middle}, {x(bars[i].to + *fall.error), middle}, "range");
      for (const double at : {bars[i].to - *fall.error, bars[i].to + *fall.error}) {
        out += line({x(at), middle - 5.0}, {x(at), middle + 5.0}, "range");
      }
      end = std::max(end, x(bars[i].to + *fall.error));
    }
    out += label({end + 6.0, y + 30.0}, fall.text, "bar-value on-sheet");
  }
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
