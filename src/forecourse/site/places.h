#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::site {

/// The id of an inlet as a place: its own, or "<dispenser>.<product>". Empty while both are missing.
[[nodiscard]] inline std::string place_name(const Dispenser& dispenser, const Inlet& inlet) {
  if (!inlet.id.empty()) return inlet.id.text;
  if (dispenser.id.empty() || inlet.product.empty()) return {};
  return dispenser.id.text + "." + inlet.product.text;
}

}  // namespace forecourse::site
