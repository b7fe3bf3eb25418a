#include "forecourse/report/svg/sumps.h"

#include <algorithm>
#include <cmath>

namespace forecourse::report::svg {
namespace {

constexpr double sky = 50.0;       // for names and valves above the ground
constexpr double deepest = 130.0;  // pixels of the deepest sump
constexpr double under = 26.0;     // soil below it
constexpr double row_height = 18.0;
constexpr double character = 6.6;  // of a row's name

/// How the sumps are shared out over strips, and the one scale of all.
class Layout {
 public:
  explicit Layout(const SumpChart& chart) : chart_(chart) {
    const bool narrow_page = chart.width < wide;
    head_ = narrow_page ? 112.0 : 138.0;
    for (const SumpRow& row : chart.rows) {
      if (!row.values.empty()) head_ = std::max(head_, character * static_cast<double>(length(row.name)) + 6.0);
    }
    const double least_column = narrow_page ? 96.0 : 86.0;
    const std::size_t fitting =
        std::max<std::size_t>(1, static_cast<std::size_t>((chart.width - head_) / least_column));
    const std::size_t strips = (chart.sumps.size() + fitting - 1) / fitting;
    per_strip_ = (chart.sumps.size() + strips - 1) / strips;
    column_ = (chart.width - head_) / static_cast<double>(per_strip_);
    double across = 0.0;
    for (const DrawnSump& sump : chart.sumps) {
      deepest_ = std::max(deepest_, sump.depth.value_or(0.0) - std::min(sump.brim, 0.0));
      across = std::max({across, sump.top.value_or(0.0), sump.floor.value_or(0.0)});
    }
    scale_ = deepest / deepest_;
    if (across > 0.0) scale_ = std::min(scale_, (column_ - 26.0) / across);
  }
  [[nodiscard]] bool is_drawable() const { return std::isfinite(scale_) && deepest_ > 0.0; }
  [[nodiscard]] double head() const { return head_; }
  [[nodiscard]] double column() const { return column_; }
  [[nodiscard]] double pixels(double meters) const { return meters * scale_; }
  [[nodiscard]] double depth() const { return deepest_; }
  [[nodiscard]] std::size_t per_strip() const { return per_strip_; }
  [[nodiscard]] double foot() const { return sky + pixels(deepest_) + under; }
  [[nodiscard]] double strip_height() const {
    return foot() + 10.0 + row_height * static_cast<double>(chart_.rows.size()) + 8.0;
  }
  [[nodiscard]] double height() const {
    return strip_height() * std::ceil(static_cast<double>(chart_.sumps.size()) / static_cast<double>(per_strip_));
  }

 private:
  const SumpChart& chart_;
  double head_ = 0.0;
  double column_ = 0.0;
  double deepest_ = 0.0;
  double scale_ = 0.0;
  std::size_t per_strip_ = 1;
};

/// One sump in its column.
class Pit {
 public:
  Pit(const DrawnSump& sump, const Layout& layout, double middle, double ground)
      : s_(sump), layout_(layout), middle_(middle), depth_(sump.depth.value_or(0.6 * layout.depth())) {
    brim_ = ground - layout.pixels(sump.brim);
    floor_ = brim_ + layout.pixels(depth_);
    const double usual = 0.8 * depth_;
    low_half_ = 0.5 * layout.pixels(sump.floor.value_or(sump.top.value_or(usual)));
    high_half_ = 0.5 * layout.pixels(sump.top.value_or(sump.floor.value_or(usual)));
  }

  [[nodiscard]] std::string draw() const {
    std::string out = polygon(outline(), s_.depth ? "sump" : "sump absent");
    if (!s_.depth) return out + label({middle_, floor_ + 16.0}, "depth not entered", "place middle on-soil");
    out += collected();
    out += s_.of_tank ? pump() : "";
    for (std::size_t i = 0; i < s_.pipes.size(); ++i) out += pipe(i);
    out += seal_line() + sensor();
    return out;
  }

 private:
  [[nodiscard]] double y(double height) const { return floor_ - layout_.pixels(height); }
  [[nodiscard]] double half(double height) const { return low_half_ + (high_half_ - low_half_) * height / depth_; }
  [[nodiscard]] std::vector<Point> outline() const {
    return {{middle_ - high_half_, brim_},
            {middle_ - low_half_, floor_},
            {middle_ + low_half_, floor_},
            {middle_ + high_half_, brim_}};
  }

  [[nodiscard]] std::string collected() const {
    if (!s_.sensor) return {};
    const double height = std::min(*s_.sensor, depth_);
    return polygon({{middle_ - half(height), y(height)},
                    {middle_ - low_half_, floor_},
                    {middle_ + low_half_, floor_},
                    {middle_ + half(height), y(height)}},
                   "collected") +
           line({middle_ - half(height), y(height)}, {middle_ + half(height), y(height)}, "collected-edge");
  }

  [[nodiscard]] std::string sensor() const {
    if (!s_.sensor) return {};
    const double x = middle_ + 0.55 * low_half_;
    const double foot = y(std::min(*s_.sensor, depth_));
    return line({x, foot - 18.0}, {x, foot - 5.0}, "edge") + rectangle({x - 5.0, foot - 6.0}, 10.0, 6.0, "motor");
  }

  [[nodiscard]] std::string seal_line() const {
    if (!s_.lowest_seal) return {};
    const double height = std::min(*s_.lowest_seal, depth_);
    return line({middle_ - half(height) - 8.0, y(height)}, {middle_ + half(height) + 8.0, y(height)}, "limit");
  }

  /// The pump's head on its column.
  [[nodiscard]] std::string pump() const {
    const double head = s_.pump_head ? y(*s_.pump_head) : brim_ + 0.35 * (floor_ - brim_);
    return rectangle({middle_ - 3.0, head}, 6.0, floor_ - head, "motor") + circle({middle_, head}, 8.0, "symbol") +
           path("M" + at({middle_ - 4.5, head - 5.5}) + "v11l11 -5.5z", "symbol");
  }

  /// From the wall to the riser or the pump, with its seals.
  [[nodiscard]] std::string pipe(std::size_t i) const {
    const SumpPipe& p = s_.pipes[i];
    const double level = y(p.height);
    const double wall = half(p.height);
    std::string way;
    std::string seals;
    const auto seal = [&](double x) { seals += rectangle({x - 3.0, level - 5.0}, 6.0, 10.0, "motor"); };
    if (s_.of_tank) {
      way = "M" + at({middle_ + 3.0, level}) + "H" + coordinate(middle_ + wall + 9.0);
      seal(middle_ + wall);
    } else {
      const double pitch = std::min(13.0, 1.4 * low_half_ / static_cast<double>(s_.pipes.size()));
      const double riser = middle_ + pitch * (static_cast<double>(i) - 0.5 * static_cast<double>(s_.pipes.size() - 1));
      const double end = p.passes ? middle_ + wall + 9.0 : riser;
      way = "M" + at({middle_ - wall - 9.0, level}) + "H" + coordinate(end) + "M" + at({riser, level}) + "V" +
            coordinate(brim_ - 4.0);
      seal(middle_ - wall);
      if (p.passes) seal(middle_ + wall);
      seals += path("M" + at({riser - 4.5, brim_ - 14.0}) + "h9l-9 10h9z", "symbol");
    }
    return path(way, "pipe-edge") + path(way, "pipe " + p.tone) + seals;
  }

  const DrawnSump& s_;
  const Layout& layout_;
  double middle_;
  double depth_;
  double brim_ = 0.0;
  double floor_ = 0.0;
  double low_half_ = 0.0;
  double high_half_ = 0.0;
};

/// A dimension line from the ground down over a round depth.
std::string scale_mark(const SumpChart& chart, const Layout& layout, double ground) {
  const std::vector<double> marks = axis_marks(0.0, layout.depth() / chart.unit, 2);
  const double round = marks.back() * chart.unit > layout.depth() * 1.02 ? marks[marks.size() - 2] : marks.back();
  const double x = layout.head() - 14.0;
  const double end = ground + layout.pixels(round * chart.unit);
  return path("M" + at({x, ground}) + "V" + coordinate(end) + "M" + at({x - 4.0, ground}) + "h8M" + at({x - 4.0, end}) +
                  "h8",
              "dimension") +
         label({x - 7.0, 0.5 * (ground + end) + 4.0}, mark_text(round, marks) + "\u00A0" + chart.unit_name,
               "place end on-soil");
}

/// Sumps beside each other under a piece of the ground line, with their rows.
std::string strip(const SumpChart& chart, const Layout& layout, std::size_t first, double top) {
  const double ground = top + sky;
  const double foot = top + layout.foot();
  const std::size_t last = std::min(first + layout.per_strip(), chart.sumps.size());
  const double right = layout.head() + layout.column() * static_cast<double>(last - first);
  std::string out = rectangle({0.0, ground}, right, foot - ground, "soil") +
                    earth_ticks({0.0, ground + 1.5}, right, "earth") + scale_mark(chart, layout, ground);
  for (std::size_t r = 0; r < chart.rows.size(); ++r) {
    const double y = foot + 24.0 + row_height * static_cast<double>(r);
    out += label({0.0, y}, chart.rows[r].name, chart.rows[r].values.empty() ? "name" : "place");
    out += line({0.0, y + 5.0}, {right, y + 5.0}, "grid");
  }
  const auto fitting = static_cast<std::size_t>(layout.column() / 7.4);
  for (std::size_t i = first; i < last; ++i) {
    const DrawnSump& sump = chart.sumps[i];
    const double middle = layout.head() + layout.column() * (static_cast<double>(i - first) + 0.5);
    std::string piece = rectangle({middle - 0.5 * layout.column() + 1.0, top + 4.0}, layout.column() - 2.0,
                                  layout.strip_height() - 12.0, "touch");
    piece += Pit(sump, layout, middle, ground).draw();
    piece += label({middle, top + 22.0}, shortened(sump.name, fitting), "name middle on-sheet");
    for (std::size_t r = 0; r < chart.rows.size(); ++r) {
      if (i >= chart.rows[r].values.size()) continue;
      const double y = foot + 24.0 + row_height * static_cast<double>(r);
      piece += label({middle, y}, chart.rows[r].values[i], "bar-value middle");
    }
    out += group(sump.shows, piece, "column-of");
  }
  return out + line({0.0, ground}, {right, ground}, "ground-line");
}

}  // namespace

std::string draw(const SumpChart& chart) {
  if (chart.sumps.empty()) return {};
  const Layout layout(chart);
  if (!layout.is_drawable()) return {};
  std::string out = open(chart.id, chart.width, layout.height(), chart.title, chart.description);
  double top = 0.0;
  for (std::size_t first = 0; first < chart.sumps.size(); first += layout.per_strip()) {
    out += strip(chart, layout, first, top);
    top += layout.strip_height();
  }
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
