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

/// Where a pump, a branch or an inlet stands on plan; empty: not entered.
[[nodiscard]] inline std::optional<Position> position_at(const Site& site, const std::string& place) {
  for (const Pump& pump : site.pumps) {
    if (pump.id.text == place) return pump.position;
  }
  for (const Branch& branch : site.branches) {
    if (branch.id.text == place) return branch.position;
  }
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) {
      if (place_name(dispenser, inlet) == place) return dispenser.position;
    }
  }
  return std::nullopt;
}

}  // namespace forecourse::site
