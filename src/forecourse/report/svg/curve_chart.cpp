#include "forecourse/report/svg/curve_chart.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {
namespace {

constexpr double plot_height = 190.0;
constexpr double foot_room = 46.0;
constexpr double character = 6.6;  // of a name
constexpr std::array<const char*, 4> dashes{"", " stroke-dasharray=\"7 4\"", " stroke-dasharray=\"4 3\"",
                                            " stroke-dasharray=\"1.5 3\""};

/// From the least to the greatest number.
struct Reach {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();

  void take(double value) {
    if (!std::isfinite(value)) return;
    low = std::min(low, value);
    high = std::max(high, value);
  }
  [[nodiscard]] bool any() const { return low <= high; }
  [[nodiscard]] std::vector<double> marks(int about) const {
    return axis_marks(low, high > low ? high : low + 1.0, about);
  }
};

class Drawing {
 public:
  explicit Drawing(const CurveChart& chart) : c_(chart), top_(chart.width < wide ? 58.0 : 40.0) {
    Reach x, y;
    y.take(0.0);
    for (const Curve& curve : c_.curves) {
      for (std::size_t i = 0; i < curve.x.size(); ++i) {
        if (!std::isfinite(curve.y[i])) continue;
        x.take(curve.x[i]);
        y.take(std::min(curve.y[i], c_.highest.value_or(INFINITY)));
      }
    }
    for (const CurveLimit& limit : c_.limits) y.take(std::min(limit.at, c_.highest.value_or(INFINITY)));
    drawable_ = x.any() && x.low < x.high;
    if (!drawable_) return;
    x_ = x.marks(c_.width < wide ? 4 : 8);
    y_ = y.marks(5);
  }

  [[nodiscard]] std::string draw() const {
    if (!drawable_) return {};
    std::string out = open(c_.id, c_.width, foot() + foot_room, c_.title, c_.description);
    out += label({0.0, 14.0}, c_.y_axis, "axis-title") + legend() + axes();
    for (const CurveLimit& limit : c_.limits) {
      out += line({begin_, y(limit.at)}, {right(), y(limit.at)}, "limit");
      const double name_x = limit.name_first ? begin_ + 6.0 : right();
      out += label({name_x, y(limit.at) + (limit.name_below ? 14.0 : -5.0)}, limit.name,
                   limit.name_first ? "limit-right" : "limit-left");
    }
    for (const CurveLimit& mark : c_.marks) {
      out += line({x(mark.at), top_}, {x(mark.at), foot()}, "drop");
      out += label({std::clamp(x(mark.at), begin_ + 40.0, right() - 40.0), top_ - 4.0}, mark.name, "tick-top");
    }
    for (const double at : c_.foot_ticks) out += line({x(at), foot() - 9.0}, {x(at), foot()}, "drop");
    for (const Curve& curve : c_.curves) out += course(curve);
    for (const CurveCross& at : c_.crosses) out += cross({x(at.x), y(at.y)});
    return out + "</svg>\n";
  }

 private:
  [[nodiscard]] double right() const { return c_.width - 14.0; }
  [[nodiscard]] double foot() const { return top_ + plot_height; }
  [[nodiscard]] double x(double value) const {
    return begin_ + (value - x_.front()) / (x_.back() - x_.front()) * (right() - begin_);
  }
  [[nodiscard]] double y(double value) const {
    return foot() - (value - y_.front()) / (y_.back() - y_.front()) * plot_height;
  }

  [[nodiscard]] std::string axes() const {
    std::string out;
    for (const double tick : y_) {
      out += line({begin_, y(tick)}, {right(), y(tick)}, tick == y_.front() ? "zero" : "grid");
      out += label({begin_ - 8.0, y(tick) + 4.0}, mark_text(tick, y_), "tick");
    }
    for (const double tick : x_) {
      out += line({x(tick), foot()}, {x(tick), foot() + 5.0}, "zero");
      const bool last = tick == x_.back();
      out += label({last ? right() + 6.0 : x(tick), foot() + 18.0}, mark_text(tick, x_), last ? "tick" : "tick-top");
    }
    return out + label({right(), foot() + 36.0}, c_.x_axis, "axis-title end");
  }

  /// Name and stroke of each curve from the right, on a narrow chart below the axis's title.
  [[nodiscard]] std::string legend() const {
    const double line_at = c_.width < wide ? 34.0 : 14.0;
    std::string out;
    double at = right();
    for (auto curve = c_.curves.rbegin(); curve != c_.curves.rend(); ++curve) {
      if (curve->name.empty()) continue;
      const double text = character * static_cast<double>(length(curve->name));
      out += label({at - text, line_at}, curve->name, "bar-name");
      at -= text + 6.0;
      out += stroke(curve->dash, {{at - 22.0, line_at - 4.0}, {at, line_at - 4.0}});
      at -= 34.0;
    }
    return out;
  }

  static std::string cross(Point at) {
    constexpr double arm = 4.5;
    return stroke(0, {{at.x - arm, at.y - arm}, {at.x + arm, at.y + arm}}) +
           stroke(0, {{at.x - arm, at.y + arm}, {at.x + arm, at.y - arm}});
  }

  static std::string stroke(std::size_t dash, const std::vector<Point>& corners) {
    return "<polyline class=\"grade\"" + std::string(dashes[std::min<std::size_t>(dash, 3)]) + " points=\"" +
           points(thinned(corners)) + "\"/>\n";
  }

  [[nodiscard]] std::string course(const Curve& curve) const {
    std::string out;
    std::vector<Point> corners;
    const auto end_stretch = [&] {
      if (corners.size() > 1) out += stroke(curve.dash, corners);
      corners.clear();
    };
    for (std::size_t i = 0; i < curve.x.size(); ++i) {
      const bool shown = std::isfinite(curve.y[i]) && curve.y[i] <= y_.back();
      if (shown) corners.push_back({x(curve.x[i]), y(curve.y[i])});
      if (!shown) end_stretch();
    }
    end_stretch();
    return out;
  }

  const CurveChart& c_;
  double begin_ = 52.0;
  double top_;
  bool drawable_ = false;
  std::vector<double> x_;
  std::vector<double> y_;
};

}  // namespace

std::string draw(const CurveChart& chart) { return Drawing(chart).draw(); }

}  // namespace forecourse::report::svg
