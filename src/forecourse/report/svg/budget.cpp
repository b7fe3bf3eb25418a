#include "forecourse/report/svg/budget.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {
namespace {

constexpr double right = 52.0;
constexpr double top = 40.0;
constexpr double bar_height = 13.0;

/// Places in the drawing. On a narrow one the owner stands under the name.
class Scale {
 public:
  explicit Scale(const BudgetChart& chart)
      : left_(chart.width < wide ? 128.0 : 272.0),
        right_(chart.width - right),
        row_height_(chart.width < wide ? 34.0 : 22.0) {
    double low = 0.0;
    double high = 0.0;
    for (const BudgetBar& bar : chart.bars) {
      low = std::min({low, bar.before, bar.after});
      high = std::max({high, bar.before, bar.after});
    }
    marks_ = axis_marks(low, high > low ? high : low + 1.0, chart.width < wide ? 4 : 6);
  }
  [[nodiscard]] double x(double value) const {
    return left_ + (value - marks_.front()) / (marks_.back() - marks_.front()) * (right_ - left_);
  }
  [[nodiscard]] double left() const { return left_; }
  [[nodiscard]] double row_height() const { return row_height_; }
  [[nodiscard]] double row_top(std::size_t row) const { return top + row_height_ * static_cast<double>(row); }
  [[nodiscard]] const std::vector<double>& marks() const { return marks_; }

 private:
  double left_;
  double right_;
  double row_height_;
  std::vector<double> marks_;
};

std::string names(const BudgetBar& bar, double middle, bool stacked) {
  if (!stacked) {
    return label({0.0, middle}, shortened(bar.name, 22), "bar-name") +
           label({150.0, middle}, shortened(bar.owner, 17), "bar-owner");
  }
  return label({0.0, middle - 6.0}, shortened(bar.name, 18), "bar-name") +
         label({0.0, middle + 8.0}, shortened(bar.owner, 16), "bar-owner");
}

std::string axis(const BudgetChart& chart, const Scale& scale) {
  const double end = scale.row_top(chart.bars.size());
  std::string out = label({chart.width < wide ? 0.0 : scale.left(), 12.0}, chart.axis, "axis-title");
  for (const double mark : scale.marks()) {
    const double x = scale.x(mark);
    out += line({x, top - 6.0}, {x, end}, mark == 0.0 ? "zero" : "grid");
    out += label({x, top - 12.0}, mark_text(mark, scale.marks()), "tick-top");
  }
  return out;
}

std::string bar_row(const BudgetChart& chart, const Scale& scale, std::size_t row) {
  const BudgetBar& bar = chart.bars[row];
  const double y = scale.row_top(row) + 0.5 * (scale.row_height() - bar_height);
  const double middle = y + 0.5 * bar_height + 4.0;
  const double from = scale.x(std::min(bar.before, bar.after));
  const double to = scale.x(std::max(bar.before, bar.after));
  const double least = 1.5;  // so that a part too small to show is still seen to be there
  std::string out = names(bar, middle, chart.width < wide);
  out += rectangle({from, y}, std::max(to - from, least), bar_height, bar.after > bar.before ? "adds" : "takes");
  out += label({to + 6.0, middle}, bar.change, "bar-value");
  if (row + 1 < chart.bars.size()) {
    out += line({scale.x(bar.after), y + bar_height}, {scale.x(bar.after), y + scale.row_height()}, "step");
  }
  return out;
}

bool is_drawable(const BudgetChart& chart) {
  return !chart.bars.empty() && std::all_of(chart.bars.begin(), chart.bars.end(), [](const BudgetBar& bar) {
    return std::isfinite(bar.before) && std::isfinite(bar.after);
  });
}

}  // namespace

std::string draw(const BudgetChart& chart) {
  if (!is_drawable(chart)) return {};
  const Scale scale(chart);
  std::string out = open(chart.id, chart.width, scale.row_top(chart.bars.size()) + 6.0, chart.title, chart.description);
  out += axis(chart, scale);
  for (std::size_t row = 0; row < chart.bars.size(); ++row) out += bar_row(chart, scale, row);
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
