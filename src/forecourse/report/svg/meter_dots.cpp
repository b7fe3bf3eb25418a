#include "forecourse/report/svg/meter_dots.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {
namespace {

constexpr double name_line = 18.0, bottom = 26.0, names_room = 150.0, course_room = 150.0, right = 16.0;

class Drawing {
 public:
  explicit Drawing(const MeterDots& chart) : c_(chart), is_wide_(chart.width >= wide) {
    bool courses = false;
    double most = 0.0;
    for (const MeterDotsRow& row : c_.rows) {
      courses = courses || row.course.size() > 1;
      most = std::max(most, std::abs(row.mean) + row.error.value_or(0.0));
      for (const double one : row.draws) most = std::max(most, std::abs(one));
      for (const Point& one : row.course) most = std::max(most, std::abs(one.y));
    }
    for (const MeterDotsLimit& limit : c_.limits) most = std::max(most, limit.at);
    marks_ = axis_marks(-std::max(most, 0.01), std::max(most, 0.01), is_wide_ ? 8 : 4);
    left_ = is_wide_ ? names_room : 12.0;
    end_ = c_.width - right - (is_wide_ && courses ? course_room + 24.0 : 0.0);
    courses_ = is_wide_ && courses;
    top_ = 24.0 + name_line * static_cast<double>(c_.limits.size());
    row_ = is_wide_ ? 34.0 : 48.0;
  }

  [[nodiscard]] std::string draw() const {
    std::string out = open(c_.id, c_.width, foot() + bottom, c_.title, c_.description);
    out += label({0.0, 12.0}, c_.axis, "axis-title");
    if (courses_) out += label({c_.width - right, 12.0}, "over its provings", "axis-title end");
    for (const double mark : marks_) {
      out += line({x(mark), top_}, {x(mark), foot()}, std::abs(mark) < 1e-12 ? "zero" : "grid");
      out += label({x(mark), foot() + 16.0}, mark_text(mark, marks_), "tick-top");
    }
    for (std::size_t i = 0; i < c_.limits.size(); ++i) out += limit(i);
    for (std::size_t i = 0; i < c_.rows.size(); ++i) out += row(i);
    return out + "</svg>\n";
  }

 private:
  [[nodiscard]] double x(double value) const {
    return left_ + (value - marks_.front()) / (marks_.back() - marks_.front()) * (end_ - left_);
  }
  [[nodiscard]] double foot() const { return top_ + row_ * static_cast<double>(c_.rows.size()); }

  [[nodiscard]] std::string limit(std::size_t i) const {
    const MeterDotsLimit& limit = c_.limits[i];
    const double y = 34.0 + name_line * static_cast<double>(i);
    const char* look = limit.as_share ? "drop" : "limit";
    return line({x(-limit.at), y - 4.0}, {x(-limit.at), foot()}, look) +
           line({x(limit.at), y - 4.0}, {x(limit.at), foot()}, look) +
           label({x(limit.at) - 6.0, y}, limit.name, limit.as_share ? "value-left" : "limit-left");
  }

  [[nodiscard]] std::string row(std::size_t i) const {
    const MeterDotsRow& row = c_.rows[i];
    const double begin = top_ + row_ * static_cast<double>(i);
    const double y = begin + (is_wide_ ? 0.5 : 0.7) * row_;
    std::string out =
        label({0.0, is_wide_ ? y + 4.0 : begin + 14.0}, shortened(row.name, is_wide_ ? 20 : 40), "bar-name on-sheet");
    for (const double one : row.draws) out += circle({x(one), y}, 3.0, "alone");
    if (row.error) {
      out += line({x(row.mean - *row.error), y}, {x(row.mean + *row.error), y}, "range");
      for (const double side : {-1.0, 1.0}) {
        const double at = x(row.mean + side * *row.error);
        out += line({at, y - 7.0}, {at, y + 7.0}, "range");
      }
    }
    out += circle({x(row.mean), y}, 5.0, "all-open");
    return courses_ && row.course.size() > 1 ? out + course(row, y) : out;
  }

  [[nodiscard]] std::string course(const MeterDotsRow& row, double y) const {
    const double from = c_.width - right - course_room;
    const double days = row.course.back().x - row.course.front().x;
    std::vector<Point> corners;
    for (const Point& one : row.course) {
      const double along = days > 0.0 ? (one.x - row.course.front().x) / days : 0.0;
      corners.push_back({from + along * course_room, y - one.y / marks_.back() * 0.45 * row_});
    }
    std::string out = line({from, y}, {from + course_room, y}, "grid") + polyline(corners, "outline");
    for (const Point& corner : corners) out += circle(corner, 2.5, "all-open");
    return out;
  }

  const MeterDots& c_;
  bool is_wide_;
  bool courses_ = false;
  double left_ = 0.0;
  double end_ = 0.0;
  double top_ = 0.0;
  double row_ = 0.0;
  std::vector<double> marks_;
};

}  // namespace

std::string draw(const MeterDots& chart) { return chart.rows.empty() ? std::string() : Drawing(chart).draw(); }

}  // namespace forecourse::report::svg
