#include "forecourse/report/svg/compare_ladder.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/units.h"

namespace forecourse::report::svg {
namespace {

constexpr double left = 44.0;
constexpr double right = 76.0;  // the names of the series stand there
constexpr double top = 40.0;
constexpr double plot = 220.0;  // height of the plot
constexpr double bottom = 44.0;
constexpr double limit_row = 15.0;

using Flow = std::optional<double> LadderPair::*;

class Scale {
 public:
  explicit Scale(const CompareLadderChart& chart) : width_(chart.width), steps_(chart.steps.size()) {
    double high = 0.0;
    for (const LadderPair& step : chart.steps) high = std::max({high, step.a.value_or(0.0), step.b.value_or(0.0)});
    has_flow_ = high > 0.0;
    for (const FlowLimit& limit : chart.limits) high = std::max(high, limit.value);
    marks_ = axis_marks(0.0, high > 0.0 ? high : 1.0, 5);
  }
  [[nodiscard]] double x(std::size_t step) const {
    const double room = width_ - left - right;
    return steps_ < 2 ? left + 0.5 * room : left + room * static_cast<double>(step) / static_cast<double>(steps_ - 1);
  }
  [[nodiscard]] double y(double value) const { return top + plot * (1.0 - value / marks_.back()); }
  [[nodiscard]] double end() const { return width_ - right; }
  [[nodiscard]] bool has_flow() const { return has_flow_; }
  [[nodiscard]] const std::vector<double>& marks() const { return marks_; }

 private:
  double width_;
  std::size_t steps_;
  std::vector<double> marks_;
  bool has_flow_ = false;
};

std::string axes(const CompareLadderChart& chart, const Scale& scale) {
  std::string out = label({0.0, 14.0}, chart.axis, "axis-title");
  for (const double mark : scale.marks()) {
    out += line({left, scale.y(mark)}, {scale.end(), scale.y(mark)}, mark == 0.0 ? "zero" : "grid");
    out += label({left - 8.0, scale.y(mark) + 4.0}, mark_text(mark, scale.marks()), "tick");
  }
  const std::size_t every = chart.steps.size() > (chart.width < wide ? 12U : 32U) ? 4U : 1U;
  for (std::size_t i = 0; i < chart.steps.size(); i += every) {
    out += label({scale.x(i), top + plot + 18.0}, std::to_string(chart.steps[i].open), "tick-top");
  }
  return out + label({left, top + plot + 36.0}, "hoses open", "axis-title");
}

/// Limits of one value share a line; their names stand on it at the left, each on a row of its own where lines are
/// near.
std::string limits(const CompareLadderChart& chart, const Scale& scale) {
  std::vector<FlowLimit> sorted = chart.limits;
  std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.value > b.value; });
  std::string out;
  double last = 0.0;
  for (const FlowLimit& limit : sorted) {
    const double y = scale.y(limit.value);
    const double row = std::max(y + limit_row, last + limit_row);
    last = row;
    out += line({left, y}, {scale.end(), y}, "limit") + label({left + 6.0, row}, limit.label, "limit-right");
  }
  return out;
}

std::string mark(Flow flow, Point at) {
  return flow == &LadderPair::a ? rectangle({at.x - 5.5, at.y - 5.5}, 11.0, 11.0, "mark-a")
                                : circle(at, 4.0, "mark-b");  // of equal flows both are seen
}

/// The line of one series, parted where a flow is missing, and its marks.
std::string series(const CompareLadderChart& chart, const Scale& scale, Flow flow) {
  std::string lines;
  std::string marks;
  std::vector<Point> run;
  const auto end_run = [&] {
    if (run.size() > 1) lines += polyline(run, flow == &LadderPair::a ? "line-a" : "line-b");
    run.clear();
  };
  for (std::size_t i = 0; i < chart.steps.size(); ++i) {
    const auto& value = chart.steps[i].*flow;
    if (!value) {
      end_run();
      continue;
    }
    run.push_back({scale.x(i), scale.y(*value)});
    marks += mark(flow, run.back());
  }
  end_run();
  return lines + marks;
}

/// Names with the last values, apart from each other by a line of text.
std::string names(const CompareLadderChart& chart, const Scale& scale) {
  const auto text = [&](const char* name, double value) { return name + (" " + number(value, chart.decimals)); };
  const LadderPair& last = chart.steps.back();
  const double x = scale.x(chart.steps.size() - 1) + 10.0;
  double a = last.a ? scale.y(*last.a) : 0.0;
  double b = last.b ? scale.y(*last.b) : 0.0;
  const double apart = 15.0;
  if (last.a && last.b && std::abs(a - b) < apart) {
    const double middle = 0.5 * (a + b);
    const double up = b <= a ? -0.5 * apart : 0.5 * apart;
    b = middle + up;
    a = middle - up;
  }
  std::string out;
  if (last.a) out += label({x, a + 4.0}, text("A", *last.a), "name-a");
  if (last.b) out += label({x, b + 4.0}, text("B", *last.b), "name-b");
  return out;
}

std::string worth_mark(const CompareLadderChart& chart, const Scale& scale) {
  if (!chart.worth_from) return {};
  for (std::size_t i = 0; i < chart.steps.size(); ++i) {
    if (chart.steps[i].open != *chart.worth_from) continue;
    const double x = scale.x(i);
    const bool to_left = x > 0.5 * chart.width;
    return line({x, top - 10.0}, {x, top + plot}, "step") + label({x + (to_left ? -6.0 : 6.0), top - 8.0},
                                                                  "worth it from " + std::to_string(*chart.worth_from),
                                                                  to_left ? "name-left" : "name-right");
  }
  return {};
}

}  // namespace

std::string draw(const CompareLadderChart& chart) {
  const Scale scale(chart);
  if (!scale.has_flow()) return {};
  std::string out = open(chart.id, chart.width, top + plot + bottom, chart.title, chart.description);
  out += axes(chart, scale) + limits(chart, scale) + worth_mark(chart, scale);
  out += series(chart, scale, &LadderPair::a) + series(chart, scale, &LadderPair::b) + names(chart, scale);
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
