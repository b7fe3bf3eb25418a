#pragma once

#include "forecourse/site/site.h"

namespace forecourse::site {

// What a station has, which decides the studies that are made of it.

[[nodiscard]] bool has_hose(const Site& site);
[[nodiscard]] bool has_sump(const Site& site);
[[nodiscard]] bool has_tank_shape(const Site& site);
[[nodiscard]] bool has_flotation(const Site& site);

}  // namespace forecourse::site
