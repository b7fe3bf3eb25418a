#include "forecourse/report/drawing/plan.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::drawing {
namespace {

using svg::Point;

constexpr double side = 70.0;  // room for names beside the outermost marks
constexpr double above = 54.0;
constexpr double below = 56.0;
constexpr double key = 54.0;  // scale bar and products
constexpr double tallest = 420.0;
constexpr double lane_width = 8.0;
constexpr double widest_line = 7.0;

/// The scale, the same both ways.
class Scale {
 public:
  explicit Scale(const Plan& plan) {
    for (const PlanMark& m : plan.marks) {
      left_ = std::min(left_, m.x);
      right_ = std::max(right_, m.x);
      low_ = std::min(low_, m.y);
      high_ = std::max(high_, m.y);
    }
    const double across = right_ - left_;
    const double up = high_ - low_;
    scale_ = (svg::wide - 2.0 * side) / std::max(across, 1e-9);
    if (up * scale_ > tallest) scale_ = tallest / up;
    start_ = 0.5 * (svg::wide - across * scale_);
  }
  [[nodiscard]] bool is_drawable() const {
    return std::isfinite(scale_) && (right_ - left_ > 0.1 || high_ - low_ > 0.1);
  }
  [[nodiscard]] Point at(double x, double y) const {
    return {start_ + (x - left_) * scale_, above + (high_ - y) * scale_};
  }
  [[nodiscard]] double foot() const { return above + (high_ - low_) * scale_ + below; }
  /// How a page turns pixels into meters.
  [[nodiscard]] std::string told() const {
    const Point origin = at(0.0, 0.0);
    return svg::data("px-per-m", scale_) + svg::data("x0", origin.x) + svg::data("y0", origin.y);
  }
  [[nodiscard]] double pixels(double meters) const { return meters * scale_; }

 private:
  static constexpr double far = std::numeric_limits<double>::infinity();

  double left_ = far;
  double right_ = -far;
  double low_ = far;
  double high_ = -far;
  double scale_ = 1.0;
  double start_ = 0.0;
};

/// A stroke as wide as its flow, in ink with the product's tone inside; a thin line where nothing flows.
std::string stroke(Point from, Point to, double flow, const std::string& tone) {
  const double width = flow > 0.0 ? 1.5 + (widest_line - 1.5) * flow : 0.0;
  const std::string ends = "M" + svg::at(from) + "L" + svg::at(to);
  if (!(width > 0.0)) return svg::path(ends, "break-line");
  const auto with_width = [&](const char* css_class, double w) {
    return "<path class=\"" + std::string(css_class) + "\" stroke-width=\"" + svg::coordinate(w) + "\" d=\"" + ends +
           "\"/>\n";
  };
  std::string out = with_width("run-edge", width + 2.0) + with_width(("run " + tone).c_str(), width);
  if (tone == "premium") out += svg::path(ends, "run-mark dashes");
  if (tone == "diesel") out += svg::path(ends, "run-mark on-diesel");
  return out;
}

std::string run(const PlanRun& r, const Scale& scale) {
  Point from = scale.at(r.from_x, r.from_y);
  Point to = scale.at(r.to_x, r.to_y);
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  if (length < 1.0) return {};
  const Point aside{-(to.y - from.y) / length * lane_width * r.lane, (to.x - from.x) / length * lane_width * r.lane};
  from = {from.x + aside.x, from.y + aside.y};
  to = {to.x + aside.x, to.y + aside.y};
  return svg::group(r.shows, stroke(from, to, r.flow, r.tone));
}

std::string hoses(const PlanMark& m, Point at) {
  constexpr double pitch = 10.0;
  const auto columns = static_cast<std::size_t>(m.hoses.size() > 5 ? (m.hoses.size() + 1) / 2 : m.hoses.size());
  std::string out;
  for (std::size_t i = 0; i < m.hoses.size(); ++i) {
    const double column = static_cast<double>(i % columns) - 0.5 * static_cast<double>(columns - 1);
    const std::size_t row = i / columns;
    out += svg::circle({at.x + pitch * column, at.y + 20.0 + pitch * static_cast<double>(row)}, 3.5,
                       m.hoses[i] ? "hose-open" : "hose-shut");
  }
  return out;
}

std::string symbol(const PlanMark& m, const Scale& scale) {
  const Point at = scale.at(m.x, m.y);
  if (m.kind == MarkKind::branch)
    return svg::circle(at, 4.0, "node") + svg::label({at.x + 8.0, at.y - 8.0}, m.name, "place");
  if (m.kind == MarkKind::pump)
    return svg::circle(at, 6.0, "symbol") + svg::label({at.x, at.y + 20.0}, m.name, "place middle on-sheet");
  if (m.kind == MarkKind::tank) {
    return svg::circle(at, 11.0, "tank-mark") +
           svg::path("M" + svg::at({at.x - 15.0, at.y}) + "h30M" + svg::at({at.x, at.y - 15.0}) + "v30", "cross") +
           svg::label({at.x - 18.0, at.y + 4.0}, m.name, "name end on-sheet");
  }
  return svg::rectangle({at.x - 9.0, at.y - 9.0}, 18.0, 18.0, "island") +
         svg::label({at.x, at.y - 19.0}, svg::shortened(m.name, 10), "name middle on-sheet") + hoses(m, at);
}

std::string mark(const PlanMark& m, const Scale& scale) {
  const std::string place = m.shows.part.empty() ? "" : svg::data("x", m.x) + svg::data("y", m.y);
  return svg::group(m.shows, symbol(m, scale), "", place);
}

/// A bar of round length, about a fifth of the width.
std::string scale_bar(const Plan& plan, const Scale& scale, double y) {
  const double wished = (svg::wide - 2.0 * side) / 5.0 / scale.pixels(plan.unit);
  const std::vector<double> marks = svg::axis_marks(0.0, wished, 2);
  const double step = marks[1] - marks[0];
  const double pitch = scale.pixels(step * plan.unit);
  std::string out =
      svg::path("M" + svg::at({12.0, y}) + "h" + svg::coordinate(2.0 * pitch) + "M" + svg::at({12.0, y - 5.0}) +
                    "v10M" + svg::at({12.0 + pitch, y - 5.0}) + "v10M" + svg::at({12.0 + 2.0 * pitch, y - 5.0}) + "v10",
                "scale-bar");
  for (int i = 0; i <= 2; ++i) {
    const std::string text = svg::mark_text(step * i, marks) + (i == 2 ? "\u00A0" + plan.unit_name : "");
    out += svg::label({12.0 + pitch * i, y - 9.0}, text, "place middle");
  }
  return out;
}

std::string products(const Plan& plan, double y) {
  std::string out;
  double x = svg::wide - 4.0;
  for (auto p = plan.products.rbegin(); p != plan.products.rend(); ++p) {
    const std::string text = svg::shortened(p->name, 16) + (p->flow.empty() ? "" : ", " + p->flow);
    out += svg::label({x, y + 4.0}, text, "place end");
    x -= 7.2 * static_cast<double>(svg::length(text)) + 8.0;
    out += stroke({x - 34.0, y}, {x, y}, 1.0, p->tone);
    x -= 54.0;
  }
  return out;
}

}  // namespace

std::string draw(const Plan& plan) {
  const Scale scale(plan);
  if (plan.marks.size() < 2 || !scale.is_drawable()) return {};
  const double foot = scale.foot();
  std::string out = svg::open(plan.id, svg::wide, foot + key, plan.title, plan.description, scale.told());
  out += svg::rectangle({0.5, 0.5}, svg::wide - 1.0, foot, "plan-frame");
  for (const PlanRun& r : plan.runs) out += run(r, scale);
  for (const PlanMark& m : plan.marks) out += mark(m, scale);
  return out + scale_bar(plan, scale, foot + 36.0) + products(plan, foot + 34.0) + "</svg>\n";
}

}  // namespace forecourse::report::drawing
