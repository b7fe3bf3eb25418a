#pragma once

#include <utility>
#include <vector>

#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

inline constexpr const char* above_ground = "the tank stands above ground";

[[nodiscard]] inline bool is_above_ground(const site::Tank& tank) { return tank.above_ground.value_or(false); }

/// A figure of each tank; one that is stated to stand above ground is exempt.
template <class Read>
std::vector<FigureAt> each_buried_tank(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    FigureAt one = read(tank);
    if (is_above_ground(tank)) one.exempt = above_ground;
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace forecourse::checks
