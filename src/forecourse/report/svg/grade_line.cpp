#include "forecourse/report/svg/grade_line.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {
namespace {

constexpr double plot_height = 270.0;
constexpr double right = 12.0;
constexpr double top = 56.0;
constexpr double row_height = 28.0;      // of names under the axis
constexpr double character_width = 6.6;  // of the label size, generously

/// Where the chart's values lie in the drawing.
class Scale {
 public:
  explicit Scale(const GradeChart& chart) : width_(chart.width), narrow_(chart.width < wide) {
    double low = 0.0;
    double high = 0.0;
    for (const GradeStop& stop : chart.stops) {
      low = std::min({low, stop.pipe, stop.grade});
      high = std::max({high, stop.pipe, stop.grade});
    }
    marks_ = axis_marks(low, high > low ? high : low + 1.0, 5);
    place(chart);
  }

  [[nodiscard]] double x(std::size_t stop) const { return x_[stop]; }
  [[nodiscard]] double y(double value) const {
    const double share = (value - marks_.front()) / (marks_.back() - marks_.front());
    return foot() - share * plot_height;
  }
  [[nodiscard]] double begin() const { return narrow_ ? 30.0 : 56.0; }
  [[nodiscard]] double end() const { return width_ - right; }
  [[nodiscard]] double foot() const { return top + plot_height; }
  /// The room that a stop has to itself: the least distance to a neighbor.
  [[nodiscard]] double room(std::size_t stop) const {
    double least = end() - begin();
    if (stop > 0) least = std::min(least, x_[stop] - x_[stop - 1]);
    if (stop + 1 < x_.size()) least = std::min(least, x_[stop + 1] - x_[stop]);
    return least;
  }
  [[nodiscard]] bool to_length() const { return to_length_; }
  [[nodiscard]] const std::vector<double>& marks() const { return marks_; }

 private:
  /// Steps between stops: those that are to length share a part of the width by their lengths, the others are alike.
  void place(const GradeChart& chart) {
    const std::size_t last = chart.stops.size() - 1;
    const double margin = narrow_ ? 30.0 : 44.0;  // room for the first and last name
    const double across = end() - begin() - 2.0 * margin;
    std::vector<double> step(last, across / static_cast<double>(last));
    const std::size_t from = chart.length_from;
    const std::size_t to = std::min(chart.length_to, last);
    if (from < to && !narrow_) share_out(chart, from, to, across, step);
    x_.push_back(begin() + margin);
    for (const double s : step) x_.push_back(x_.back() + s);
  }

  void share_out(const GradeChart& chart, std::size_t from, std::size_t to, double across, std::vector<double>& step) {
    constexpr double least = 34.0;  // pixels between two stops that are to length
    const double length = chart.stops[to].along - chart.stops[from].along;
    const auto others = static_cast<double>(step.size() - (to - from));
    const double even = std::min(across / static_cast<double>(step.size()), 0.6 * across / std::max(others, 1.0));
    const double long_part = across - even * others;
    std::vector<double> changed(step.size(), even);
    for (std::size_t i = from; i < to; ++i) {
      changed[i] = length > 0.0 ? long_part * (chart.stops[i + 1].along - chart.stops[i].along) / length : 0.0;
      if (changed[i] < least) return;
    }
    step = changed;
    to_length_ = true;
  }

  double width_;
  bool narrow_;
  bool to_length_ = false;
  std::vector<double> marks_;
  std::vector<double> x_;
};

/// The ground with its ticks, and the soil below it.
std::string ground(const GradeChart& chart, const Scale& scale) {
  if (!chart.ground) return {};
  return rectangle({scale.begin(), scale.y(0.0)}, scale.end() - scale.begin(), scale.foot() - scale.y(0.0), "soil");
}

std::string ground_edge(const GradeChart& chart, const Scale& scale) {
  if (!chart.ground) return {};
  return earth_ticks({scale.begin(), scale.y(0.0) + 1.0}, scale.end(), "earth") +
         line({scale.begin(), scale.y(0.0)}, {scale.end(), scale.y(0.0)}, "ground-line");
}

std::string length_mark(const GradeChart& chart, const Scale& scale) {
  if (!scale.to_length()) return {};
  return dimension({scale.x(chart.length_from), scale.x(chart.length_to), 30.0, chart.length_text});
}

std::string axis(const GradeChart& chart, const Scale& scale) {
  std::string out = label({0.0, 14.0}, chart.axis, "axis-title");
  for (const double mark : scale.marks()) {
    const double y = scale.y(mark);
    out += line({scale.begin(), y}, {scale.end(), y}, mark == 0.0 ? "zero" : "grid");
    out += label({scale.begin() - 8.0, y + 4.0}, mark_text(mark, scale.marks()), "tick");
  }
  return out;
}

std::string shapes(const GradeChart& chart, const Scale& scale) {
  std::vector<Point> pipe;
  std::vector<Point> grade;
  for (std::size_t i = 0; i < chart.stops.size(); ++i) {
    pipe.push_back({scale.x(i), scale.y(chart.stops[i].pipe)});
    grade.push_back({scale.x(i), scale.y(chart.stops[i].grade)});
  }
  std::vector<Point> gap = grade;
  gap.insert(gap.end(), pipe.rbegin(), pipe.rend());
  std::string out = polygon(gap, "gap " + chart.tone);
  for (std::size_t i = 0; i < pipe.size(); ++i) out += line(pipe[i], grade[i], "drop");
  out += "<polyline class=\"pipe-edge\" points=\"" + points(pipe) + "\"/>\n";
  out += polyline(pipe, "pipe " + chart.tone);
  return out + "<polyline class=\"grade\" points=\"" + points(grade) + "\"/>\n";
}

std::string dot(Point at) {
  return "<circle class=\"stop\" cx=\"" + coordinate(at.x) + "\" cy=\"" + coordinate(at.y) + "\" r=\"3.5\"/>\n";
}

/// At the ends the reading stands beside its stop, clear of the steep grade line.
const char* reading_class(double aside) {
  return aside < 0.0 ? "reading before" : aside > 0.0 ? "reading behind" : "reading";
}

/// Rows that the names need so that none meets its neighbor in the same row; at most three.
std::size_t name_rows(const GradeChart& chart, const Scale& scale) {
  std::size_t rows = 1;
  for (std::size_t i = 0; i < chart.stops.size(); ++i) {
    const GradeStop& stop = chart.stops[i];
    const double width = static_cast<double>(std::max(length(stop.name), length(stop.distance))) * character_width;
    while (rows < 3 && width > static_cast<double>(rows) * scale.room(i)) ++rows;
  }
  return rows;
}

std::string name_label(const GradeChart& chart, const Scale& scale, std::size_t i, std::size_t rows) {
  const GradeStop& stop = chart.stops[i];
  const double y = scale.foot() + 16.0 + row_height * static_cast<double>(i % rows);
  const double room = static_cast<double>(rows) * scale.room(i);
  const auto fitting = static_cast<std::size_t>(std::max(4.0, room / character_width));
  std::string out = label({scale.x(i), y}, shortened(stop.name, fitting), "stop-name");
  if (!stop.distance.empty()) out += label({scale.x(i), y + 13.0}, stop.distance, "stop-place");
  return out;
}

/// How much higher a reading beside its stop must stand so that the next one does not run into it.
double raised(const GradeChart& chart, const Scale& scale, std::size_t i, double y) {
  constexpr double text_row = 15.0;
  const GradeStop& next = chart.stops[i + 1];
  const bool clear = scale.x(i + 1) - scale.x(i) > 48.0;
  return clear ? 0.0 : std::max(0.0, text_row - (scale.y(std::max(next.grade, next.pipe)) - y));
}

/// A reading stands above its stop, or beside it where the grade line comes down steeply.
std::string reading(const GradeChart& chart, const Scale& scale, std::size_t i) {
  const GradeStop& stop = chart.stops[i];
  const double x = scale.x(i);
  const double y = scale.y(std::max(stop.grade, stop.pipe));
  const bool last = i + 1 == chart.stops.size();
  const bool steep = i > 0 && !last && y - scale.y(chart.stops[i - 1].grade) > 0.7 * (x - scale.x(i - 1));
  const double aside = i == 0 ? -10.0 : last ? 10.0 : steep ? 5.0 : 0.0;
  const double above = i == 0 || last ? 3.0 : 9.0 + (steep ? raised(chart, scale, i, y) : 0.0);
  return label({x + aside, y - above}, stop.pressure, reading_class(aside));
}

std::string stop_labels(const GradeChart& chart, const Scale& scale) {
  const std::size_t rows = name_rows(chart, scale);
  std::string out;
  for (std::size_t i = 0; i < chart.stops.size(); ++i) {
    out += group(chart.stops[i].shows, dot({scale.x(i), scale.y(chart.stops[i].grade)}) + reading(chart, scale, i) +
                                           name_label(chart, scale, i, rows));
  }
  return out;
}

/// A narrow chart shows places alone.
GradeChart without_parts(GradeChart chart) {
  std::erase_if(chart.stops, [](const GradeStop& stop) { return stop.part; });
  chart.length_from = chart.length_to = 0;
  return chart;
}

bool is_drawable(const GradeChart& chart) {
  return chart.stops.size() > 1 && std::all_of(chart.stops.begin(), chart.stops.end(), [](const GradeStop& stop) {
           return std::isfinite(stop.pipe) && std::isfinite(stop.grade);
         });
}

}  // namespace

std::string draw(const GradeChart& whole) {
  const GradeChart chart = whole.width < wide ? without_parts(whole) : whole;
  if (!is_drawable(chart)) return {};
  const Scale scale(chart);
  const double height = scale.foot() + 10.0 + row_height * static_cast<double>(name_rows(chart, scale));
  return open(chart.id, chart.width, height, chart.title, chart.description) + ground(chart, scale) +
         axis(chart, scale) + ground_edge(chart, scale) + length_mark(chart, scale) + shapes(chart, scale) +
         stop_labels(chart, scale) + "</svg>\n";
}

}  // namespace forecourse::report::svg
