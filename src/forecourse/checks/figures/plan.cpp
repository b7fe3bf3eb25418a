#include "forecourse/checks/figures/plan.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace forecourse::checks {
namespace {

PlanPoint point(const site::Position& position) { return {position.x.si(), position.y.si()}; }

/// Twice the area of a triangle, positive where it turns left.
double turn(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

double distance(const PlanPoint& p, const PlanPoint& a, const PlanPoint& b) {
  const double x = b.x - a.x;
  const double y = b.y - a.y;
  const double square = x * x + y * y;
  const double along = square > 0.0 ? std::clamp(((p.x - a.x) * x + (p.y - a.y) * y) / square, 0.0, 1.0) : 0.0;
  return std::hypot(p.x - a.x - along * x, p.y - a.y - along * y);
}

bool cross(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c, const PlanPoint& d) {
  return turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0;
}

bool holds(const std::vector<PlanPoint>& polygon, const PlanPoint& p) {
  if (polygon.size() < 3) return false;
  bool left = true;
  bool right = true;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const double side = turn(polygon[i], polygon[(i + 1) % polygon.size()], p);
    left = left && side >= 0.0;
    right = right && side <= 0.0;
  }
  return left || right;
}

double between(const std::vector<PlanPoint>& a, const std::vector<PlanPoint>& b) {
  if (holds(a, b.front()) || holds(b, a.front())) return 0.0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < a.size(); ++i) {
    const PlanPoint& a0 = a[i];
    const PlanPoint& a1 = a[(i + 1) % a.size()];
    for (std::size_t k = 0; k < b.size(); ++k) {
      const PlanPoint& b0 = b[k];
      const PlanPoint& b1 = b[(k + 1) % b.size()];
      if (cross(a0, a1, b0, b1)) return 0.0;
      least = std::min({least, distance(a0, b0, b1), distance(b0, a0, a1)});
    }
  }
  return least;
}

std::optional<Outline> upright(const site::TankShape& shape, const PlanPoint& middle) {
  if (!shape.outside_diameter) return std::nullopt;
  return Outline{{middle}, shape.outside_diameter->likely.si() / 2.0};
}

/// Half of how long a lying tank is on plan, its heads included.
std::optional<double> half_length(const site::TankShape& shape) {
  if (!shape.length) return std::nullopt;
  const bool flat = shape.heads.text == "flat" || shape.kind.text == "rectangular";
  if (!flat && !shape.head_depth) return std::nullopt;
  return shape.length->likely.si() / 2.0 + (flat ? 0.0 : shape.head_depth->likely.si());
}

}  // namespace

double distance(const Outline& a, const Outline& b) {
  return std::max(0.0, between(a.corners, b.corners) - a.radius - b.radius);
}

std::optional<Outline> outline(const std::optional<site::Position>& position) {
  if (!position) return std::nullopt;
  return Outline{{point(*position)}, 0.0};
}

std::optional<Outline> outline(const site::Building& building) {
  if (!building.corner || !building.opposite) return std::nullopt;
  const PlanPoint a = point(*building.corner);
  const PlanPoint c = point(*building.opposite);
  return Outline{{a, {c.x, a.y}, c, {a.x, c.y}}, 0.0};
}

std::optional<Outline> outline(const site::LotLine& line) {
  if (!line.from || !line.to) return std::nullopt;
  return Outline{{point(*line.from), point(*line.to)}, 0.0};
}

std::optional<Outline> outline(const site::Tank& tank) {
  if (!tank.shape || !tank.position) return std::nullopt;
  const site::TankShape& shape = *tank.shape;
  const PlanPoint middle = point(*tank.position);
  if (shape.kind.text == "vertical-cylinder") return upright(shape, middle);
  const auto& wide = shape.kind.text == "rectangular" ? shape.width : shape.outside_diameter;
  const std::optional<double> half = half_length(shape);
  if (!wide || !half || !tank.axis) return std::nullopt;
  const double x = std::cos(tank.axis->likely.si());
  const double y = std::sin(tank.axis->likely.si());
  const double side = wide->likely.si() / 2.0;
  const auto corner = [&](double along, double across) {
    return PlanPoint{middle.x + along * x - across * y, middle.y + along * y + across * x};
  };
  return Outline{{corner(-*half, -side), corner(*half, -side), corner(*half, side), corner(-*half, side)}, 0.0};
}

}  // namespace forecourse::checks
