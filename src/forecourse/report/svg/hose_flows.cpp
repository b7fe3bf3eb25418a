#include "forecourse/report/svg/hose_flows.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/text.h"
#include "forecourse/report/units.h"

namespace forecourse::report::svg {
namespace {

constexpr double right = 52.0;
constexpr double top = 56.0;
constexpr double bottom = 26.0;
constexpr double row_height = 24.0;
constexpr double limit_row = 14.0;

using Flow = std::optional<double> HoseMarks::*;

class Scale {
 public:
  explicit Scale(const HoseFlowChart& chart) : left_(chart.width < wide ? 92.0 : 110.0), right_(chart.width - right) {
    double high = 0.0;
    for (const HoseMarks& hose : chart.hoses) {
      for (const Flow flow : {&HoseMarks::alone, &HoseMarks::one_each, &HoseMarks::all_open}) {
        high = std::max(high, (hose.*flow).value_or(0.0));
      }
    }
    has_flow_ = high > 0.0;
    for (const FlowLimit& limit : chart.limits) high = std::max(high, limit.value);
    marks_ = axis_marks(0.0, high > 0.0 ? high : 1.0, chart.width < wide ? 4 : 6);
  }
  [[nodiscard]] double x(double value) const { return left_ + value / marks_.back() * (right_ - left_); }
  [[nodiscard]] bool has_flow() const { return has_flow_; }
  [[nodiscard]] const std::vector<double>& marks() const { return marks_; }

 private:
  double left_;
  double right_;
  std::vector<double> marks_;
  bool has_flow_ = false;
};

double row_middle(std::size_t row) { return top + row_height * (static_cast<double>(row) + 0.5); }
double rows_end(const HoseFlowChart& chart) { return top + row_height * static_cast<double>(chart.hoses.size()); }

std::string axis(const HoseFlowChart& chart, const Scale& scale) {
  const double end = rows_end(chart);
  std::string out = label({0.0, 12.0}, chart.axis, "axis-title");
  for (const double mark : scale.marks()) {
    out += line({scale.x(mark), top}, {scale.x(mark), end}, mark == 0.0 ? "zero" : "grid");
    out += label({scale.x(mark), end + 16.0}, mark_text(mark, scale.marks()), "tick-top");
  }
  return out;
}

/// Each limit is named on a row of its own, so that two near each other stay readable.
std::string limits(const HoseFlowChart& chart, const Scale& scale) {
  std::vector<FlowLimit> sorted = chart.limits;
  std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.value < b.value; });
  const double end = rows_end(chart);
  std::string out;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const double x = scale.x(sorted[i].value);
    const double characters = static_cast<double>(sorted[i].label.size());
    const bool to_left = i + 1 < sorted.size() || x + 5.0 + 7.5 * characters > chart.width;
    const double row = end + 32.0 + limit_row * static_cast<double>(i);
    out += line({x, top}, {x, end + 3.0}, "limit") + line({x, end + 21.0}, {x, row + 1.0}, "limit");
    out += label({x + (to_left ? -5.0 : 5.0), row}, sorted[i].label, to_left ? "limit-left" : "limit-right");
  }
  return out;
}

std::string square(double x, double y) { return rectangle({x - 4.5, y - 4.5}, 9.0, 9.0, "alone"); }

std::string circle(double x, double y, const char* css_class) {
  return "<circle class=\"" + std::string(css_class) + "\" cx=\"" + coordinate(x) + "\" cy=\"" + coordinate(y) +
         "\" r=\"4.5\"/>\n";
}

/// Least and most of a hose's flows; nothing when it has none.
std::optional<std::pair<double, double>> range(const HoseMarks& hose) {
  std::optional<std::pair<double, double>> out;
  for (const Flow flow : {&HoseMarks::alone, &HoseMarks::one_each, &HoseMarks::all_open}) {
    if (!(hose.*flow)) continue;
    const double value = *(hose.*flow);
    out = out ? std::pair(std::min(out->first, value), std::max(out->second, value)) : std::pair(value, value);
  }
  return out;
}

std::string row(const HoseFlowChart& chart, const Scale& scale, std::size_t i) {
  const HoseMarks& hose = chart.hoses[i];
  const double y = row_middle(i);
  std::string out = label({0.0, y + 4.0}, shortened(hose.name, chart.width < wide ? 13 : 15), "bar-name");
  const auto ends = range(hose);
  if (!ends) return out + label({scale.x(0.0) + 8.0, y + 4.0}, "not determined", "bar-owner");
  out += line({scale.x(ends->first), y}, {scale.x(ends->second), y}, "range");
  if (hose.one_each) out += circle(scale.x(*hose.one_each), y, "one-each");
  if (hose.alone) out += square(scale.x(*hose.alone), y);
  if (hose.all_open) out += circle(scale.x(*hose.all_open), y, "all-open");
  out += label({scale.x(ends->first) - 10.0, y + 4.0}, number(ends->first, chart.decimals), "value-left");
  if (ends->second > ends->first) {
    out += label({scale.x(ends->second) + 10.0, y + 4.0}, number(ends->second, chart.decimals), "value-right");
  }
  return out;
}

/// Names of the marks above the first hose that has all of them, else above the first that has any.
std::string mark_names(const HoseFlowChart& chart, const Scale& scale) {
  const auto complete = [](const HoseMarks& h) { return h.alone && h.one_each && h.all_open; };
  auto hose = std::find_if(chart.hoses.begin(), chart.hoses.end(), complete);
  if (hose == chart.hoses.end()) {
    hose =
        std::find_if(chart.hoses.begin(), chart.hoses.end(), [](const HoseMarks& h) { return range(h).has_value(); });
  }
  std::string out;
  const auto name = [&](const std::optional<double>& flow, double y, const char* text, const char* css_class) {
    if (!flow) return;
    out += line({scale.x(*flow), y + 4.0}, {scale.x(*flow), top + 2.0}, "step");
    out += label({scale.x(*flow), y}, text, css_class);
  };
  name(hose->all_open, top - 10.0, "all open", "name-left");
  name(hose->one_each, top - 26.0, "one at each dispenser", "name-left");
  name(hose->alone, top - 10.0, "alone", "name-right");
  return out;
}

}  // namespace

std::string draw(const HoseFlowChart& chart) {
  const Scale scale(chart);
  if (!scale.has_flow()) return {};
  std::string out =
      open(chart.id, chart.width, rows_end(chart) + bottom + limit_row * static_cast<double>(chart.limits.size()),
           chart.title, chart.description);
  out += axis(chart, scale) + limits(chart, scale);
  for (std::size_t i = 0; i < chart.hoses.size(); ++i) out += row(chart, scale, i);
  return out + mark_names(chart, scale) + "</svg>\n";
}

}  // namespace forecourse::report::svg
