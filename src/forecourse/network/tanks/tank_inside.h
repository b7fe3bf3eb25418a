#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/parts/tank/tank_volume.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// The inside of a tank or compartment of a site, with its places counted as the site file counts them.
struct TankInside {
  parts::TankVolume volume;
  double start = 0.0;  ///< of a compartment along the tank, from the joint of shell and low head [m]
  double roll = 0.0;   ///< [rad]
  bool charted = false;
  std::vector<DefaultUsed> defaults;  ///< sizes of heads that were not entered

  /// A stick at a place along the tank, from its low end [m]; without one at the low end of the room.
  [[nodiscard]] parts::DipPlace place(std::optional<double> at) const { return {at ? *at - start : 0.0, roll}; }
};

/// The inside of a tank, or of one of its compartments; in words what is missing or does not fit.
[[nodiscard]] std::variant<TankInside, std::string> tank_inside(const site::Tank& tank,
                                                                const site::Compartment* compartment = nullptr,
                                                                parts::Ready ready = parts::Ready::table);

/// A shape as it is computed, without pitch and roll: what a level chart takes it for. Nothing for a dip chart.
[[nodiscard]] std::optional<parts::TankShape> as_level(const parts::TankShape& shape);

/// Level [m] of what lies at an elevation [m]; empty: the elevation of the tank's bottom is not entered.
[[nodiscard]] std::optional<double> level_of_elevation(const site::Tank& tank, const TankInside& inside,
                                                       double elevation);

/// Level of the liquid [m] above the lowest inside point, from the reading, or from the elevation of its surface.
/// Empty if neither is entered.
[[nodiscard]] std::optional<double> tank_level(const site::Site& site, const site::Tank& tank,
                                               const site::Compartment* compartment, const TankInside& inside);

}  // namespace forecourse::network
