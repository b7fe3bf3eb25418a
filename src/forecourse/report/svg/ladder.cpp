#include "forecourse/report/svg/ladder.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/units.h"

namespace forecourse::report::svg {
namespace {

constexpr double left = 44.0;
constexpr double right = 76.0;  // the values with all open stand there
constexpr double top = 40.0;    // the mark "worth it from" stands there
constexpr double plot = 230.0;  // height of the plot
constexpr double bottom = 44.0;
constexpr double text_row = 15.0;

class Scale {
 public:
  explicit Scale(const LadderChart& chart) : width_(chart.width) {
    double high = 0.0;
    for (const LadderSeries& series : chart.series) {
      steps_ = std::max(steps_, series.flows.size());
      for (const auto& flow : series.flows) high = std::max(high, flow.value_or(0.0));
    }
    has_flow_ = high > 0.0;
    for (const LadderLimit& limit : chart.limits) high = std::max(high, limit.at.value * 1.1);
    marks_ = axis_marks(0.0, high > 0.0 ? high : 1.0, 5);
  }
  [[nodiscard]] double x(std::size_t step) const {
    const double room = width_ - left - right;
    return steps_ < 2 ? left + 0.5 * room : left + room * static_cast<double>(step) / static_cast<double>(steps_ - 1);
  }
  [[nodiscard]] double y(double value) const { return top + plot * (1.0 - value / marks_.back()); }
  [[nodiscard]] double end() const { return width_ - right; }
  [[nodiscard]] std::size_t steps() const { return steps_; }
  [[nodiscard]] bool has_flow() const { return has_flow_; }
  [[nodiscard]] const std::vector<double>& marks() const { return marks_; }

 private:
  double width_;
  std::size_t steps_ = 0;
  std::vector<double> marks_;
  bool has_flow_ = false;
};

std::string axes(const LadderChart& chart, const Scale& scale) {
  std::string out = label({0.0, 14.0}, chart.axis, "axis-title");
  for (const double mark : scale.marks()) {
    out += line({left, scale.y(mark)}, {scale.end(), scale.y(mark)}, mark == 0.0 ? "zero" : "grid");
    out += label({left - 8.0, scale.y(mark) + 4.0}, mark_text(mark, scale.marks()), "tick");
  }
  const std::size_t every = scale.steps() > (chart.width < wide ? 12U : 32U) ? 5U : 1U;
  for (std::size_t i = 0; i < scale.steps(); ++i) {
    if (every > 1 && i != 0 && (i + 1) % every != 0) continue;
    out += label({scale.x(i), top + plot + 18.0}, std::to_string(i + 1), "tick-top");
  }
  return out + label({left, top + plot + 36.0}, "hoses open", "axis-title");
}

/// The shaded side and the line.
std::string limits(const LadderChart& chart, const Scale& scale) {
  std::string out;
  for (const LadderLimit& limit : chart.limits) {
    const double y = scale.y(limit.at.value);
    const double from = limit.side == Forbidden::above ? top : y;
    const double to = limit.side == Forbidden::above ? y : top + plot;
    if (limit.side != Forbidden::none) {
      out += rectangle({left, from}, scale.end() - left, to - from, "forbidden");
      out += hatch({left, from}, scale.end() - left, to - from, 9.0, Strokes::slanting, "forbidden-hatch");
    }
    out += line({left, y}, {scale.end(), y}, "limit");
  }
  return out;
}

/// Lowest flow of any series among the first steps, up to a place on the drawing.
std::optional<double> lowest_before(const LadderChart& chart, const Scale& scale, double x) {
  std::optional<double> lowest;
  for (const LadderSeries& one : chart.series) {
    for (std::size_t i = 0; i < one.flows.size() && scale.x(i) <= x; ++i) {
      if (one.flows[i]) lowest = std::min(lowest.value_or(*one.flows[i]), *one.flows[i]);
    }
  }
  return lowest;
}

/// Flows fall to the right: a limit that they end below is named over its right end, one that they stay above under
/// its left end.
std::string limit_names(const LadderChart& chart, const Scale& scale) {
  std::vector<LadderLimit> sorted = chart.limits;
  std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.at.value > b.at.value; });
  const double lowest = lowest_before(chart, scale, chart.width).value_or(0.0);
  std::string out;
  double last_left = 0.0;
  double last_right = 0.0;
  for (const LadderLimit& limit : sorted) {
    const double y = scale.y(limit.at.value);
    if (limit.side == Forbidden::above || lowest < limit.at.value) {
      last_right = std::max(y - 5.0, last_right + text_row);
      out += label({scale.end() - 6.0, last_right}, limit.at.label, "limit-left on-sheet");
    } else {
      last_left = std::max(y + text_row, last_left + text_row);
      out += label({left + 6.0, last_left}, limit.at.label, "limit-right on-sheet");
    }
  }
  return out;
}

const char* line_class(LadderMark mark) {
  return mark == LadderMark::square ? "line-a" : mark == LadderMark::disc ? "line-b" : "line-c";
}

std::string mark_at(LadderMark mark, Point at) {
  if (mark == LadderMark::square) return rectangle({at.x - 5.0, at.y - 5.0}, 10.0, 10.0, "mark-a");
  return circle(at, mark == LadderMark::disc ? 4.0 : 8.0, mark == LadderMark::disc ? "mark-b" : "mark-c");
}

/// The line, parted where a flow is missing, and its marks.
std::string series(const LadderSeries& one, const Scale& scale) {
  std::string lines;
  std::string marks;
  std::vector<Point> run;
  const auto end_run = [&] {
    if (run.size() > 1) lines += polyline(run, line_class(one.mark));
    run.clear();
  };
  for (std::size_t i = 0; i < one.flows.size(); ++i) {
    if (!one.flows[i]) {
      end_run();
      continue;
    }
    run.push_back({scale.x(i), scale.y(*one.flows[i])});
    marks += mark_at(one.mark, run.back());
  }
  end_run();
  return lines + marks;
}

/// Where a series is farthest from all others; its distance to the nearest there, signed upward.
struct Apart {
  std::size_t step = 0;
  double distance = 0.0;
};

Apart farthest(const LadderChart& chart, std::size_t own) {
  Apart best;
  const auto& flows = chart.series[own].flows;
  for (std::size_t i = 0; i < flows.size(); ++i) {
    std::optional<double> nearest;
    for (std::size_t other = 0; other < chart.series.size(); ++other) {
      if (other == own || i >= chart.series[other].flows.size()) continue;
      if (!flows[i] || !chart.series[other].flows[i]) continue;
      const double away = *flows[i] - *chart.series[other].flows[i];
      if (!nearest || std::abs(away) < std::abs(*nearest)) nearest = away;
    }
    if (nearest && std::abs(*nearest) > std::abs(best.distance)) best = {i, *nearest};
  }
  return best;
}

const char* name_class(LadderMark mark) {
  return mark == LadderMark::square ? "name-a on-sheet"
         : mark == LadderMark::disc ? "name-b on-sheet"
                                    : "name-c on-sheet";
}

/// Those that run apart are named where they are farthest from the others, below a line that runs below them, above it
/// elsewhere; those that run together side by side under the first numbers.
std::string names(const LadderChart& chart, const Scale& scale) {
  constexpr double letter = 8.0;
  std::string out;
  double x = scale.x(0) + 10.0;
  const auto room = [&](const LadderSeries& one) { return letter * static_cast<double>(one.name.size()); };
  double end = x;
  for (const LadderSeries& one : chart.series) end += room(one) + letter;
  const double under = scale.y(lowest_before(chart, scale, end).value_or(0.0)) + 24.0;
  for (std::size_t i = 0; i < chart.series.size(); ++i) {
    const LadderSeries& one = chart.series[i];
    if (one.flows.empty() || !one.flows.front()) continue;
    const Apart apart = farthest(chart, i);
    if (std::abs(scale.y(apart.distance) - scale.y(0.0)) > 3.0) {
      const Point at{std::min(scale.x(apart.step) - 4.0, scale.end() - room(one)),
                     scale.y(*one.flows[apart.step]) + (apart.distance < 0.0 ? 20.0 : -10.0)};
      out += label(at, one.name, name_class(one.mark));
    } else {
      out += label({x, under}, one.name, name_class(one.mark));
      x += room(one) + letter;
    }
  }
  return out;
}

/// Names with the last values at the right end, apart from each other by a line of text.
std::string names_at_end(const LadderChart& chart, const Scale& scale) {
  struct Name {
    const LadderSeries* of;
    double y;
  };
  std::vector<Name> all;
  for (const LadderSeries& one : chart.series) {
    if (one.flows.size() == scale.steps() && one.flows.back()) all.push_back({&one, scale.y(*one.flows.back())});
  }
  std::stable_sort(all.begin(), all.end(), [](const Name& a, const Name& b) { return a.y < b.y; });
  double lack = 0.0;  // of room between neighbors: half of it is taken above
  for (std::size_t i = 1; i < all.size(); ++i) lack += std::max(0.0, text_row - (all[i].y - all[i - 1].y));
  std::string out;
  double y = all.empty() ? 0.0 : all.front().y - 0.5 * lack;
  for (const Name& name : all) {
    y = &name == &all.front() ? y : std::max(y + text_row, name.y - 0.5 * lack);
    out += label({scale.x(scale.steps() - 1) + 10.0, y + 4.0},
                 name.of->name + " " + number(*name.of->flows.back(), chart.decimals), name_class(name.of->mark));
  }
  return out;
}

std::string worth_mark(const LadderChart& chart, const Scale& scale) {
  if (!chart.worth_from || *chart.worth_from < 1) return {};
  const auto step = static_cast<std::size_t>(*chart.worth_from) - 1;
  if (step >= scale.steps()) return {};
  const double x = scale.x(step);
  const bool to_left = x > 0.5 * chart.width;
  return line({x, top - 10.0}, {x, top + plot}, "step") + label({x + (to_left ? -6.0 : 6.0), top - 8.0},
                                                                "worth it from " + std::to_string(*chart.worth_from),
                                                                to_left ? "name-left" : "name-right");
}

/// The value with all hoses open, at the right end.
std::string end_value(const LadderChart& chart, const Scale& scale) {
  for (const LadderSeries& one : chart.series) {
    if (one.flows.size() != scale.steps() || !one.flows.back()) continue;
    return label({scale.x(scale.steps() - 1) + 10.0, scale.y(*one.flows.back()) + 4.0},
                 number(*one.flows.back(), chart.decimals), "value-right");
  }
  return {};
}

}  // namespace

std::string draw(const LadderChart& chart) {
  const Scale scale(chart);
  if (!scale.has_flow()) return {};
  std::string out = open(chart.id, chart.width, top + plot + bottom, chart.title, chart.description);
  out += limits(chart, scale) + axes(chart, scale) + worth_mark(chart, scale);
  for (const LadderMark mark : {LadderMark::ring, LadderMark::square, LadderMark::disc}) {
    for (const LadderSeries& one : chart.series) {
      if (one.mark == mark) out += series(one, scale);
    }
  }
  out += limit_names(chart, scale);
  out += chart.named_at_end ? names_at_end(chart, scale) : names(chart, scale) + end_value(chart, scale);
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
