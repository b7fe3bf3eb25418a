#include "forecourse/report/svg/span_chart.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/units.h"

namespace forecourse::report::svg {
namespace {

constexpr double top = 28.0;
constexpr double row_height = 26.0;
constexpr double bottom = 24.0;
constexpr double right = 58.0;

/// Where the rows stand: beside their names on a wide page, below them on a phone.
class Scale {
 public:
  explicit Scale(const SpanChart& chart)
      : is_wide_(chart.width >= wide), left_(is_wide_ ? 300.0 : 52.0), right_(chart.width - right) {
    double most = 0.0;
    for (const SpanMarks& row : chart.rows) most = std::max(most, row.most);
    marks_ = axis_marks(0.0, most > 0.0 ? most : 1.0, is_wide_ ? 6 : 4);
  }
  [[nodiscard]] double x(double value) const { return left_ + value / marks_.back() * (right_ - left_); }
  [[nodiscard]] double height() const { return is_wide_ ? row_height : 2.0 * row_height - 8.0; }
  [[nodiscard]] double y(std::size_t row) const {
    return top + height() * static_cast<double>(row) + (is_wide_ ? 0.5 : 0.72) * height();
  }
  [[nodiscard]] double name_y(std::size_t row) const { return is_wide_ ? y(row) + 4.0 : y(row) - 16.0; }
  [[nodiscard]] bool is_wide() const { return is_wide_; }
  [[nodiscard]] const std::vector<double>& marks() const { return marks_; }

 private:
  bool is_wide_;
  double left_;
  double right_;
  std::vector<double> marks_;
};

std::string axis(const SpanChart& chart, const Scale& scale, double end) {
  std::string out = label({0.0, 12.0}, chart.axis, "axis-title");
  for (const double mark : scale.marks()) {
    out += line({scale.x(mark), top}, {scale.x(mark), end}, mark == 0.0 ? "zero" : "grid");
    out += label({scale.x(mark), end + 16.0}, mark_text(mark, scale.marks()), "tick-top");
  }
  return out;
}

std::string row(const SpanChart& chart, const Scale& scale, std::size_t i) {
  const SpanMarks& marks = chart.rows[i];
  const double y = scale.y(i);
  const double least = scale.x(marks.least);
  const double most = scale.x(marks.most);
  std::string out =
      label({0.0, scale.name_y(i)}, shortened(marks.name, scale.is_wide() ? 36 : 42), "bar-name on-sheet");
  out += line({least, y}, {most, y}, "range");
  for (const double end : {least, most}) out += line({end, y - 5.0}, {end, y + 5.0}, "range");
  out += circle({scale.x(marks.likely), y}, 4.0, "all-open");
  out += label({least - 9.0, y + 4.0}, number(marks.least, chart.decimals), "value-left");
  if (marks.most > marks.least) out += label({most + 9.0, y + 4.0}, number(marks.most, chart.decimals), "value-right");
  return out;
}

bool can_draw(const SpanMarks& row) {
  return std::isfinite(row.likely) && std::isfinite(row.most) && row.least >= 0.0 && row.least <= row.most;
}

}  // namespace

std::string draw(const SpanChart& chart) {
  if (chart.rows.empty() || !std::all_of(chart.rows.begin(), chart.rows.end(), can_draw)) return {};
  const Scale scale(chart);
  const double end = top + scale.height() * static_cast<double>(chart.rows.size());
  std::string out = open(chart.id, chart.width, end + bottom, chart.title, chart.description);
  out += axis(chart, scale, end);
  for (std::size_t i = 0; i < chart.rows.size(); ++i) out += row(chart, scale, i);
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
