#pragma once

#include <optional>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::checks {

/// A point on plan [m].
struct PlanPoint {
  double x = 0.0;
  double y = 0.0;
};

/// What a part covers on plan: a point, a straight piece or a convex polygon, and all that lies within `radius` of it.
struct Outline {
  std::vector<PlanPoint> corners;
  double radius = 0.0;  ///< [m]
};

/// Between the nearest points of two outlines [m]; 0 where they meet.
/// \source closed form
[[nodiscard]] double distance(const Outline& a, const Outline& b);

// Empty where what is needed is not entered.
[[nodiscard]] std::optional<Outline> outline(const std::optional<site::Position>& position);
[[nodiscard]] std::optional<Outline> outline(const site::Building& building);
[[nodiscard]] std::optional<Outline> outline(const site::LotLine& line);
/// A tank by its outside diameter; a rectangular one by its inside sizes, as a site file has no others.
[[nodiscard]] std::optional<Outline> outline(const site::Tank& tank);

}  // namespace forecourse::checks
