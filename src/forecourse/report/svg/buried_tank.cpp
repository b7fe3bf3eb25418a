#include "forecourse/report/svg/buried_tank.h"

#include <algorithm>
#include <cmath>

namespace forecourse::report::svg {
namespace {

constexpr double sky = 34.0;    // above the ground line
constexpr double under = 24.0;  // soil below all
constexpr double deepest_drawn = 330.0;
constexpr double hatch_spacing = 9.0;

class Section {
 public:
  explicit Section(const BuriedTankDrawing& drawing) : d_(drawing), middle_(0.5 * drawing.width) {
    depth_ = d_.crown + d_.diameter;
    double half = std::max(0.75 * d_.diameter, d_.soil_counts ? d_.prism_half_top : 0.0);
    for (const BuriedPiece& piece : d_.pieces) {
      half = std::max({half, std::abs(piece.left), std::abs(piece.right)});
      depth_ = std::max(depth_, piece.bottom);
    }
    scale_ = std::min(deepest_drawn / depth_, (middle_ - 24.0) / half);
  }

  [[nodiscard]] std::string draw() const {
    if (!(d_.diameter > 0.0) || !std::isfinite(scale_)) return {};
    const double foot = y(depth_) + under;
    std::string out = open(d_.id, d_.width, foot + 2.0, d_.title, d_.description);
    out += rectangle({0.0, sky}, d_.width, foot - sky, "soil");
    out += counted_soil();
    std::string pieces;
    for (const BuriedPiece& piece : d_.pieces) pieces += drawn(piece);
    out += pieces + group(d_.shows, tank());
    out += line({0.0, sky}, {d_.width, sky}, "ground-line") + water();
    out += label({d_.width - 6.0, y(d_.crown + d_.diameter) + 16.0}, d_.depth_name, "place end on-soil");
    out +=
        line({x(0.5 * d_.diameter), y(d_.crown + d_.diameter)}, {d_.width - 6.0, y(d_.crown + d_.diameter)}, "leader");
    return out + "</svg>\n";
  }

 private:
  [[nodiscard]] double x(double meters) const { return middle_ + meters * scale_; }
  [[nodiscard]] double y(double depth) const { return sky + depth * scale_; }

  /// Slanting strokes between the planes, cut to them; the tank and the concrete are drawn over them.
  [[nodiscard]] std::string counted_soil() const {
    if (!d_.soil_counts || d_.prism_base <= 0.0) return {};
    const double foot = y(d_.prism_base), low = d_.prism_half_width * scale_, high = d_.prism_half_top * scale_;
    const auto half_at = [&](double at) { return high + (low - high) * (at - sky) / (foot - sky); };
    std::string strokes;
    for (int i = 1; sky + i * hatch_spacing < foot; ++i) {
      const double at = sky + i * hatch_spacing;
      strokes +=
          "M" + coordinate(middle_ - half_at(at)) + " " + coordinate(at) + "H" + coordinate(middle_ + half_at(at));
    }
    return path(strokes, "earth") +
           polygon({{middle_ - high, sky}, {middle_ - low, foot}, {middle_ + low, foot}, {middle_ + high, sky}},
                   "break-line");
  }

  [[nodiscard]] std::string drawn(const BuriedPiece& piece) const {
    return rectangle({x(piece.left), y(piece.top)}, (piece.right - piece.left) * scale_,
                     std::max(1.0, (piece.bottom - piece.top) * scale_),
                     piece.kind == BuriedPiece::Kind::sump ? "sump" : "slab");
  }

  [[nodiscard]] std::string tank() const {
    const double radius = 0.5 * d_.diameter * scale_;
    const Point center{middle_, y(d_.crown) + radius};
    std::string out = circle(center, radius, "vessel") + circle(center, radius, "shell");
    double at = center.y - 8.0 * static_cast<double>(d_.tank_names.size() - 1);
    for (const std::string& name : d_.tank_names) {
      out += label({middle_, at + 4.0}, name, "place middle on-sheet");
      at += 17.0;
    }
    return out;
  }

  [[nodiscard]] std::string water() const {
    if (!d_.water) return label({6.0, sky + 18.0}, d_.water_name, "place on-soil");
    const double at = y(std::min(*d_.water, depth_ + 0.5 * under / scale_));
    return line({0.0, at}, {d_.width, at}, "line-a") + path("M12 " + coordinate(at - 9.0) + "h12l-6 8z", "mark-a") +
           label({30.0, at - 4.0}, d_.water_name, "name-a on-soil");
  }

  const BuriedTankDrawing& d_;
  double middle_;
  double depth_ = 0.0;
  double scale_ = 1.0;
};

}  // namespace

std::string draw(const BuriedTankDrawing& drawing) { return Section(drawing).draw(); }

}  // namespace forecourse::report::svg
