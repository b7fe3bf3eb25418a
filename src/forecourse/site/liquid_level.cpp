#include "forecourse/site/liquid_level.h"

#include <algorithm>

namespace forecourse::site {
namespace {

/// The surface above a bottom that rises with the pitch from the low end.
std::optional<double> level_of(const Tank& tank, const std::optional<LevelReading>& reading) {
  if (!tank.bottom_elevation || !reading || !reading->depth) return std::nullopt;
  const double pitch = tank.shape && tank.shape->pitch ? tank.shape->pitch->likely.si() : 0.0;
  const double along = reading->at ? reading->at->likely.si() : 0.0;
  return tank.bottom_elevation->likely.si() + pitch * along + reading->depth->likely.si();
}

bool names(const std::vector<Name>& list, const std::string& id) {
  return std::any_of(list.begin(), list.end(), [&](const Name& name) { return name.text == id; });
}

std::optional<double> level_by_siphon(const Site& site, const Tank& tank) {
  for (const Tank& other : site.tanks) {
    if (&other == &tank) continue;
    if (!names(tank.siphoned_with, other.id.text) && !names(other.siphoned_with, tank.id.text)) continue;
    if (const auto level = liquid_level(other)) return level;
  }
  return std::nullopt;
}

}  // namespace

std::optional<double> liquid_level(const Tank& tank) {
  if (tank.surface_elevation) return tank.surface_elevation->likely.si();
  return level_of(tank, tank.reading);
}

std::optional<double> liquid_level(const Site& site, const std::string& id) {
  for (const Tank& tank : site.tanks) {
    if (tank.id.text == id) {
      const auto own = liquid_level(tank);
      return own ? own : level_by_siphon(site, tank);
    }
    for (const Compartment& compartment : tank.compartments) {
      if (compartment.id.text == id) return level_of(tank, compartment.reading);
    }
  }
  return std::nullopt;
}

}  // namespace forecourse::site
