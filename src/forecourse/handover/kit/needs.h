#pragma once

#include <map>
#include <string>
#include <vector>

#include "forecourse/handover/kit/kit.h"

namespace forecourse::handover {

/// What parts must stand: the pressure of fuel without flow at their places, or the settings of the vent valves.
class Needs {
 public:
  Needs(const site::Site& site, const studies::FlowResult* flow);

  [[nodiscard]] RatingNeeded of(const StationPart& part, Bears bears) const;

 private:
  [[nodiscard]] RatingNeeded of_fuel(const StationPart& part) const;
  [[nodiscard]] RatingNeeded of_vapor(const StationPart& part) const;
  void add_tank_vents(const site::Tank& tank, RatingNeeded& out) const;

  const site::Site& site_;
  bool studied_ = false;
  std::map<std::string, std::optional<double>> pressure_at_;  ///< [Pa] gauge, by place
  std::vector<std::string> open_products_;                    ///< of which nothing is determined
};

/// What stands beside every pressure of fuel in a schedule.
inline constexpr const char* pressure_basis =
    "static and dead-head, at the level of the tank that is entered; surge and the expansion of fuel that is shut in "
    "and warms are not computed";

}  // namespace forecourse::handover
