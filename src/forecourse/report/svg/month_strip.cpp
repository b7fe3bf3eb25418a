#include "forecourse/report/svg/month_strip.h"

#include <algorithm>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {
namespace {

constexpr double top = 26.0;
constexpr double row_height = 22.0;
constexpr double name_width = 360.0;
constexpr double key_width = 180.0;
constexpr double key_height = 40.0;
constexpr double half = 5.0;  // of a mark

std::string mark_at(StripMark mark, Point at) {
  switch (mark) {
    case StripMark::none:
      return {};
    case StripMark::cross:
      return line({at.x - half, at.y - half}, {at.x + half, at.y + half}, "range") +
             line({at.x - half, at.y + half}, {at.x + half, at.y - half}, "range");
    case StripMark::diamond:
      return polygon(
          {{at.x - half - 1, at.y}, {at.x, at.y - half - 1}, {at.x + half + 1, at.y}, {at.x, at.y + half + 1}},
          "all-open");
    case StripMark::disk:
      return circle(at, half, "all-open");
    case StripMark::ring:
      return circle(at, half, "alone");
    case StripMark::square:
      return rectangle({at.x - half, at.y - half}, 2.0 * half, 2.0 * half, "alone");
    case StripMark::dash:
      return line({at.x - half, at.y}, {at.x + half, at.y}, "range");
  }
  return {};
}

class Drawing {
 public:
  explicit Drawing(const MonthStrip& strip)
      : strip_(strip),
        left_(std::min(name_width, 0.5 * strip.width)),
        column_((strip.width - left_) / static_cast<double>(strip.months.size())),
        end_(top + row_height * static_cast<double>(strip.rows.size())) {}

  [[nodiscard]] std::string draw() const {
    std::string out = open(strip_.id, strip_.width, end_ + key_height, strip_.title, strip_.description);
    for (std::size_t i = 0; i < strip_.months.size(); ++i) {
      out += label({x(i), 14.0}, strip_.months[i], "tick-top");
      out += line({x(i) - 0.5 * column_, top - 4.0}, {x(i) - 0.5 * column_, end_}, "grid");
    }
    for (std::size_t i = 0; i < strip_.rows.size(); ++i) out += row(i);
    for (std::size_t i = 0; i < strip_.keys.size(); ++i) out += key(i);
    return out + "</svg>\n";
  }

 private:
  [[nodiscard]] double x(std::size_t month) const { return left_ + (static_cast<double>(month) + 0.5) * column_; }

  [[nodiscard]] std::string row(std::size_t number) const {
    const StripRow& one = strip_.rows[number];
    const double y = top + (static_cast<double>(number) + 0.5) * row_height;
    std::string out = label({0.0, y + 4.0}, shortened(one.name, 54), "bar-name");
    for (std::size_t i = 0; i < std::min(one.marks.size(), strip_.months.size()); ++i)
      out += mark_at(one.marks[i], {x(i), y});
    return out;
  }

  [[nodiscard]] std::string key(std::size_t number) const {
    const double left = static_cast<double>(number) * key_width;
    const double y = end_ + 0.6 * key_height;
    return mark_at(strip_.keys[number].mark, {left + half + 2.0, y}) +
           label({left + 2.0 * half + 10.0, y + 4.0}, strip_.keys[number].words, "bar-owner");
  }

  const MonthStrip& strip_;
  double left_;
  double column_;
  double end_;
};

}  // namespace

std::string draw(const MonthStrip& strip) {
  if (strip.rows.empty() || strip.months.empty()) return {};
  return Drawing(strip).draw();
}

}  // namespace forecourse::report::svg
