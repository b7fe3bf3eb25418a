#include "forecourse/site/has_parts.h"

#include <algorithm>

namespace forecourse::site {

bool has_hose(const Site& site) {
  return std::any_of(site.dispensers.begin(), site.dispensers.end(), [](const auto& d) { return !d.hoses.empty(); });
}

bool has_sump(const Site& site) {
  return std::any_of(site.tanks.begin(), site.tanks.end(), [](const auto& t) { return t.sump.has_value(); }) ||
         std::any_of(site.dispensers.begin(), site.dispensers.end(), [](const auto& d) { return d.sump.has_value(); });
}

bool has_tank_shape(const Site& site) {
  return std::any_of(site.tanks.begin(), site.tanks.end(),
                     [](const auto& t) { return t.shape.has_value() || !t.chart.empty(); });
}

bool has_flotation(const Site& site) {
  return std::any_of(site.tanks.begin(), site.tanks.end(), [](const auto& t) { return t.flotation.has_value(); });
}

}  // namespace forecourse::site
