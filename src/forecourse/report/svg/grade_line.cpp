#include "forecourse/report/svg/grade_line.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {
namespace {

constexpr double plot_height = 266.0;
constexpr double right = 12.0;
constexpr double top = 44.0;
constexpr double two_rows = 66.0;  // of names under the axis
constexpr double one_row = 38.0;
constexpr double character_width = 6.6;  // of the label size, generously

/// Where the chart's values lie in the drawing.
class Scale {
 public:
  explicit Scale(const GradeChart& chart)
      : count_(chart.stops.size()), width_(chart.width), narrow_(chart.width < wide) {
    double low = 0.0;
    double high = 0.0;
    for (const GradeStop& stop : chart.stops) {
      low = std::min({low, stop.pipe, stop.grade});
      high = std::max({high, stop.pipe, stop.grade});
    }
    marks_ = axis_marks(low, high > low ? high : low + 1.0, 5);
  }

  [[nodiscard]] double x(std::size_t stop) const {
    const double margin = narrow_ ? 30.0 : 44.0;  // room for the first and last name
    const double step = (end() - begin() - 2.0 * margin) / static_cast<double>(count_ - 1);
    return begin() + margin + step * static_cast<double>(stop);
  }
  [[nodiscard]] double y(double value) const {
    const double share = (value - marks_.front()) / (marks_.back() - marks_.front());
    return foot() - share * plot_height;
  }
  [[nodiscard]] double begin() const { return narrow_ ? 30.0 : 56.0; }
  [[nodiscard]] double end() const { return width_ - right; }
  [[nodiscard]] double foot() const { return top + plot_height; }
  [[nodiscard]] double spacing() const { return x(1) - x(0); }
  [[nodiscard]] const std::vector<double>& marks() const { return marks_; }

 private:
  std::size_t count_;
  double width_;
  bool narrow_;
  std::vector<double> marks_;
};

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
  std::string out = "<polygon class=\"gap\" points=\"" + points(gap) + "\"/>\n";
  for (std::size_t i = 0; i < pipe.size(); ++i) out += line(pipe[i], grade[i], "drop");
  out += "<polyline class=\"pipe-edge\" points=\"" + points(pipe) + "\"/>\n";
  out += "<polyline class=\"pipe\" points=\"" + points(pipe) + "\"/>\n";
  return out + "<polyline class=\"grade\" points=\"" + points(grade) + "\"/>\n";
}

std::string dot(Point at) {
  return "<circle class=\"stop\" cx=\"" + coordinate(at.x) + "\" cy=\"" + coordinate(at.y) + "\" r=\"3.5\"/>\n";
}

/// At the ends the reading stands beside its stop, clear of the steep grade line.
const char* reading_class(double aside) {
  return aside < 0.0 ? "reading before" : aside > 0.0 ? "reading behind" : "reading";
}

/// Whether the names need two rows.
bool is_crowded(const GradeChart& chart, const Scale& scale) {
  return std::any_of(chart.stops.begin(), chart.stops.end(), [&](const GradeStop& stop) {
    return static_cast<double>(std::max(stop.name.size(), stop.distance.size())) * character_width > scale.spacing();
  });
}

std::string stop_labels(const GradeChart& chart, const Scale& scale) {
  const auto fitting = static_cast<std::size_t>(std::max(4.0, (2.0 * scale.spacing() - 6.0) / character_width));
  const bool crowded = is_crowded(chart, scale);
  std::string out;
  for (std::size_t i = 0; i < chart.stops.size(); ++i) {
    const GradeStop& stop = chart.stops[i];
    const double x = scale.x(i);
    const double y = scale.y(std::max(stop.grade, stop.pipe));
    out += dot({x, scale.y(stop.grade)});
    const double aside = i == 0 ? -10.0 : i + 1 == chart.stops.size() ? 10.0 : 0.0;
    out += label({x + aside, aside == 0.0 ? y - 9.0 : y - 3.0}, stop.pressure, reading_class(aside));
    const double row = scale.foot() + 16.0 + (crowded && i % 2 == 1 ? 28.0 : 0.0);
    const std::size_t longest = crowded ? fitting : std::max<std::size_t>(fitting / 2, 4);
    out += label({x, row}, shortened(stop.name, std::max<std::size_t>(longest, 4)), "stop-name");
    out += label({x, row + 13.0}, stop.distance, "stop-place");
  }
  return out;
}

bool is_drawable(const GradeChart& chart) {
  return chart.stops.size() > 1 && std::all_of(chart.stops.begin(), chart.stops.end(), [](const GradeStop& stop) {
           return std::isfinite(stop.pipe) && std::isfinite(stop.grade);
         });
}

}  // namespace

std::string draw(const GradeChart& chart) {
  if (!is_drawable(chart)) return {};
  const Scale scale(chart);
  const double height = scale.foot() + (is_crowded(chart, scale) ? two_rows : one_row);
  return open(chart.id, chart.width, height, chart.title, chart.description) + axis(chart, scale) +
         shapes(chart, scale) + stop_labels(chart, scale) + "</svg>\n";
}

}  // namespace forecourse::report::svg
