#include "forecourse/report/svg/tank_scene.h"

#include <algorithm>
#include <cmath>

namespace forecourse::report::svg {
namespace {

constexpr double margin = 14.0;
constexpr double head_room = 34.0;  // names above
constexpr double foot_room = 44.0;  // names and dimensions below
constexpr double between = 54.0;    // from section to section, for the marks' names

/// The part of an outline that lies below a level.
std::vector<Point> below(const std::vector<Point>& outline, double level) {
  std::vector<Point> out;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point &a = outline[i], &b = outline[(i + 1) % outline.size()];
    if (a.y <= level) out.push_back(a);
    if ((a.y <= level) != (b.y <= level)) {
      const double share = (level - a.y) / (b.y - a.y);
      out.push_back({a.x + share * (b.x - a.x), level});
    }
  }
  return out;
}

/// Both sections share one scale and one height of zero.
class Scene {
 public:
  explicit Scene(const TankScene& scene) : s_(scene) {
    for (const Point& p : scene.outline) {
      left_ = std::min(left_, p.x);
      right_ = std::max(right_, p.x);
      top_ = std::max(top_, p.y);
    }
    top_ = std::max(top_, scene.section_foot + scene.section_height);
    const bool narrow_page = scene.width < wide;
    const double room = scene.width - 2.0 * margin - (narrow_page ? 0.0 : between);
    scale_ = narrow_page ? std::min(room / (right_ - left_), room / scene.section_width)
                         : room / (right_ - left_ + scene.section_width);
    constexpr double tallest = 260.0;
    scale_ = std::min(scale_, tallest / top_);
    section_left_ = margin;
    long_left_ = narrow_page ? margin : margin + scene.section_width * scale_ + between;
    section_bottom_ = head_room + top_ * scale_;
    long_bottom_ = narrow_page ? section_bottom_ + foot_room + head_room + top_ * scale_ : section_bottom_;
  }

  [[nodiscard]] std::string draw() const {
    std::string out = open(s_.id, s_.width, long_bottom_ + foot_room, s_.title, s_.description);
    return out + group(s_.shows, section() + along()) + "</svg>\n";
  }

 private:
  [[nodiscard]] double x(double meters) const { return long_left_ + (meters - left_) * scale_; }
  [[nodiscard]] double y(double level) const { return long_bottom_ - level * scale_; }
  [[nodiscard]] double section_y(double level) const { return section_bottom_ - level * scale_; }

  [[nodiscard]] std::string filled(const std::vector<Point>& outline, double level, const std::string& look) const {
    std::vector<Point> part = below(outline, level);
    if (part.size() < 3) return {};
    for (Point& p : part) p = {x(p.x), y(p.y)};
    return polygon(part, look);
  }

  /// Points around the section, levels as in the long section.
  [[nodiscard]] std::vector<Point> around() const {
    const double half = 0.5 * s_.section_width, middle = s_.section_foot + 0.5 * s_.section_height;
    if (s_.box)
      return {{0.0, s_.section_foot},
              {s_.section_width, s_.section_foot},
              {s_.section_width, s_.section_foot + s_.section_height},
              {0.0, s_.section_foot + s_.section_height}};
    std::vector<Point> out;
    constexpr int corners = 96;
    for (int i = 0; i < corners; ++i) {
      const double angle = 2.0 * 3.14159265358979 * i / corners;
      out.push_back({half + half * std::sin(angle), middle - 0.5 * s_.section_height * std::cos(angle)});
    }
    return out;
  }

  [[nodiscard]] std::string section() const {
    const std::vector<Point> outline = around();
    const auto shift = [&](std::vector<Point> all) {
      for (Point& p : all) p = {section_left_ + p.x * scale_, section_y(p.y)};
      return all;
    };
    std::string out = polygon(shift(outline), "outline");
    const auto fill = [&](const std::optional<double>& level, const std::string& look) {
      const std::vector<Point> part = level ? below(outline, *level) : std::vector<Point>{};
      if (part.size() >= 3) out += polygon(shift(part), look);
    };
    if (s_.section_surface) fill(s_.section_foot + *s_.section_surface, "liquid " + s_.tone);
    out += polygon(shift(outline), "edge");
    const double right = section_left_ + s_.section_width * scale_;
    for (const TankMark& mark : s_.marks)
      out += line({section_left_ - 4.0, section_y(mark.level)}, {right + 6.0, section_y(mark.level)}, "limit");
    if (s_.level)
      out += line({section_left_ - 4.0, section_y(*s_.level)}, {right + 6.0, section_y(*s_.level)}, "liquid-level");
    return out + label({0.5 * (section_left_ + right), section_bottom_ + 30.0}, s_.section_name, "place middle");
  }

  [[nodiscard]] std::string along() const {
    std::vector<Point> corners = s_.outline;
    for (Point& p : corners) p = {x(p.x), y(p.y)};
    std::string out = polygon(corners, "outline");
    if (s_.level) out += filled(s_.outline, *s_.level, "liquid " + s_.tone);
    if (s_.water) out += filled(s_.outline, *s_.water, "collected");
    out += polygon(corners, "edge");
    // Names are kept a line apart, from the lowest up, so that none covers another.
    double free = 1e9;
    for (const TankMark& mark : s_.marks) {
      out += line({x(left_) - 6.0, y(mark.level)}, {x(right_) + 6.0, y(mark.level)}, "limit");
      free = std::min(y(mark.level) + 9.0, free - 13.0);
      out += label({x(left_) - 8.0, free}, mark.name, "limit-left");
    }
    if (s_.level) out += line({x(left_) - 6.0, y(*s_.level)}, {x(right_) + 6.0, y(*s_.level)}, "liquid-level");
    for (std::size_t i = 0; i < s_.sticks.size(); ++i) out += stick(s_.sticks[i], i);
    return out;
  }

  /// A stick with its name above and the depth on it below, two heights in turn.
  [[nodiscard]] std::string stick(const TankStick& stick, std::size_t i) const {
    const Point foot{x(stick.foot.x), y(stick.foot.y)}, head{x(stick.head.x), y(stick.head.y)};
    const double up = i % 2 == 0 ? 6.0 : 19.0;
    std::string out = line(foot, head, "dimension") + circle(foot, 2.5, "symbol");
    out += label({head.x, y(top_) - up}, shortened(stick.name, 18), "place middle");
    if (!stick.text.empty())
      out += label({foot.x, long_bottom_ + (i % 2 == 0 ? 16.0 : 30.0)}, stick.text, "dimension-text");
    return out;
  }

  const TankScene& s_;
  double left_ = 1e9, right_ = -1e9, top_ = 0.0;
  double scale_ = 1.0, section_left_ = 0.0, long_left_ = 0.0, section_bottom_ = 0.0, long_bottom_ = 0.0;
};

class Curve {
 public:
  explicit Curve(const VolumeCurve& c) : c_(c), begin_(c.width < wide ? 48.0 : 64.0), end_(c.width - 20.0) {
    double deepest = 0.0, most = 0.0;
    for (const Point& p : c.curve) {
      deepest = std::max(deepest, p.x);
      most = std::max(most, p.y);
    }
    for (const Point& p : c.level_chart) most = std::max(most, p.y);
    depths_ = axis_marks(0.0, deepest > 0.0 ? deepest : 1.0, c.width < wide ? 4 : 8);
    volumes_ = axis_marks(0.0, most > 0.0 ? most : 1.0, 5);
  }

  [[nodiscard]] std::string draw() const {
    std::string out = open(c_.id, c_.width, bottom + 46.0, c_.title, c_.description);
    out += label({0.0, 14.0}, c_.volume_axis, "axis-title");
    for (const double mark : volumes_) {
      out += line({begin_, y(mark)}, {end_, y(mark)}, mark == 0.0 ? "zero" : "grid");
      out += label({begin_ - 8.0, y(mark) + 4.0}, mark_text(mark, volumes_), "tick");
    }
    for (const double mark : depths_) {
      out += line({x(mark), y(0.0)}, {x(mark), y(0.0) + 5.0}, "zero");
      out += label({x(mark), y(0.0) + 18.0}, mark_text(mark, depths_), "tick-top");
    }
    out += label({begin_, bottom + 42.0}, c_.depth_axis, "axis-title");
    if (c_.level_chart.size() > 1) out += dashed(c_.level_chart, "7 4");
    if (c_.fitted.size() > 1) out += dashed(c_.fitted, "2 3");
    out += polyline(placed(c_.curve), "grade");
    for (const VolumeCurve::Mark& mark : c_.marks) {
      out += circle({x(mark.depth), y(mark.volume)}, 3.5, "all-open");
      out += label({x(mark.depth) - 7.0, y(mark.volume) - 6.0}, mark.name, "limit-left");
    }
    return out + "</svg>\n";
  }

 private:
  static constexpr double top = 30.0;
  static constexpr double bottom = 250.0;
  [[nodiscard]] double x(double depth) const { return begin_ + depth / depths_.back() * (end_ - begin_); }
  [[nodiscard]] double y(double volume) const { return bottom - volume / volumes_.back() * (bottom - top); }
  [[nodiscard]] std::vector<Point> placed(std::vector<Point> all) const {
    for (Point& p : all) p = {x(p.x), y(p.y)};
    return all;
  }
  [[nodiscard]] std::string dashed(const std::vector<Point>& all, const char* dashes) const {
    return "<polyline class=\"grade\" stroke-dasharray=\"" + std::string(dashes) + "\" points=\"" +
           points(thinned(placed(all))) + "\"/>\n";
  }

  const VolumeCurve& c_;
  double begin_, end_;
  std::vector<double> depths_, volumes_;
};

}  // namespace

std::string draw(const TankScene& scene) {
  if (scene.outline.size() < 3 || !(scene.section_width > 0.0)) return {};
  return Scene(scene).draw();
}

std::string draw(const VolumeCurve& curve) { return curve.curve.size() < 2 ? std::string() : Curve(curve).draw(); }

}  // namespace forecourse::report::svg
